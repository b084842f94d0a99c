/** A reading as single facts, one set for each lens and repeat. */
import { type Block, type Eye, type Instrument, type Measurement, type Reading, tidy } from '../../orders';
import { slotOf } from '../../orders/reading-places';
import { figurePart, prismParts } from './make-part';
import type { Part, PartCode } from './part';

/** What was read of one lens, or of the pair, in one go. */
export interface ReadLens {
  readonly eye: Eye | null;
  /** 0 for the first time, 1 for the first repeat. */
  readonly repeat: number;
  /** Name of the instrument. */
  readonly with: string | null;
  readonly parts: readonly Part[];
}

/**
 * The facts of one reading: right lens, left lens, pair, each with its repeats. The zero of the instrument is taken off
 * absolute powers where one is said, and drum differences are worked out; eighths stay as typed.
 */
export function readParts(
  reading: Reading,
  block: Block,
  instruments: ReadonlyMap<string, Instrument>,
): readonly ReadLens[] {
  const times = new Map<string, number>();
  const sets = new Map<string, ReadLens & { readonly parts: Part[] }>();
  for (const one of reading.measurements) {
    const slot = `${slotOf(one)}.${one.eye}`;
    const repeat = times.get(slot) ?? 0;
    times.set(slot, repeat + 1);
    const instrument = one.with ?? reading.with;
    const key = JSON.stringify([one.eye, repeat, instrument]);
    const set = sets.get(key) ?? { eye: one.eye, repeat, with: instrument, parts: [] };
    sets.set(key, set);
    set.parts.push(...partsOf(one, block, one.corrected ? 0 : zeroOf(one, reading, instruments)));
  }
  const inOrder = [...sets.values()].filter(({ parts }) => parts.length > 0);
  return (['R', 'L', null] as const).flatMap((eye) => inOrder.filter((set) => set.eye === eye));
}

/** A part of a prism that a line does not mention was not read, so it is no fact. */
const UNSAID: Readonly<Record<string, PartCode>> = { right: 'prism-in', up: 'prism-up' };

const zeroOf = (one: Measurement, reading: Reading, instruments: ReadonlyMap<string, Instrument>): number =>
  reading.zero?.value ?? instruments.get(one.with ?? reading.with ?? '')?.zero ?? 0;

function partsOf(one: Measurement, block: Block, zero: number): readonly Part[] {
  const { eye, place, at } = one;
  const part = (code: PartCode, value: number): Part => figurePart(block, code, eye, value, place, at);
  switch (one.quantity) {
    case 'power': {
      const { sphere, cylinder, axis } = one.value;
      const lens = cylinder === 0 ? [] : [part('cylinder', cylinder), part('axis', axis || 180)];
      return [part('sphere', tidy(sphere - zero)), ...lens];
    }
    case 'add': {
      const { value } = one;
      if (value.kind === 'value') return [part(value.engraved ? 'engraved-add' : 'add', value.value)];
      // The add by a lens measure rests on an index, so only the drum gives one here.
      return value.kind === 'drum' ? [part('add', tidy(value.to - value.from))] : [];
    }
    case 'prism':
      return eye
        ? prismParts(block, eye, one.value, place, at).filter(({ code }) => code !== UNSAID[one.unsaid ?? ''])
        : [];
    case 'impact':
    case 'cosmetic':
    case 'marking':
      return [{ code: one.quantity, eye, text: one.value, at, workedOut: false, place }];
    // No format here has a place for it; its line is told as lost.
    case 'slab':
      return [];
    default:
      return [part(one.quantity, one.value)];
  }
}
