/** A table in, as text of the notation. */
import { CsvError, parse } from 'csv-parse/browser/esm/sync';
import { nearestWord } from '../../orders';
import { writeOrder } from '../../orders/write';
import { type Import, type Loss, type Refusal, refuse } from '../conversion';
import { orderFrom, readingFrom } from '../parts/to-order';
import { LARGEST_TEXT, TOO_LARGE } from '../safe-json';
import type { Column } from './columns';
import { Gathering, type OrderDraft } from './gathering';
import { type Mapping, USUAL_MAPPING } from './mapping';
import { readRow } from './read-row';

/** How a table is to be read. */
export interface FromCsvOptions {
  /** What the columns of the table mean; see `readMapping`. */
  readonly mapping?: Mapping;
}

/** Longer than any row of figures, characters; a quote that is never closed ends here. */
const LONGEST_ROW = 1_000_000;

/**
 * Returns the rows of a table as orders with their readings. A lens that is not given in full is told as a loss; a cell that
 * cannot be read is refused with its line, and so is its lens; everything else is taken. Figures need no sign for plus, an
 * empty field is nothing said, an axis of 0 is 180. Never throws on any text.
 * Source: RFC 4180; the columns are ours or those of the mapping.
 */
export function fromCsv(text: string, { mapping = USUAL_MAPPING }: FromCsvOptions = {}): Import {
  if (text.length > LARGEST_TEXT) return refuse(TOO_LARGE);
  const table = rowsOf(text, mapping);
  if ('error' in table) return refuse(table.error, table.where);
  const [header, ...rows] = table.rows;
  if (!header) return refuse('the table is empty');
  const problem = headerProblem(header.cells, mapping);
  if (problem) return refuse(problem, `line ${header.line}`);
  const columns = header.cells.map((name) => mapping.columns.find((one) => one.name === name) ?? null);
  const losses: Loss[] = header.cells.flatMap((name, at): Loss[] =>
    columns[at] ? [] : [{ what: `column “${name}”`, why: 'no-place', order: null, eye: null, line: header.line - 1 }],
  );
  const refused: Refusal[] = [];
  const gathering = new Gathering();
  for (const { cells, line } of rows) {
    if (cells.length !== header.cells.length) {
      refused.push({
        message: `it has ${cells.length} fields and the header has ${header.cells.length}`,
        where: `line ${line}`,
      });
      continue;
    }
    readRow(cellsByColumn(columns, cells), line, mapping, gathering, { losses, refused });
  }
  return { result: gathering.orders.map(orderText).join('\n'), losses, refused };
}

interface RawRow {
  readonly cells: readonly string[];
  /** Line of the file where the row ends, from 1. */
  readonly line: number;
}

function rowsOf(
  text: string,
  { delimiter }: Mapping,
): { readonly rows: readonly RawRow[] } | { readonly error: string; readonly where: string | null } {
  try {
    const rows = parse(text, {
      bom: true,
      delimiter,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      max_record_size: LONGEST_ROW,
    }) as unknown as readonly { record: readonly string[]; info: { lines: number } }[];
    return { rows: rows.map(({ record, info }) => ({ cells: record, line: info.lines })) };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const { lines } = error as CsvError & { readonly lines?: number };
    return { error: FAULTS[error.code] ?? 'it is not a table', where: lines === undefined ? null : `line ${lines}` };
  }
}

/** What can be wrong with the writing of a table, by the codes of the library that reads it. */
const FAULTS: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: 'a quote is opened and never closed',
  CSV_MAX_RECORD_SIZE: 'a row is longer than a million characters; perhaps a quote is never closed',
  INVALID_OPENING_QUOTE: 'a quote stands in the middle of a field; a field with a quote in it is quoted whole',
  CSV_INVALID_CLOSING_QUOTE: 'something follows a closing quote',
};

function headerProblem(header: readonly string[], { columns, delimiter }: Mapping): string | null {
  const known = columns.filter(({ name }) => header.includes(name));
  const other = delimiter === ';' ? ',' : ';';
  if (header.length === 1 && header[0]?.includes(other)) {
    const name = other === ';' ? 'semicolon' : 'comma';
    return `the fields are parted by a ${name}; say “delimiter = ${name}” in the mapping, and “decimal = comma” where it is so`;
  }
  const twice = header.find((name, at) => header.indexOf(name) !== at);
  if (twice !== undefined) return `the column “${twice}” stands twice`;
  if (known.length === 0) return 'no column is known; say what the columns mean in a mapping';
  const missing = columns === USUAL_MAPPING.columns ? undefined : columns.find(({ name }) => !header.includes(name));
  if (!missing) return null;
  const near = nearestWord(missing.name, header);
  return `there is no column “${missing.name}”${near ? `; did you mean “${near}”?` : ''}`;
}

/** The filled cells of a row with what they mean. */
const cellsByColumn = (
  columns: readonly (Column | null)[],
  cells: readonly string[],
): readonly (readonly [Column, string])[] =>
  columns.flatMap((column, at) => {
    const text = (cells[at] ?? '').trim();
    return column && text !== '' ? [[column, text] as const] : [];
  });

const orderText = ({ name, facts, lines, readings }: OrderDraft): string =>
  writeOrder(
    orderFrom(
      name,
      facts,
      [...readings.values()].map(({ head, lenses }) => readingFrom(head, lenses)),
    ),
    [...lines],
  );
