import type { PublishedSource } from './sources';

/** One answer that somebody else has printed. */
export interface PublishedAnswer<Input> {
  readonly id: string;
  readonly input: Input;
  readonly printed: Readonly<Record<string, number>>;
  /**
   * How far a computed value may lie from the printed one, for all values or by name: half of the last printed digit, if not
   * explained in the note. `eighth`: the source prints eighths cut after two digits (.12 .37 .62 .87), so the eighth that is
   * meant must come out exactly; `nearest eighth`: it must be the nearest to what comes out. `cut to hundredths`: the source cuts
   * its digits off instead of rounding, so the computed value cut likewise must be the printed one.
   */
  readonly tolerance: Tolerance;
  readonly source: PublishedSource;
  readonly note?: string;
}

export type Tolerance = number | Readonly<Record<string, number>> | 'eighth' | 'nearest eighth' | 'cut to hundredths';

/** The grade of a source: A for textbooks, journals, standards and courses, B for societies and continuing education. */
export type Grade = 'A' | 'B';
