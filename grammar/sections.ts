/**
 * What each line of a block stands for: the header, a line of the order, a line of one of its readings, or a line for
 * the whole file. Decided from the words, and from indentation only where words leave it open.
 */
import type { Block } from './document';
import { indentOf } from './text';
import type { LineNode } from './tree';
import { lineWord } from './vocabulary';

export type SectionKind = 'header' | 'body' | 'reading-header' | 'reading' | 'file' | 'none';

export interface LineSection {
  /** `body` is a line of the block itself; `none` is a blank, a comment, or a line that could not be read. */
  readonly kind: SectionKind;
  /** A word that only an order can have, typed below a reading: it belongs to the order all the same. */
  readonly belowReading: boolean;
  /** A word that both can have, below a reading but indented like the order’s own lines. */
  readonly unclear: boolean;
}

const of = (kind: SectionKind): LineSection => ({ kind, belowReading: false, unclear: false });

const NONE = of('none');
const FILE = of('file');
const HEADER = of('header');
const BODY = of('body');
const BODY_BELOW: LineSection = { kind: 'body', belowReading: true, unclear: false };
const READING_HEADER = of('reading-header');
const READING = of('reading');
const READING_UNCLEAR: LineSection = { kind: 'reading', belowReading: false, unclear: true };

const SECTIONS = Symbol('sections');

/** The section of every line of a block, in its order; worked out once for each block. */
export function sectionsOf(block: Block): readonly LineSection[] {
  let known = block.memo.get(SECTIONS) as readonly LineSection[] | undefined;
  if (!known) {
    known = sectionsIn(block);
    block.memo.set(SECTIONS, known);
  }
  return known;
}

function sectionsIn(block: Block): LineSection[] {
  const header = indentOf(block.lines[0]?.text ?? '');
  let reading: { readonly indent: number; deeper: boolean } | null = null;
  return block.lines.map((line) => {
    const { node } = line.parsed(block.kind);
    if (node.kind === 'blank' || node.kind === 'unknown') return NONE;
    if (HEADERS.has(node.kind)) return HEADER;
    const indent = indentOf(line.text);
    if (node.kind === 'standard' && (block.kind === 'preamble' || indent <= header)) return FILE;
    if (node.kind === 'reading') {
      reading = { indent, deeper: false };
      return READING_HEADER;
    }
    if (node.kind === 'end') {
      reading = null;
      return BODY;
    }
    if (!reading) return BODY;
    if (!canStandIn('reading', node)) return BODY_BELOW;
    if (indent > reading.indent) {
      reading.deeper = true;
      return READING;
    }
    // A reading whose lines stand deeper than its own word has a style; a line that leaves it may be the order’s.
    return reading.deeper && reading.indent > header && canStandIn('order', node) ? READING_UNCLEAR : READING;
  });
}

const HEADERS = new Set<LineNode['kind']>(['order', 'instrument', 'defaults', 'tolerance']);

function canStandIn(block: 'order' | 'reading', node: LineNode): boolean {
  const word = node.head ? lineWord(node.head.word) : undefined;
  return word?.blocks.includes(block) ?? false;
}

const WITH_OWN_LINES = new Set<Block['kind']>(['instrument', 'tolerance', 'defaults']);
const NOWHERE: readonly number[] = [];

/**
 * The lines of an instrument, a house set or the defaults that such a block cannot have, counted from its first line:
 * which blocks a word belongs to is said once for each word, in the vocabulary. Orders and readings tell their lines
 * apart by themselves.
 */
export function misplacedLines(block: Block): readonly number[] {
  if (!WITH_OWN_LINES.has(block.kind)) return NOWHERE;
  const sections = sectionsOf(block);
  return block.lines.flatMap((line, number) => {
    const kind = sections[number]?.kind;
    if (kind === 'header' || kind === 'file' || kind === 'none') return [];
    const { head } = line.parsed(block.kind).node;
    const blocks: readonly string[] | undefined = head ? lineWord(head.word)?.blocks : undefined;
    return blocks && !blocks.includes(block.kind) ? [number] : [];
  });
}
