import type { Eye } from '../grammar';

/** How much a finding matters, from what stops a job to what is only worth knowing. */
export type Level = 'error' | 'warning' | 'info' | 'hint';

/** What a finding is about: the writing, the order, a tolerance, the reading, or a likely cause. */
export type Family = 'writing' | 'order' | 'tolerance' | 'bench' | 'cause';

/** The figures of a finding, by name. */
export type FindingData = Readonly<Record<string, unknown>>;

/** A place inside a block: lines are counted from the block's first line, columns in UTF-16 units. */
export interface Place {
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

/**
 * Something to tell about an order file. It holds a code, figures and places, never a sentence: the rule that owns the
 * code makes the message and the fixes when they are shown.
 */
export interface Finding extends Place {
  readonly code: string;
  readonly level: Level;
  readonly data: FindingData;
  readonly eye: Eye | null;
  /** Other places that belong to the same matter. */
  readonly related?: readonly Place[];
}

/** A change of text inside the block. */
export interface Edit extends Place {
  readonly text: string;
}

/** A change that mends a finding. */
export interface Fix {
  readonly title: string;
  /** Safe fixes keep the meaning; they may be applied without looking. */
  readonly safe: boolean;
  readonly edits: readonly Edit[];
}
