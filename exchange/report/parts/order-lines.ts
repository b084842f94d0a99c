/** Facts that stand in the lines of an order and that its verdict does not rest on. */
import type { Block } from '../../../orders';

/** The day of the `due` line. */
export function dueOf(block: Block): string | null {
  for (const line of block.lines) {
    const { node } = line.parsed(block.kind);
    if (node.kind === 'dated' && node.which === 'due') return node.date?.iso ?? null;
  }
  return null;
}

export interface Repeated {
  /** The order repeats another one. */
  readonly isRemake: boolean;
  /** Lenses said to be new ones. */
  readonly replaced: number;
  /** Reasons of both, as written. */
  readonly reasons: readonly string[];
}

/** What the lines say of lenses made again. */
export function repeatedIn(block: Block): Repeated {
  let isRemake = false;
  let replaced = 0;
  const reasons: string[] = [];
  for (const line of block.lines) {
    const { node } = line.parsed(block.kind);
    if (node.kind === 'remake-of') {
      isRemake = true;
      if (node.why) reasons.push(node.why.text);
    } else if (node.kind === 'eyes' && node.which === 'replaced') {
      for (const { eye } of node.eyes) replaced += eye === 'both' ? 2 : 1;
      if (node.reason) reasons.push(node.reason.text);
    }
  }
  return { isRemake, replaced, reasons };
}
