/** The mapping that chooses the columns of a table: a few lines that anyone can write. */
import { EITHER_CODES, PAIR_CODES } from '../parts/part';
import { type Column, type Target, targetInWords, targetOf } from './columns';

/** Which column of a table holds what, and how the table is written. */
export interface Mapping {
  readonly columns: readonly Column[];
  readonly delimiter: ',' | ';' | '\t';
  readonly decimal: '.' | ',';
}

export type ReadMapping = Mapping | { readonly error: string };

/** One row for each lens ordered or read, and one for what belongs to the pair. */
const USUAL: readonly string[] = [
  ...['order', 'reading', 'repeat', 'eye', 'date', 'time', 'by', 'with', 'stage'],
  ...['sphere', 'cylinder', 'axis', 'add', 'engraved-add', 'intermediate', 'prism-in', 'prism-up'],
  ...['pd', 'near-pd', 'optical-centres', 'height', 'base-curve'],
  ...['centre-thickness', 'edge-thickness', 'min-thickness', 'segment-width', 'segment-tilt', 'warp'],
  ...['frame-a', 'frame-b', 'frame-dbl', 'frame-ed', 'vertex', 'panto', 'wrap'],
  ...['impact', 'cosmetic', 'marking', 'design', 'lens', 'coating', 'tint', 'ref', 'note'],
];

/** The table that is written where no mapping is given; its columns are called what they are. */
export const USUAL_MAPPING: Mapping = {
  columns: USUAL.map((words) => ({ name: words, target: targetOf(words) as Target })),
  delimiter: ',',
  decimal: '.',
};

const DELIMITERS: Readonly<Record<string, Mapping['delimiter']>> = { comma: ',', semicolon: ';', tab: '\t' };
const DECIMALS: Readonly<Record<string, Mapping['decimal']>> = { point: '.', comma: ',' };

/**
 * Reads a mapping. Each line says what a column holds and what it is called, `R sphere = OD_SPH`; `#` begins a comment.
 * `delimiter = semicolon` and `decimal = comma` tell how the table is written.
 * @returns the mapping, or in one sentence what is wrong and in which line
 */
export function readMapping(text: string): ReadMapping {
  const columns: Column[] = [];
  let { delimiter, decimal } = USUAL_MAPPING;
  for (const [at, line] of text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .entries()) {
    if (line.trim() === '' || line.trim().startsWith('#')) continue;
    const cut = line.indexOf('=');
    const [words, name] = [line.slice(0, cut).trim(), line.slice(cut + 1).trim()];
    const fault = (what: string): ReadMapping => ({ error: `line ${at + 1} of the mapping: ${what}` });
    if (cut < 0 || words === '' || name === '')
      return fault('write what it is, an equals sign and the name of the column');
    if (words === 'delimiter' || words === 'decimal') {
      const known: Readonly<Record<string, string>> = words === 'delimiter' ? DELIMITERS : DECIMALS;
      if (!Object.hasOwn(known, name)) return fault(`${words} is one of ${Object.keys(known).join(', ')}`);
      if (words === 'delimiter') delimiter = DELIMITERS[name] as Mapping['delimiter'];
      else decimal = DECIMALS[name] as Mapping['decimal'];
      continue;
    }
    const target = targetOf(words);
    if (!target) return fault(`there is nothing called “${words}”`);
    if (columns.some((one) => one.name === name)) return fault(`the column “${name}” has a meaning already`);
    if (columns.some((one) => targetInWords(one.target) === targetInWords(target)))
      return fault(`“${words}” has a column already`);
    columns.push({ name, target });
  }
  if (columns.length === 0) return { error: 'the mapping names no column' };
  if (delimiter === decimal) return { error: 'the mapping gives one character to fields and to decimals' };
  return mixed({ columns, delimiter, decimal });
}

/** A row is of one lens or of a whole order; a table that is both would say some facts twice, or of nobody. */
function mixed(mapping: Mapping): ReadMapping {
  const byLens = isByLens(mapping);
  const hasReading = mapping.columns.some(({ target }) => target.kind === 'row' && target.word === 'reading');
  for (const { target } of mapping.columns) {
    if (target.kind !== 'fact') continue;
    const words = targetInWords(target);
    if (byLens && target.eye !== null) return { error: `a column gives the eye, so “${words}” cannot name one too` };
    if (hasReading && target.isRead) return { error: `a column gives the reading, so “${words}” cannot name one too` };
    const isForEye = !PAIR_CODES.has(target.code) && !EITHER_CODES.has(target.code);
    if (!byLens && target.eye === null && isForEye)
      return {
        error: `“${words}” needs an eye: write “R ${target.code}” or “L ${target.code}”, or name a column for the eye`,
      };
  }
  return mapping;
}

/** Whether each row is one lens, ordered or read. */
export const isByLens = ({ columns }: Mapping): boolean =>
  columns.some(({ target }) => target.kind === 'row' && (target.word === 'eye' || target.word === 'reading'));
