/** House sets: limits of a laboratory on top of a published set. */
import type { Block } from '../grammar';
import type { Band } from '../tables';
import { isInBand } from './band';
import { isWithin } from './exact';
import type { Place } from './finding';
import type { Quantity } from './measures/quantity';

export interface HouseLimit {
  /** The word of the line, such as `axis`. */
  readonly word: string;
  readonly quantities: readonly Quantity[];
  /** Of the ordered cylinder for an axis, of the ordered figure for anything else; null holds everywhere. */
  readonly band: Band | null;
  readonly amount: number;
  readonly place: Place;
}

export interface HouseSet {
  readonly name: string;
  readonly parent: string | null;
  readonly parentPlace: Place | null;
  readonly limits: readonly HouseLimit[];
  readonly block: Block;
}

/** A house limit as it applies to one measure. */
export interface HouseOutcome {
  readonly set: string;
  readonly amount: number;
  readonly breached: boolean;
}

const QUANTITIES: Readonly<Record<string, readonly Quantity[]>> = {
  power: ['power'],
  cylinder: ['cylinder'],
  axis: ['axis'],
  add: ['add', 'intermediate', 'degression'],
  prism: ['prism', 'prism-horizontal', 'prism-vertical'],
  pd: ['pd'],
  'near-pd': ['near-pd'],
  height: ['height'],
  'height-difference': ['height-difference'],
  'base-curve': ['base-curve'],
  thickness: ['centre-thickness'],
  segment: ['segment-width'],
};

/** Reads a `tolerance` block. Returns null when it has no name. */
export function houseSetOf(block: Block): HouseSet | null {
  const header = block.lines[0]?.parsed(block.kind).node;
  if (header?.kind !== 'tolerance' || !header.name) return null;
  const limits: HouseLimit[] = [];
  for (const [line, { node }] of block.lines.map((one) => one.parsed(block.kind)).entries()) {
    if (node.kind !== 'limit' || node.limit?.value == null) continue;
    const { word, start } = node.which;
    const band =
      node.band && node.bound?.value != null
        ? node.band.word === 'to'
          ? { atMost: node.bound.value }
          : { above: node.bound.value }
        : null;
    limits.push({
      word,
      quantities: QUANTITIES[word] ?? [],
      band,
      amount: node.limit.value,
      place: { line, start, end: node.limit.end },
    });
  }
  const { from } = header;
  return {
    name: header.name.text,
    parent: from?.text ?? null,
    parentPlace: from ? { line: 0, start: from.start, end: from.end } : null,
    limits,
    block,
  };
}

/**
 * The house limit of a measure: the first line of its quantity whose band holds the figure, so bands may be written one
 * after another as in a printed table.
 * @param by the ordered cylinder for an axis, the ordered figure otherwise
 */
export function houseOutcome(
  set: HouseSet,
  measure: { readonly quantity: Quantity; readonly deviation: number | null },
  by: number,
): HouseOutcome | null {
  if (measure.deviation === null) return null;
  const limit = set.limits.find(
    ({ quantities, band }) => quantities.includes(measure.quantity) && (!band || isInBand(Math.abs(by), band)),
  );
  return limit ? { set: set.name, amount: limit.amount, breached: !isWithin(measure.deviation, limit.amount) } : null;
}
