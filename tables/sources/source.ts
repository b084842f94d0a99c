import type { Evidence } from '../evidence';

/** A document or account that a figure or formula of this project rests on. */
export interface Source {
  readonly id: string;
  readonly title: string;
  readonly kind: 'standard' | 'regulation' | 'guidance' | 'secondary' | 'course' | 'book' | 'journal' | 'memory';
  /** The firmest evidence that a cell citing this source may claim. */
  readonly grade: Evidence;
  /** Where it was read, in free words. */
  readonly where: string;
  readonly note?: string;
}
