/** What a cause looks at: an order whose reading fails somewhere, and a way to ask what other figures would have given. */
import type { Eye } from '../../grammar';
import type { Power } from '../../optics';
import type { Context } from '../context';
import { type Evaluation, type MeasuredPart, measuresOf } from '../evaluate';
import type { Case, Measure, Quantity } from '../measures/measure';
import { powerAtReference, powerRead } from '../measures/power';
import { EYES, type Order, type TypedPower } from '../model';
import type { Read, ReadValues } from '../reduce';

/** A measure that lies outside a limit by a figure; recorded facts have none and no cause of this kind. */
export type Failed = Measure & {
  readonly deviation: number;
  readonly limit: NonNullable<Measure['limit']> & { readonly amount: number };
  readonly place: NonNullable<Measure['place']>;
};

export interface Scene {
  readonly order: Order;
  readonly evaluation: Evaluation;
  readonly values: ReadValues;
  readonly context: Context;
  readonly failed: readonly Failed[];
  /** The measures as they would be with other values read, or with another order. */
  readonly measuresWith: (change: Change, of: readonly Quantity[], refractionOf?: readonly Eye[]) => readonly Measure[];
}

export type Change = Partial<Pick<Case, 'order' | 'values'>>;

/** Null where nothing fails by a figure, which is nearly always, and then nothing more is worked out. */
export function sceneOf(order: Order, evaluation: Evaluation, context: Context): Scene | null {
  const { set, values, measures } = evaluation;
  if (!set || evaluation.verdict !== 'reject') return null;
  const failed = measures.filter(isFailed);
  if (failed.length === 0) return null;
  const measuresWith: Scene['measuresWith'] = (change, of, eyes = EYES) => {
    const changed = { order: change.order ?? order, values: change.values ?? values, set, guard: context.guard, eyes };
    return measuresOf(changed, [...new Set(of.map(partOf))]).filter(({ quantity }) => of.includes(quantity));
  };
  return { order, evaluation, values, context, failed, measuresWith };
}

function partOf(quantity: Quantity): MeasuredPart {
  if (REFRACTION.includes(quantity)) return 'refraction';
  if (ADDS.includes(quantity)) return 'adds';
  return PHYSICAL.includes(quantity) ? 'physical' : 'places';
}

const isFailed = (one: Measure): one is Failed =>
  one.outcome === 'fail' && one.deviation !== null && one.limit?.amount != null && one.place !== null;

const ADDS: readonly Quantity[] = ['add', 'upper-add', 'intermediate', 'degression'];
const PHYSICAL: readonly Quantity[] = [
  'base-curve',
  'centre-thickness',
  'edge-thickness',
  'min-thickness',
  'warp',
  'slab',
];

/** The figures of one lens that belong together: a slip in its reading shows in all of them. */
export const REFRACTION: readonly Quantity[] = ['power', 'cylinder', 'axis'];

export const isRefraction = ({ quantity }: Measure): boolean => REFRACTION.includes(quantity);

/** The power a lens is held against, minus form; null where it is not known. */
export function wantedPower({ order }: Scene, eye: Eye): Power | null {
  const wanted = powerAtReference(order, order.lenses[eye]);
  return wanted === 'unstated' ? null : wanted;
}

/** The power read at the reference point of a lens, minus form. */
export const readPower = ({ order, values }: Scene, eye: Eye): Read<Power> | null =>
  powerRead(values, order.lenses[eye]);

/** How the power of a lens was typed in its reading. */
export function typedForm(scene: Scene, eye: Eye): TypedPower['form'] | null {
  const read = readPower(scene, eye);
  const found = read && scene.order.readings[read.reading]?.measurements.find(({ place }) => place === read.place);
  return found?.quantity === 'power' ? found.value.form : null;
}
