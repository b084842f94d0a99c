/** Everything in a document that is only a matter of style, mended at once. */
import type { CodeAction, TextEdit } from 'vscode-languageserver';
import { type Block, parseLine } from '../../../grammar';
import { ruleOf } from '../../../orders';
import { type Asking, actionOf, textEdits } from './asking';
import { fixesOf } from './fixes';
import { FIX_ALL } from './kinds';

/**
 * Safe fixes of hints about the writing. Where two of them touch, the later one waits for the next time; a line that
 * would not mean the same with all of them is left alone.
 */
export function fixAll(asking: Asking): CodeAction[] {
  const { snapshot } = asking;
  const all: TextEdit[] = snapshot.document.blocks.flatMap((_, block) => {
    const edits = snapshot.block(block).findings.flatMap((finding) => {
      if (finding.level !== 'hint' || ruleOf(finding.code)?.family !== 'writing') return [];
      const [fix, other] = fixesOf(snapshot, block, finding);
      return fix?.safe && !other ? [fix.edits] : [];
    });
    return textEdits(snapshot, block, wholeFixes(edits, snapshot.document.blocks[block] as Block));
  });
  if (all.length === 0) return [];
  return [actionOf(asking, { title: 'Mend everything that is only a matter of style', kind: FIX_ALL, edits: all })];
}

type Edits = ReturnType<typeof fixesOf>[number]['edits'];

/** A fix of several edits is made whole or not at all, and keeps clear of those before it. */
function wholeFixes(fixes: readonly Edits[], { lines, kind }: Block): Edits {
  const taken = new Map<number, Edits[number][]>();
  for (const edits of fixes) {
    const isClear = edits.every(({ line, start, end }) =>
      (taken.get(line) ?? []).every((other) => other.end < start || end < other.start),
    );
    if (!isClear) continue;
    for (const edit of edits) taken.set(edit.line, [...(taken.get(edit.line) ?? []), edit]);
  }
  const isTolerance = kind === 'tolerance' ? 'tolerance' : undefined;
  return [...taken].flatMap(([line, edits]) => {
    const { text } = lines[line] as Block['lines'][number];
    return meaning(edited(text, edits), isTolerance) === meaning(text, isTolerance) ? edits : [];
  });
}

function edited(line: string, edits: Edits): string {
  const fromTheEnd = [...edits].sort((a, b) => b.start - a.start);
  return fromTheEnd.reduce(
    (text, { start, end, text: written }) => text.slice(0, start) + written + text.slice(end),
    line,
  );
}

/** What a line says, wherever it stands in it and with however many decimals. */
const meaning = (line: string, block: 'tolerance' | undefined): string =>
  JSON.stringify(parseLine(line, block).node, (key, value) => (MEANINGLESS.has(key) ? undefined : value));

const MEANINGLESS = new Set(['start', 'end', 'decimals']);
