/**
 * Figures, words and places as JSON text. An order has about a thousand of them, and to make objects first and text of
 * them afterwards takes several times as long; a program that wants objects reads the text.
 */
import { type Place, type Power, type Range, type Step, tidy } from '../../orders';

/** The texts of figures written before, each in a place that follows from its ten-thousandths; a power of two. */
const KEPT_FIGURES = 4096;
const figures = new Float64Array(KEPT_FIGURES).fill(Number.NaN);
const texts = new Array<string>(KEPT_FIGURES).fill('');

/**
 * A figure rounded to 1e-4, never -0; one that is none (NaN, infinite) becomes null. The same figures come again and
 * again, and to find the text of one takes a third of the time that writing it takes.
 */
export function plain(value: number | null): string {
  if (value === null || !Number.isFinite(value)) return 'null';
  const rounded = tidy(value);
  const place = Math.round(rounded * 1e4) & (KEPT_FIGURES - 1);
  if (figures[place] !== rounded) {
    figures[place] = rounded;
    texts[place] = `${rounded}`;
  }
  return texts[place] as string;
}

/** A word that only the program or the table gives: a code, a unit, an outcome. Nothing in it has to be escaped. */
export const code = (word: string | number | null): string => (typeof word === 'string' ? `"${word}"` : `${word}`);

/** Anything else: text from a file, and the few values that are not worth a text of their own. */
export const json = (value: unknown): string => JSON.stringify(value);

/** A house may word its rows as it likes, so what is made of them is not kept for ever. */
const MOST_KEPT = 4096;

/** Makes text of a sentence that comes again with every order only once: of a formula, a source, a row of a table. */
export function onceMade(make: (sentence: string) => string): (sentence: string) => string {
  const made = new Map<string, string>();
  return (sentence) => {
    let text = made.get(sentence);
    if (text === undefined) {
      if (made.size >= MOST_KEPT) made.clear();
      text = make(sentence);
      made.set(sentence, text);
    }
    return text;
  };
}

const quoted = onceMade(json);

export const said = (sentence: string | null): string => (sentence === null ? 'null' : quoted(sentence));

/** @param each makes the text of one member */
export function list<V>(values: readonly V[], each: (value: V, at: number) => string): string {
  let text = '[';
  for (let at = 0; at < values.length; at++) text += (at === 0 ? '' : ',') + each(values[at] as V, at);
  return `${text}]`;
}

/** The axis of a sphere is a convention and stays out. */
export const plainAxis = ({ cylinder, axis }: Power): string => (tidy(cylinder) === 0 ? 'null' : plain(axis));

export const plainPower = (power: Power | null): string =>
  power === null
    ? 'null'
    : `{"sphere":${plain(power.sphere)},"cylinder":${plain(power.cylinder)},"axis":${plainAxis(power)}}`;

/** The steps of a measure, every figure rounded; most measures have none. */
export const plainSteps = (steps: readonly Step[]): string => list(steps, plainStep);

function plainStep(step: Step): string {
  const parts = step as unknown as Readonly<Record<string, unknown>>;
  let text = '';
  for (const part in parts) text += `${text === '' ? '{' : ','}"${part}":${plainPart(parts[part])}`;
  return `${text}}`;
}

function plainPart(value: unknown): string {
  if (typeof value === 'number') return plain(value);
  if (typeof value === 'string') return said(value);
  return Array.isArray(value) ? list(value, plain) : json(value);
}

/** @param firstLine number of the first line of the place’s block in its file */
export const rangeOf = ({ line, start, end }: Place, firstLine: number): Range => ({
  start: { line: firstLine + line, character: start },
  end: { line: firstLine + line, character: end },
});

export const plainRange = ({ line, start, end }: Place, firstLine: number): string =>
  `{"start":{"line":${firstLine + line},"character":${start}},"end":{"line":${firstLine + line},"character":${end}}}`;
