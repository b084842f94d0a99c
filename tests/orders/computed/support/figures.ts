/** Worked-out figures of order texts. */
import { analyse, type Order, type Power, powerInWords, type Worked, workedLens, workedPair } from '../../../../orders';

/** An order of these lines; indentation carries no meaning. */
export const orderText = (...lines: readonly string[]): string =>
  ['order T-1', ...lines.map((line) => `  ${line}`)].join('\n');

export function orderOf(text: string): Order {
  const found = analyse(text).blocks.find(({ order }) => order !== null)?.order;
  if (!found) throw new Error('the text holds no order');
  return found;
}

export const ofLens = (text: string, eye: 'R' | 'L' = 'R'): readonly Worked[] => workedLens(orderOf(text), eye);
export const ofPair = (text: string): readonly Worked[] => workedPair(orderOf(text));

/** Everything worked out from a text. */
export function everything(text: string): readonly Worked[] {
  const order = orderOf(text);
  return [...workedLens(order, 'R'), ...workedLens(order, 'L'), ...workedPair(order)];
}

export const find = (figures: readonly Worked[], what: Worked['what']): Worked | undefined =>
  figures.find((one) => one.what === what);

/** The value of a figure by its name; NaN where there is none, so that no comparison holds. */
export function numberOf(figures: readonly Worked[], what: Worked['what'], name: string): number {
  const value = find(figures, what)?.values[name]?.value;
  return typeof value === 'number' ? value : Number.NaN;
}

/** A power, a prism or another value of parts. */
export function partsOf<Parts extends object>(figures: readonly Worked[], what: Worked['what'], name: string): Parts {
  const value = find(figures, what)?.values[name]?.value;
  if (typeof value !== 'object') throw new Error(`there is no ${what}`);
  return value as Parts;
}

/** A power as a line of the notation writes it. */
export const typed = (power: Power): string => powerInWords(power).replace('plano', '0.00');

export const codes = (figures: readonly Worked[]): readonly string[] => figures.map(({ what }) => what);
