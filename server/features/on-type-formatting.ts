import type { DocumentOnTypeFormattingParams, TextEdit } from 'vscode-languageserver';
import type { Snapshot } from '../snapshot';
import { layOutLines } from './formatting';

/** The typed character that finishes a line. */
export const FINISHES = '\n';

/** Lays out the line that has just been finished, and no other; the one that is being typed stays as it is. */
export function onTypeFormatting(snapshot: Snapshot, { position, ch }: DocumentOnTypeFormattingParams): TextEdit[] {
  const finished = Math.min(position.line, snapshot.document.lineCount) - 1;
  return ch === FINISHES && finished >= 0 ? layOutLines(snapshot, finished, finished) : [];
}
