import {
  type SemanticTokens,
  SemanticTokensBuilder,
  type SemanticTokensLegend,
  type SemanticTokensParams,
  type SemanticTokensRangeParams,
} from 'vscode-languageserver';
import type { Snapshot } from '../snapshot';
import { isVeryLarge, MOST_LINES } from './large';
import { TOKEN_MODIFIERS, TOKEN_TYPES, tokensOf } from './semantic-tokens/line';

export const LEGEND: SemanticTokensLegend = { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [...TOKEN_MODIFIERS] };

/** What each part of the document is; left off for very large files, of which an editor asks the visible lines. */
export const semanticTokens = (snapshot: Snapshot, _: SemanticTokensParams): SemanticTokens | null =>
  isVeryLarge(snapshot) ? null : tokensBetween(snapshot, 0, snapshot.document.lineCount - 1);

/** The same for the lines that a range touches, as far as a window can be meant. */
export const semanticTokensInRange = (snapshot: Snapshot, { range }: SemanticTokensRangeParams): SemanticTokens =>
  tokensBetween(snapshot, Math.max(0, range.start.line), Math.min(range.end.line, snapshot.document.lineCount - 1));

function tokensBetween(snapshot: Snapshot, first: number, last: number): SemanticTokens {
  const { document } = snapshot;
  const builder = new SemanticTokensBuilder();
  const end = Math.min(last, first + MOST_LINES);
  for (let number = first; number <= end; number++) {
    const block = document.blockAt(number);
    const line = document.line(number);
    const kind = document.blocks[block]?.kind;
    if (!line || !kind) continue;
    const from = { line: number - snapshot.firstLine(block), start: 0, end: 0 };
    for (const { start, end, type, isDeclared } of tokensOf(line.text, line.parsed(kind).node)) {
      const { start: place } = snapshot.range(block, { ...from, start, end });
      builder.push(place.line, place.character, end - start, TOKEN_TYPES.indexOf(type), isDeclared ? 1 : 0);
    }
  }
  return builder.build();
}
