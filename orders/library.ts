/** Texts in, results out: what a program that embeds Lentil calls first. */
import { formatText, type LentilDocument, parseDocument } from '../grammar';
import { type Analysis, analyse } from './analysis';
import type { Choices } from './context';
import { dayOfChecking } from './day';

export interface EvaluateOptions extends Choices {
  /** Texts of the bench files whose instruments and tolerances the text may name, nearest first. */
  readonly shared?: readonly string[];
}

/** Reads a text into blocks of lines; never throws. The tree of a line is made when it is first asked for. */
export const parse = (text: string): LentilDocument => parseDocument(text);

/**
 * Reads a text, judges its readings and gives every finding; never throws on any text. Dates are held against the day of
 * the clock unless `today` says another one, or null for none.
 */
export function evaluate(text: string, { shared = [], ...choices }: EvaluateOptions = {}): Analysis {
  const { today = dayOfChecking() } = choices;
  return analyse(text, { ...choices, today, shared: shared.map(parseDocument) });
}

/** The text in the canonical layout: only blanks change, and twice equals once. */
export const format = (text: string): string => formatText(parseDocument(text));
