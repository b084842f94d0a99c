/**
 * Remembers the trees of lines by their text. Lines know no position and are parsed alone, so two lines that read the
 * same share one tree; in a file of many orders most lines stand somewhere else as well (`supply glazed`, `pd 63 near 60`).
 */
import { parseLine } from './parser';
import type { ParsedLine } from './tree';

/** Enough for the lines that return in a year of work; a full memo is emptied, since what returns comes back soon. */
const MOST = 20_000;

/** Long lines hardly return, and would keep their text alive. */
const LONGEST = 120;

const known = { plain: new Map<string, ParsedLine>(), tolerance: new Map<string, ParsedLine>() };

/** The tree of a line; see `parseLine`. */
export function parsedLine(text: string, inTolerance: boolean): ParsedLine {
  const memo = inTolerance ? known.tolerance : known.plain;
  const found = memo.get(text);
  if (found) return found;
  const parsed = parseLine(text, inTolerance ? 'tolerance' : undefined);
  if (text.length <= LONGEST) {
    if (memo.size >= MOST) memo.clear();
    memo.set(text, parsed);
  }
  return parsed;
}
