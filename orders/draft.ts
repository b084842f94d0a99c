import type { Eye } from '../grammar';
import type { Power, PrismVector } from '../optics';
import type { Finding, FindingData, Level, Place } from './finding';
import type {
  Compensation,
  CylinderForm,
  Decentration,
  Design,
  LensMaterial,
  Placed,
  PrismUnclear,
  Purpose,
  Slab,
  Split,
  Supply,
} from './model';

/** What may be said of the lens before an eye, or of a power stated beside the order. */
interface OfLens {
  named: true;
  power: { readonly power: Power; readonly form: CylinderForm };
  add: number;
  'upper-add': number;
  intermediate: number;
  prism: PrismVector;
  'prism-unclear': PrismUnclear;
  role: 'kept' | 'balance';
  make: true;
  design: Design;
  material: LensMaterial;
  pd: number;
  near: number;
  height: number;
  'upper-height': number;
  'below-datum': number;
  inset: number;
  decentre: Decentration;
  blank: number;
  'base-curve': number;
  centre: number;
  edge: number;
  min: number;
  slab: Slab;
  thinning: number;
}

/** What may be said of the order as a whole. */
interface OfOrder {
  pd: number;
  near: number;
  a: number;
  b: number;
  dbl: number;
  ed: number;
  vertex: number;
  panto: number;
  wrap: number;
  tested: number;
  supply: Supply;
  purpose: Purpose;
  compensation: Compensation;
  standard: string;
  yoked: true;
  'prism-total': true;
  split: Split;
}

type Said<Of> = { [K in keyof Of]: Placed<Of[K]> | null };

export type SaidOfLens = Said<OfLens>;
export type SaidOfOrder = Said<OfOrder>;
export type Key = keyof OfLens | keyof OfOrder;

/** The whole order, the lens before an eye, or a power stated beside the order for an eye, such as `rx.R`. */
export type Owner = 'order' | Eye | `${string}.${Eye}`;

/** All fields at once and in one order: objects of one shape are far cheaper than maps, and every order has three. */
const nothingOfLens = (): SaidOfLens => ({
  named: null,
  power: null,
  add: null,
  'upper-add': null,
  intermediate: null,
  prism: null,
  'prism-unclear': null,
  role: null,
  make: null,
  design: null,
  material: null,
  pd: null,
  near: null,
  height: null,
  'upper-height': null,
  'below-datum': null,
  inset: null,
  decentre: null,
  blank: null,
  'base-curve': null,
  centre: null,
  edge: null,
  min: null,
  slab: null,
  thinning: null,
});

const nothingOfOrder = (): SaidOfOrder => ({
  pd: null,
  near: null,
  a: null,
  b: null,
  dbl: null,
  ed: null,
  vertex: null,
  panto: null,
  wrap: null,
  tested: null,
  supply: null,
  purpose: null,
  compensation: null,
  standard: null,
  yoked: null,
  'prism-total': null,
  split: null,
});

/** Gathers the values of one order as its lines are read, and notices when something is said twice. */
export class Draft {
  readonly findings: Finding[] = [];
  readonly order = nothingOfOrder();
  readonly R = nothingOfLens();
  readonly L = nothingOfLens();
  readonly #beside = new Map<Owner, SaidOfLens>();

  tell(
    code: string,
    level: Level,
    { line, start, end }: Place,
    data: FindingData = {},
    eye: Eye | null = null,
    related: readonly Place[] = [],
  ): void {
    this.findings.push({ code, level, data, eye, line, start, end, ...(related.length > 0 ? { related } : {}) });
  }

  /** Keeps the first value of a key. A second one that differs is told, never summed and never taken instead. */
  put(owner: Owner, key: Key, value: unknown, place: Place, eye: Eye | null = null): void {
    const said = this.#saidOf(owner);
    const first = said[key];
    if (!first) {
      said[key] = { value, place };
      return;
    }
    if (JSON.stringify(first.value) === JSON.stringify(value)) return;
    this.tell('said-twice', 'error', place, { in: 'order' }, eye, [first.place]);
  }

  /** Takes a value only where the order itself says nothing; that is how `defaults` hold. Returns whether it was taken. */
  putDefault(owner: Owner, key: Key, value: unknown, place: Place): boolean {
    const said = this.#saidOf(owner);
    if (said[key]) return false;
    said[key] = { value, place };
    return true;
  }

  /** What is stated beside the order for an eye under a word such as `rx`; null where nothing is. */
  beside(word: string, eye: Eye): SaidOfLens | null {
    return this.#beside.size === 0 ? null : (this.#beside.get(`${word}.${eye}`) ?? null);
  }

  /** What was put under a key is of its type, since the lines of the order are the only ones to put anything. */
  #saidOf(owner: Owner): Partial<Record<Key, Placed<unknown> | null>> {
    if (owner === 'order' || owner === 'R' || owner === 'L') return this[owner];
    let said = this.#beside.get(owner);
    if (!said) {
      said = nothingOfLens();
      this.#beside.set(owner, said);
    }
    return said;
  }
}
