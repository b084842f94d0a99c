/**
 * Lays a file out so that its columns read like a printed slip. Only blanks change: words, figures and comments stay as
 * they were typed, lines stay lines, and a line whose meaning a blank could change is left as it is.
 */
import type { Block, LentilDocument } from './document';
import { parseLine } from './parser';
import { type LineSection, sectionsOf } from './sections';
import { spaceOut } from './spacing';
import { commentStart, contentEnd, indentOf } from './text';
import type { LineNode, Problem } from './tree';

/** Columns of the words and of the values, by section. */
const LAYOUT = {
  body: { indent: 2, width: 12 },
  reading: { indent: 4, width: 9 },
} as const;

export interface LineChange {
  /** Zero-based line of the document. */
  readonly line: number;
  readonly text: string;
}

/**
 * The lines that the layout changes.
 * @param range first and last line to be looked at; the whole document when left out
 */
export function formatChanges(
  document: LentilDocument,
  range?: { readonly first: number; readonly last: number },
): LineChange[] {
  const first = range ? document.blockAt(range.first) : 0;
  const last = range ? document.blockAt(range.last) : document.blocks.length - 1;
  const changes: LineChange[] = [];
  for (let at = first; at <= last; at++) {
    const block = document.blocks[at] as Block;
    const start = document.starts[at] as number;
    for (const [number, text] of formatBlock(block).entries()) {
      const line = start + number;
      if (range && (line < range.first || line > range.last)) continue;
      if (text !== block.lines[number]?.text) changes.push({ line, text });
    }
  }
  return changes;
}

/** The whole text in the canonical layout; line ends and a byte order mark stay as they are. */
export function formatText(document: LentilDocument): string {
  const parts: string[] = document.byteOrderMark ? ['\uFEFF'] : [];
  for (const block of document.blocks) {
    for (const [number, text] of formatBlock(block).entries()) parts.push(text, block.lines[number]?.end ?? '');
  }
  return parts.join('');
}

/** The lines of one block as they should stand. A block that cannot be placed is left untouched. */
function formatBlock(block: Block): string[] {
  const sections = block.kind === 'unnamed' ? [] : sectionsOf(block);
  if (block.kind === 'unnamed' || sections.some(({ unclear }) => unclear)) return block.lines.map(({ text }) => text);
  const lines = block.lines.map((line, number) =>
    layOut(line.text, line.parsed(block.kind).node, sections[number] as LineSection, block),
  );
  return alignPowers(lines).map(join);
}

/** A line on its way: what stands before, in and after the columns. */
interface Laid {
  /** Whole line when it is left as it is. */
  readonly asIs: string | null;
  readonly indent: number;
  readonly width: number;
  readonly head: string;
  readonly values: readonly string[];
  readonly comment: string;
  /** Values that are sphere and cylinder figures of a power line, to be set under one another. */
  readonly columns: number;
}

const untouched = (text: string): Laid => ({
  asIs: text,
  indent: 0,
  width: 0,
  head: '',
  values: [],
  comment: '',
  columns: 0,
});

function layOut(text: string, node: LineNode, section: LineSection, block: Block): Laid {
  if (section.kind === 'none') return untouched(text);
  const cut = commentStart(text);
  const content = text.slice(indentOf(text), contentEnd(text, cut));
  const comment = text.slice(cut, contentEnd(text));
  const place = placeOf(section, node);
  const spaced = spaceOut(content, node);
  if (!spaced || !isSameMeaning(content, [spaced.head, ...spaced.values].join(' '), block)) {
    return { ...untouched(''), asIs: null, ...place, head: content, comment };
  }
  return { asIs: null, ...place, ...spaced, comment };
}

function placeOf({ kind }: LineSection, node: LineNode): { readonly indent: number; readonly width: number } {
  if (kind === 'header' || kind === 'file') return { indent: 0, width: 0 };
  if (kind === 'reading-header' || node.kind === 'end') return { indent: LAYOUT.body.indent, width: 0 };
  return kind === 'reading' ? LAYOUT.reading : LAYOUT.body;
}

function join({ asIs, indent, width, head, values, comment }: Laid): string {
  if (asIs !== null) return asIs;
  const first =
    values.length > 0 ? head.padEnd(width === 0 ? head.length + 1 : Math.max(width, head.length + 1)) : head;
  const line = ' '.repeat(indent) + first + values.join('');
  return comment === '' ? line : `${line}  ${comment}`;
}

/** Sets the figures of powers on neighbouring lines right under one another. */
function alignPowers(lines: readonly Laid[]): Laid[] {
  const out = [...lines];
  for (let from = 0; from < out.length; ) {
    let to = from;
    while (to < out.length && (out[to] as Laid).columns > 0 && (out[to] as Laid).indent === (out[from] as Laid).indent)
      to++;
    for (let column = 0; column < 2; column++) {
      const run = out.slice(from, to).filter(({ columns }) => columns > column);
      const width = Math.max(0, ...run.map(({ values }) => (values[column] as string).trimEnd().length));
      for (let at = from; at < to; at++) {
        const laid = out[at] as Laid;
        if (laid.columns <= column) continue;
        const figure = (laid.values[column] as string).trimEnd();
        const gap = (laid.values[column] as string).length - figure.length;
        const values = laid.values.map((value, index) =>
          index === column ? figure.padStart(width) + ' '.repeat(gap) : value,
        );
        out[at] = { ...laid, values };
      }
    }
    from = Math.max(to, from + 1);
  }
  return out;
}

/**
 * Whether two spellings of a line say the same and are told the same things, wherever their parts stand. The layout puts
 * plain blanks in the place of odd ones, so those are told no more.
 */
function isSameMeaning(before: string, after: string, block: Block): boolean {
  // A number sign that comes apart from what it touched would begin a comment.
  if (commentStart(after) < after.length) return false;
  const kind = block.kind === 'tolerance' ? 'tolerance' : undefined;
  const [one, two] = [parseLine(before, kind), parseLine(after, kind)];
  return bare(one.node) === bare(two.node) && codes(one.problems) === codes(two.problems);
}

const bare = (node: LineNode): string =>
  JSON.stringify(node, (key, value) => (key === 'start' || key === 'end' ? undefined : value));
const codes = (problems: readonly Problem[]): string =>
  problems
    .map(({ code }) => code)
    .filter((code) => code !== 'look-alike')
    .join();
