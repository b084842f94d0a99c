import type { LensClass } from './tolerance-set';

/** Which designs are judged by which tables. */
export interface LensClassMembers {
  readonly lensClass: LensClass;
  /** Words of the notation after `design`. */
  readonly designs: readonly string[];
  readonly note?: string;
}

export const lensClasses: readonly LensClassMembers[] = [
  { lensClass: 'single-vision-multifocal', designs: ['single-vision', 'bifocal', 'trifocal', 'double'] },
  {
    lensClass: 'progressive',
    designs: ['progressive', 'office'],
    note: 'Office lenses are judged by the tables for progressives: common practice, no source.',
  },
];
