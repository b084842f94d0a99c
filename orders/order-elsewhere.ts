/** The same order number in two files: what is known of the order in the other one, and whether it is the same order. */
import { type Block, blockAt, type Cuts, cutsOf, type LentilDocument, textAt } from '../grammar';
import { toMatrix } from '../optics';
import { attempt } from './attempt';
import { EYES, type Order, type OrderedLens } from './model';
import { nameInHeader, nameOfBlock } from './order-names';
import { resolveOrder } from './resolve';
import { figure } from './words';

/** An order of the same name in another file. */
export interface OrderElsewhere {
  /** Path of the file as it is told to a person. */
  readonly path: string;
  /** Line of its name, counted from 1. */
  readonly line: number;
  /** What `powersOf` gives for it. */
  readonly powers: string;
}

/** An order with what it orders, and its line counted from 1. */
export interface OrderPowers {
  readonly name: string;
  readonly line: number;
  readonly powers: string;
}

/**
 * The ordered powers, adds and prisms as one word, the same for two orders of the same lenses however they are written:
 * a power by its matrix (dioptres), a prism by its parts in the frame (prism dioptres). Null where no power is ordered,
 * so that there is nothing to compare.
 */
export function powersOf(order: Order): string | null {
  if (EYES.every((eye) => order.lenses[eye].written === null)) return null;
  return EYES.map((eye) => ofLens(order.lenses[eye])).join(' | ');
}

function ofLens({ written, add, prism }: OrderedLens): string {
  if (!written) return '';
  const matrix = attempt(() => toMatrix(written.value));
  if (!matrix) return 'beyond';
  const values = [matrix.xx, matrix.xy, matrix.yy, add?.value ?? 0, prism?.value.right ?? 0, prism?.value.up ?? 0];
  return values.map((value) => figure(value, 2).replace(/^-(0\.0*)$/, '$1')).join(' ');
}

/** The orders of a text that have one of some names, with what they order; those without a power are left out. */
export function orderPowersIn(text: string, isWanted: (name: string) => boolean): readonly OrderPowers[] {
  const cuts = cutsOf(text);
  const headers = cuts.kinds.map((kind, at) => (kind === 'order' ? nameInHeader(firstLineOf(cuts, at)) : null));
  if (!headers.some((name) => name !== null && isWanted(name))) return [];
  const defaults = cuts.kinds.indexOf('defaults');
  const shared = defaults >= 0 ? blockAt(cuts, defaults) : null;
  return headers.flatMap((name, at) =>
    name !== null && isWanted(name) ? ofBlock(name, blockAt(cuts, at), shared, cuts.firstLines[at] as number) : [],
  );
}

/** The same of a document. */
export function orderPowersOf(
  { blocks, starts }: LentilDocument,
  isWanted: (name: string) => boolean,
): readonly OrderPowers[] {
  const defaults = blocks.find(({ kind }) => kind === 'defaults') ?? null;
  return blocks.flatMap((block, at) => {
    const name = nameOfBlock(block);
    return name !== null && isWanted(name) ? ofBlock(name, block, defaults, starts[at] as number) : [];
  });
}

function ofBlock(name: string, block: Block, defaults: Block | null, firstLine: number): readonly OrderPowers[] {
  const powers = powersOf(resolveOrder(block, defaults).order);
  return powers === null ? [] : [{ name, line: firstLine + 1, powers }];
}

const firstLineOf = (cuts: Cuts, at: number): string => /^[^\r\n]*/.exec(textAt(cuts, at))?.[0] ?? '';
