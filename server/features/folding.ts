import type { FoldingRange, FoldingRangeParams } from 'vscode-languageserver';
import { type Block, sectionsOf } from '../../grammar';
import type { Snapshot } from '../snapshot';
import { lastLine } from './lines';
import type { Options } from './options';

/** Blocks and readings, each from its first line to the last one that says something. */
export function folding(snapshot: Snapshot, _: FoldingRangeParams, { abilities }: Options): FoldingRange[] {
  const folds: FoldingRange[] = [];
  for (const [index, block] of snapshot.document.blocks.entries()) {
    if (folds.length >= abilities.mostFolds) break;
    if (block.kind === 'preamble') continue;
    const first = snapshot.firstLine(index);
    for (const [from, to] of foldsOf(block)) folds.push({ startLine: first + from, endLine: first + to });
  }
  return Number.isFinite(abilities.mostFolds) ? folds.slice(0, abilities.mostFolds) : folds;
}

/** Folds of one block by lines, kept with it, since an editor asks for all of them after every edit. */
function foldsOf(block: Block): readonly (readonly [number, number])[] {
  const known = folds.get(block);
  if (known) return known;
  const texts = block.lines.map(({ text }) => text);
  const last = lastLine(texts);
  const sections = block.kind === 'order' ? sectionsOf(block).map(({ kind }) => kind) : [];
  const found: (readonly [number, number])[] = [[0, last]];
  for (const [line, kind] of sections.entries()) {
    if (kind !== 'reading-header') continue;
    // A line of the order below a reading stays visible when the reading is folded.
    const next = sections.findIndex((other, at) => at > line && (other === 'reading-header' || other === 'body'));
    found.push([line, line + lastLine(texts.slice(line, next < 0 ? last + 1 : next))]);
  }
  const several = found.filter(([from, to]) => to > from);
  folds.set(block, several);
  return several;
}

const folds = new WeakMap<Block, readonly (readonly [number, number])[]>();
