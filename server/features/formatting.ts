import type { DocumentFormattingParams, DocumentRangeFormattingParams, TextEdit } from 'vscode-languageserver';
import { formatChanges } from '../../grammar';
import type { Snapshot } from '../snapshot';
import { toEditor } from '../text-changes';

/** The canonical layout of the whole document. Only blanks change and lines stay lines, so no edit reaches a line end. */
export const formatting = (snapshot: Snapshot, _: DocumentFormattingParams): TextEdit[] =>
  layOutLines(snapshot, 0, snapshot.document.lineCount - 1);

/** The canonical layout of the lines that a range touches. A range that ends before a line’s first column leaves it out. */
export function rangeFormatting(snapshot: Snapshot, { range }: DocumentRangeFormattingParams): TextEdit[] {
  const { start, end } = range;
  const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
  return layOutLines(snapshot, Math.max(0, start.line), Math.min(last, snapshot.document.lineCount - 1));
}

/** The changes that the layout makes to some lines. */
export function layOutLines({ document }: Snapshot, first: number, last: number): TextEdit[] {
  return formatChanges(document, { first, last }).map(({ line, text }) => ({
    range: toEditor(document, {
      start: { line, character: 0 },
      end: { line, character: document.line(line)?.text.length ?? 0 },
    }),
    newText: text,
  }));
}
