/** What every conversion gives back: the result, and all that could not be carried over. */
import type { Eye } from '../orders';

/**
 * Why something was not carried over as it was: the format has no place for it; it stands there as free words, which no
 * program reads back; it was rounded; it was worked out from what was written; the format asks for something that is not
 * said; or it cannot be told what was meant.
 */
export type LossReason = 'no-place' | 'as-words' | 'rounded' | 'worked-out' | 'needed' | 'unclear';

export interface Loss {
  /** What it is about, in the words of what was converted. */
  readonly what: string;
  readonly why: LossReason;
  readonly order: string | null;
  readonly eye: Eye | null;
  /** Line of the text that was converted, from 0; null where it has no lines of its own. */
  readonly line: number | null;
}

export interface Conversion<Result> {
  readonly result: Result;
  readonly losses: readonly Loss[];
}

/** Something that was not taken at all, and why, in one sentence. */
export interface Refusal {
  readonly message: string;
  /** Where it stands: a path such as `entry[2].resource`, or a line of the table. */
  readonly where: string | null;
}

/** What an import gives back: text of the notation. What was refused is not in it; the rest is. */
export interface Import extends Conversion<string> {
  readonly refused: readonly Refusal[];
}

export const NOTHING_TAKEN: Import = { result: '', losses: [], refused: [] };

export const refuse = (message: string, where: string | null = null): Import => ({
  ...NOTHING_TAKEN,
  refused: [{ message, where }],
});

const REASONS: Readonly<Record<LossReason, string>> = {
  'no-place': 'there is no place for it',
  'as-words': 'it stands there as words only and is not read back',
  rounded: 'it was rounded',
  'worked-out': 'it was worked out and does not stand there as written',
  needed: 'it is asked for and not said',
  unclear: 'it cannot be told what is meant',
};

/** `line 12, QL-1042, R: tint brown: there is no place for it`. */
export function lossInWords({ what, why, order, eye, line }: Loss): string {
  const where = [line === null ? null : `line ${line + 1}`, order, eye].filter(Boolean).join(', ');
  return `${where === '' ? '' : `${where}: `}${what}: ${REASONS[why]}`;
}
