/**
 * Changes and places of a text as an editor sends them. An editor that keeps the byte order mark in its text counts it
 * as the first column of the first line, while a document never does; only this file knows the difference.
 */
import type { Position, Range, TextDocumentContentChangeEvent } from 'vscode-languageserver';
import { LentilDocument, parseDocument } from '../orders';

const BYTE_ORDER_MARK = '\uFEFF';
const BEGINNING: Position = { line: 0, character: 0 };

/** Applies one change: a replaced range, or the whole text. */
export function applyChange(document: LentilDocument, change: TextDocumentContentChangeEvent): LentilDocument {
  if (!('range' in change)) return parseDocument(change.text);
  const { start, end } = change.range;
  if (!document.byteOrderMark) return withMarkTakenOff(document.edit({ start, end }, change.text));
  if (start.line > 0 || start.character > 0) {
    return document.edit({ start: fromEditor(document, start), end: fromEditor(document, end) }, change.text);
  }
  // The change reaches the mark itself, so the mark is a character like any other for once.
  const literal = new LentilDocument(document.blocks, false).edit(
    { start: BEGINNING, end: BEGINNING },
    BYTE_ORDER_MARK,
  );
  return withMarkTakenOff(literal.edit({ start, end }, change.text));
}

const withMarkTakenOff = (document: LentilDocument): LentilDocument =>
  document.line(0)?.text.startsWith(BYTE_ORDER_MARK) ? parseDocument(document.text()) : document;

/** A place as the document counts it. */
export const fromEditor = ({ byteOrderMark }: LentilDocument, { line, character }: Position): Position => ({
  line,
  character: byteOrderMark && line === 0 ? Math.max(0, character - 1) : character,
});

/** A range as the editor counts it. */
export const toEditor = ({ byteOrderMark }: LentilDocument, { start, end }: Range): Range => ({
  start: byteOrderMark ? moved(start) : start,
  end: byteOrderMark ? moved(end) : end,
});

const moved = ({ line, character }: Position): Position => ({
  line,
  character: line === 0 ? character + 1 : character,
});
