import type { SelectionRange, SelectionRangeParams } from 'vscode-languageserver';
import { commentStart, indentOf, type SectionKind, type Span, sectionsOf } from '../../grammar';
import type { Place } from '../../orders';
import type { Site, Snapshot } from '../snapshot';
import { contentEnd, lastLine } from './lines';

/**
 * What a selection grows to, from the inside: the word or figure, the value, the entry, the line, the reading or the
 * order’s own lines, the block, the file.
 */
export const selectionRanges = (snapshot: Snapshot, { positions }: SelectionRangeParams): SelectionRange[] =>
  positions.map((position) => {
    const site = snapshot.site(position);
    const outside: SelectionRange[] = [wholeFile(snapshot), ...partsAround(snapshot, site)].map((range) => ({ range }));
    const inside = spansAround(snapshot, site).map(
      (span): SelectionRange => ({ range: snapshot.range(site.block, { line: site.line, ...span }) }),
    );
    return [...outside, ...inside].reduce<SelectionRange | undefined>(
      (parent, { range }) => (!parent ? { range } : isSame(parent.range, range) ? parent : { range, parent }),
      undefined,
    ) as SelectionRange;
  });

type Range = SelectionRange['range'];

const isSame = (a: Range, b: Range): boolean =>
  a.start.line === b.start.line &&
  a.end.line === b.end.line &&
  a.start.character === b.start.character &&
  a.end.character === b.end.character;

function wholeFile(snapshot: Snapshot): Range {
  const block = snapshot.document.blocks.length - 1;
  const lines = snapshot.document.blocks[block]?.lines ?? [];
  const { end } = snapshot.range(block, at(lines.length - 1, lines.at(-1)?.text.length ?? 0));
  return { start: { line: 0, character: 0 }, end };
}

/** The block and the part of it around a line, from the outside. */
function partsAround(snapshot: Snapshot, { block: index, line }: Site): Range[] {
  const block = snapshot.document.blocks[index];
  if (!block) return [];
  const lines = block.lines.map(({ text }) => text);
  const last = Math.max(line, lastLine(lines));
  const range = (from: number, to: number): Range => ({
    start: snapshot.range(index, at(from, 0)).start,
    end: snapshot.range(index, at(to, lines[to]?.length ?? 0)).end,
  });
  const whole = range(0, last);
  const [from, to] = partOf(block.kind === 'order' ? sectionsOf(block).map(({ kind }) => kind) : [], line, last);
  return from === 0 && to === last
    ? [whole]
    : [whole, range(from, Math.max(line, from + lastLine(lines.slice(from, to + 1))))];
}

/** First and last line of the reading that a line stands in, or of what the order itself says above its readings. */
function partOf(sections: readonly SectionKind[], line: number, last: number): readonly [number, number] {
  const header = sections.lastIndexOf('reading-header', line);
  const next = sections.indexOf('reading-header', line + 1);
  const end = next < 0 ? last : next - 1;
  return header < 0 ? [0, end] : [header, end];
}

const at = (line: number, column: number): Place => ({ line, start: column, end: column });

/** What stands around a column in its line, from the outside; each lies within the one before. */
function spansAround(snapshot: Snapshot, { block: index, line, character }: Site): Span[] {
  const block = snapshot.document.blocks[index];
  const text = block?.lines[line]?.text ?? '';
  const spans: Span[] = [
    { start: 0, end: text.length },
    { start: indentOf(text), end: Math.max(indentOf(text), contentEnd(text)) },
  ];
  if (character > commentStart(text)) spans.push({ start: commentStart(text), end: text.trimEnd().length });
  spans.push(runAround(text, character));
  collect(block?.lines[line]?.parsed(block.kind).node, spans);
  const around = spans
    .filter(({ start, end }) => start <= character && character <= end && start < end)
    .sort((a, b) => b.end - b.start - (a.end - a.start));
  return around.filter((span, at, all) => at === 0 || isInside(span, all[at - 1] as Span));
}

/** Words that have no place of their own in the tree. */
function runAround(text: string, column: number): Span {
  let [start, end] = [column, column];
  while (start > 0 && /\S/.test(text[start - 1] as string)) start--;
  while (end < text.length && /\S/.test(text[end] as string)) end++;
  return { start, end };
}

const isInside = (inner: Span, outer: Span): boolean => outer.start <= inner.start && inner.end <= outer.end;

/** Every span of a tree. */
function collect(node: unknown, into: Span[]): void {
  if (typeof node !== 'object' || node === null) return;
  const { start, end } = node as Partial<Span>;
  if (typeof start === 'number' && typeof end === 'number') into.push({ start, end });
  for (const part of Object.values(node)) collect(part, into);
}
