/** How far first readings lie from the order, measure by measure, and how that fits between the limits. */
import { type Measure, type Quantity, tidy, type Unit } from '../../../orders';
import type { Seen, Where } from '../seen';
import { type Capability, capabilityOf } from '../statistics/capability';
import { type Bin, Counted } from '../statistics/counted';
import { type Rate, rateOf } from '../statistics/rate';
import { Sample } from '../statistics/sample';
import { SMALL } from '../statistics/small';

export interface Spread {
  readonly mean: number;
  readonly sd: number | null;
  readonly least: number;
  readonly most: number;
}

export interface Point extends Where {
  readonly eye: 'R' | 'L' | null;
  readonly deviation: number;
  readonly limit: number;
}

export interface DeviationJson {
  readonly quantity: Quantity;
  readonly unit: Unit;
  /** `above` for sizes, which have no sign and so a limit on one side only. */
  readonly sides: 'both' | 'above';
  readonly readings: number;
  readonly small: boolean;
  /** Read less ordered, in the unit. */
  readonly deviation: Spread & { readonly p05: number; readonly median: number; readonly p95: number };
  /** Outside the limit, of those that were judged by one. */
  readonly outside: Rate;
  /** The same deviations as shares of their own limits, which differ from order to order; null where none had a limit. */
  readonly inLimits: (Spread & { readonly bins: readonly Bin[]; readonly capability: Capability | null }) | null;
  /** The farthest outside their limits. */
  readonly worst: readonly Point[];
}

/** Prism is judged by its size, wherever its base lies. */
const SIZES: ReadonlySet<Quantity> = new Set([
  'prism',
  'prism-horizontal',
  'prism-vertical',
  'warp',
  'segment-tilt',
  'slab',
]);

/** To what deviations are rounded for quantiles; finer than any instrument of the bench shows. */
const STEPS: Readonly<Record<Unit, number>> = { D: 0.005, prism: 0.005, mm: 0.01, deg: 0.1 };

const WORST = 5;

export class Deviations {
  readonly #kinds = new Map<Quantity, Kind>();

  add({ first, where }: Seen): void {
    for (const measure of first?.evaluation.measures ?? []) {
      const { quantity, unit, deviation } = measure;
      if (deviation === null || unit === null) continue;
      let kind = this.#kinds.get(quantity);
      if (!kind) {
        kind = new Kind(quantity, unit);
        this.#kinds.set(quantity, kind);
      }
      kind.add(measure, deviation, where);
    }
  }

  /** The measures in the order in which a report lists them: as often read. */
  result(): readonly DeviationJson[] {
    return [...this.#kinds.values()]
      .map((kind) => kind.result())
      .sort((a, b) => b.readings - a.readings || (a.quantity < b.quantity ? -1 : 1));
  }
}

class Kind {
  readonly #quantity: Quantity;
  readonly #unit: Unit;
  readonly #sides: 'both' | 'above';
  readonly #sample = new Sample();
  readonly #counted: Counted;
  readonly #shares = new Sample();
  /** In hundredths of the limit. */
  readonly #countedShares = new Counted(0.01);
  #judged = 0;
  #outside = 0;
  #worst: (Point & { readonly share: number })[] = [];

  constructor(quantity: Quantity, unit: Unit) {
    this.#quantity = quantity;
    this.#unit = unit;
    this.#sides = SIZES.has(quantity) ? 'above' : 'both';
    this.#counted = new Counted(STEPS[unit]);
  }

  add({ eye, limit, outcome, unit }: Measure, signed: number, where: Where): void {
    // A set may limit a place in millimetres for one order and in prism for the next; only one unit goes into one spread.
    if (unit !== this.#unit) return;
    const deviation = this.#sides === 'above' ? Math.abs(signed) : signed;
    this.#sample.add(deviation);
    this.#counted.add(deviation);
    if (outcome === 'pass' || outcome === 'fail') this.#judged++;
    if (outcome === 'fail') this.#outside++;
    const amount = limit?.amount;
    if (!amount) return;
    const share = deviation / amount;
    this.#shares.add(share);
    this.#countedShares.add(share);
    if (outcome === 'fail')
      this.#keepWorst({ ...where, eye, deviation: signed, limit: amount, share: Math.abs(share) });
  }

  #keepWorst(point: Point & { readonly share: number }): void {
    if (this.#worst.length === WORST && point.share <= (this.#worst.at(-1)?.share ?? 0)) return;
    this.#worst = [...this.#worst, point].sort((a, b) => b.share - a.share).slice(0, WORST);
  }

  result(): DeviationJson {
    const { count, ...spread } = rounded(this.#sample);
    const [p05, median, p95] = (this.#counted.quantiles([0.05, 0.5, 0.95]) ?? [0, 0, 0]).map(tidy) as [
      number,
      number,
      number,
    ];
    const shares = this.#shares.moments();
    const { count: _, ...inLimits } = shares ? rounded(this.#shares) : { count: 0 };
    return {
      quantity: this.#quantity,
      unit: this.#unit,
      sides: this.#sides,
      readings: count,
      small: count < SMALL,
      deviation: { ...spread, p05, median, p95 },
      outside: rateOf(this.#outside, this.#judged),
      inLimits: shares && {
        ...(inLimits as Spread),
        bins: this.#bins(),
        capability: capabilityOf(shares, this.#sides),
      },
      worst: this.#worst.map(({ share: _, ...point }) => point),
    };
  }

  /**
   * The limits lie on edges of bars, and nothing in the middle of one, since most deviations are near nothing. Sevenths keep
   * whole degrees against limits of two, three and five of them in bars of their own.
   */
  #bins(): readonly Bin[] {
    const bars =
      this.#sides === 'both'
        ? this.#countedShares.bins(-13 / 7, 13 / 7, 2 / 7)
        : this.#countedShares.bins(0, 13 / 7, 1 / 7);
    return bars.map(({ from, to, count }) => ({ from: tidy(from), to: tidy(to), count }));
  }
}

function rounded(sample: Sample): Spread & { readonly count: number } {
  const { count = 0, mean = 0, sd = null, least = 0, most = 0 } = sample.moments() ?? {};
  return { count, mean: tidy(mean), sd: sd === null ? null : tidy(sd), least: tidy(least), most: tidy(most) };
}
