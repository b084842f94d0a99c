/** How figures and names are spelled in a text that is written anew. */
import { meaningsOf } from '../../grammar';
import { tidy } from '../exact';

/** A figure to a ten-thousandth, with at least so many decimals. */
export function decimal(value: number, least: number): string {
  const clean = tidy(value);
  const fixed = clean.toFixed(4).replace(/0{1,4}$/, '');
  const decimals = fixed.length - fixed.indexOf('.') - 1;
  return clean.toFixed(Math.max(decimals, least));
}

/** A dioptric figure with its sign and at least two decimals: `+2.00`, `-0.625`, `0.00`. */
export const dioptres = (value: number): string => (tidy(value) > 0 ? `+${decimal(value, 2)}` : decimal(value, 2));

/** A length, an index or a count without needless decimals. */
export const plainly = (value: number): string => decimal(value, 0);

const SAFE = /^[\p{L}\d][\p{L}\d./_-]*$/u;

/** A name as it can stand in a line; whatever could be taken for something else goes into quotes. */
export const nameInText = (name: string): string =>
  SAFE.test(name) && meaningsOf(name).length === 0 ? name : quoted(name);

/** Free words in quotes. What would end the line becomes a blank. */
export const quoted = (text: string): string => `"${oneLine(text).replaceAll('"', '""')}"`;

/** A text without line ends and other control characters, as a line can hold it. */
export const oneLine = (text: string): string => text.replace(/[\p{Cc}\u2028\u2029]+/gu, ' ').trim();
