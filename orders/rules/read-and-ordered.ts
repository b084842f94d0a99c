/** Parts of the sentences about one measure that several rules share. */
import { subjectInWords } from '../measure-words';
import type { Measure } from '../measures/measure';
import { figure, valueInWords } from '../words';

/** The subject at the beginning of a sentence: `R cylinder`, `Near PD`. */
export const subjectFirst = (measure: Measure): string => capital(subjectInWords(measure));

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** `read -0.50, ordered -0.75`. */
export function readAndOrdered(measure: Measure): string {
  const { read, ordered } = measure;
  if (read === null) return 'was not read';
  return ordered === null
    ? `read ${value(read, measure)}`
    : `read ${value(read, measure)}, ordered ${value(ordered, measure)}`;
}

/** A base curve is written without a sign. */
const value = (amount: number, { quantity, unit }: Measure): string =>
  quantity === 'base-curve' && amount >= 0 ? figure(amount) : valueInWords(amount, unit);
