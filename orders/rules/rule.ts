import type { Eye } from '../../grammar';
import type { Family, Finding, FindingData, Fix, Level, Place } from '../finding';
import type { Need } from './needs';
import type { Subject } from './subject';

/** The page of a rule: the same text is the hover, `lentil explain` and the documentation. */
export interface RulePage {
  /** What it looks at. One sentence. */
  readonly checks: string;
  /** At which level where, for a rule whose level depends on it. */
  readonly levels?: string;
  /** Why it matters at the bench. */
  readonly why: string;
  /** Lines as somebody might type them, and how they are written well. */
  readonly example: { readonly wrong: string; readonly right: string };
  /** What the fix does; absent where there is none. */
  readonly fix?: string;
  /** Where the rule comes from, or “common practice, no source”. */
  readonly source: string;
}

/** Where a level depends on the place: one digit of an axis matters more in an order than in a reading. */
export type LevelIn = (data: FindingData, block: BlockOfFinding) => Level;

export type BlockOfFinding = 'order' | 'reading' | 'other';

/** A finding with the text it stands in. */
export interface FixSite {
  readonly finding: Finding;
  /** The lines of the block, without their ends. */
  readonly lines: readonly string[];
}

/** One rule: its documentation, its message and its fixes in one place. A check of the whole order is added where it has one. */
export interface Rule {
  readonly code: string;
  readonly family: Family;
  readonly level: Level | LevelIn;
  readonly page: RulePage;
  /** The sentence of a finding. */
  readonly message: (data: FindingData) => string;
  /** The changes that mend a finding, the likeliest first. */
  readonly fixes?: (site: FixSite) => readonly Fix[];
  /**
   * Whether it keeps an acceptance away. An error does and nothing else, unless the rule says otherwise: `true` for one
   * that does at any level, or the reason why an error of it leaves the verdict to the figures.
   */
  readonly bars?: true | { readonly not: string };
  /** What has to be there for the check to find anything; absent where any order may have what it looks for. */
  readonly needs?: Need;
  /** Looks at a whole order with its readings; absent for rules whose findings are told while the lines are read. */
  readonly check?: (subject: Subject, report: Report) => void;
}

/** Tells a finding of the rule’s own code. */
export type Report = (
  place: Place,
  data?: FindingData,
  more?: { readonly eye?: Eye; readonly related?: readonly Place[]; readonly level?: Level },
) => void;

/** The text a finding covers. */
export const typed = ({ finding, lines }: FixSite): string =>
  (lines[finding.line] ?? '').slice(finding.start, finding.end);

/** A fix that replaces what the finding covers. */
export const replace = ({ finding }: FixSite, title: string, text: string, safe: boolean): Fix => ({
  title,
  safe,
  edits: [{ line: finding.line, start: finding.start, end: finding.end, text }],
});

/** A fix that writes something in front of what the finding covers. */
export const putBefore = ({ finding }: FixSite, title: string, text: string, safe: boolean): Fix => ({
  title,
  safe,
  edits: [{ line: finding.line, start: finding.start, end: finding.start, text }],
});
