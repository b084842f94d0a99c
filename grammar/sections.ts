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

const NONE: LineSection = { kind: 'none', belowReading: false, unclear: false };
const of = (kind: SectionKind): LineSection => ({ kind, belowReading: false, unclear: false });

/** The section of every line of a block, in its order. */
export function sectionsOf(block: Block): LineSection[] {
  const header = indentOf(block.lines[0]?.text ?? '');
  let reading: { readonly indent: number; deeper: boolean } | null = null;
  return block.lines.map((line) => {
    const { node } = line.parsed(block.kind);
    if (node.kind === 'blank' || node.kind === 'unknown') return NONE;
    const indent = indentOf(line.text);
    if (node.kind === 'standard' && (block.kind === 'preamble' || indent <= header)) return of('file');
    if (HEADERS.has(node.kind)) return of('header');
    if (node.kind === 'reading') {
      reading = { indent, deeper: false };
      return of('reading-header');
    }
    if (node.kind === 'end') {
      reading = null;
      return of('body');
    }
    if (!reading) return of('body');
    if (!canStandIn('reading', node)) return { kind: 'body', belowReading: true, unclear: false };
    if (indent > reading.indent) {
      reading.deeper = true;
      return of('reading');
    }
    // A reading whose lines stand deeper than its own word has a style; a line that leaves it may be the order’s.
    const unclear = reading.deeper && reading.indent > header && canStandIn('order', node);
    return { kind: 'reading', belowReading: false, unclear };
  });
}

const HEADERS = new Set<LineNode['kind']>(['order', 'instrument', 'defaults', 'tolerance']);

function canStandIn(block: 'order' | 'reading', node: LineNode): boolean {
  const word = node.head ? lineWord(node.head.word) : undefined;
  return word?.blocks.includes(block) ?? false;
}
