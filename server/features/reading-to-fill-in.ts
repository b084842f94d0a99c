/** The lines of a new reading as text with places to fill in. */
import { type Blank, type Context, type LineToTake, lineToTakeInText, type Order, readingToTake } from '../../orders';
import { choiceAt, literally } from './stops';

/**
 * What an order calls for and has not been read, laid out; null where it calls for nothing. The expected figures stand
 * in comments only: a figure that nobody has read must never look like a reading.
 */
export function readingToFillIn(order: Order, context: Context, today: string): string | null {
  const lines = readingToTake(order, context);
  if (lines.length === 0) return null;
  let stop = 0;
  const fill = ({ what, choices }: Blank): string => {
    stop++;
    if (what === 'date') return `\${${stop}:${today}}`;
    return choices.length > 0 ? choiceAt(stop, choices) : `$${stop}`;
  };
  return lines.map((line, at) => laidOut(at === 0, literal(line), fill)).join('\n');
}

/** Names of instruments may hold characters that mean a place elsewhere. */
const literal = ({ parts, comment }: LineToTake): LineToTake => ({
  parts: parts.map((part) => (typeof part === 'string' ? literally(part) : part)),
  comment: comment === null ? null : literally(comment),
});

const INDENT = { header: 2, line: 4 };
const WIDTH = 9;

/** The columns of the layout of a reading; see `grammar/format.ts`. */
function laidOut(isHeader: boolean, line: LineToTake, fill: (place: Blank) => string): string {
  const text = lineToTakeInText({ ...line, comment: null }, fill);
  if (isHeader) return ' '.repeat(INDENT.header) + text;
  const [head = ''] = text.split(' ', 1);
  const values = text.slice(head.length + 1);
  const comment = line.comment === null ? '' : `  # ${line.comment}`;
  return `${' '.repeat(INDENT.line)}${head.padEnd(Math.max(WIDTH, head.length + 1))}${values}${comment}`;
}
