/** Mean and spread of figures that come one by one, in the same memory however many they are. */
import { combineMeans, combineVariances, mean, variance } from 'simple-statistics';

export interface Moments {
  readonly count: number;
  readonly mean: number;
  /** Standard deviation with n - 1; null below two figures. */
  readonly sd: number | null;
  readonly least: number;
  readonly most: number;
}

/** Figures are kept until there are so many, and then put together with what came before. */
const CHUNK = 256;

export class Sample {
  #kept: number[] = [];
  #count = 0;
  #mean = 0;
  /** Of the population: with n. */
  #variance = 0;
  #least = Number.POSITIVE_INFINITY;
  #most = Number.NEGATIVE_INFINITY;

  add(value: number): void {
    this.#kept.push(value);
    if (value < this.#least) this.#least = value;
    if (value > this.#most) this.#most = value;
    if (this.#kept.length === CHUNK) this.#putTogether();
  }

  /** Null where nothing was added. */
  moments(): Moments | null {
    this.#putTogether();
    if (this.#count === 0) return null;
    const sd = this.#count > 1 ? Math.sqrt((this.#variance * this.#count) / (this.#count - 1)) : null;
    return { count: this.#count, mean: this.#mean, sd, least: this.#least, most: this.#most };
  }

  #putTogether(): void {
    const count = this.#kept.length;
    if (count === 0) return;
    const [ownMean, ownVariance] = [mean(this.#kept), variance(this.#kept)];
    if (this.#count === 0) {
      this.#mean = ownMean;
      this.#variance = ownVariance;
    } else {
      this.#variance = combineVariances(this.#variance, this.#mean, this.#count, ownVariance, ownMean, count);
      this.#mean = combineMeans(this.#mean, this.#count, ownMean, count);
    }
    this.#count += count;
    this.#kept = [];
  }
}

/** The samples put together as if they had been one. Null where all are empty. */
export function together(samples: readonly Moments[]): Omit<Moments, 'least' | 'most'> | null {
  const [first, ...rest] = samples;
  if (!first) return null;
  let { count, mean: middle } = first;
  let spread = populationVariance(first);
  for (const one of rest) {
    spread = combineVariances(spread, middle, count, populationVariance(one), one.mean, one.count);
    middle = combineMeans(middle, count, one.mean, one.count);
    count += one.count;
  }
  return { count, mean: middle, sd: count > 1 ? Math.sqrt((spread * count) / (count - 1)) : null };
}

const populationVariance = ({ sd, count }: Moments): number => (sd === null ? 0 : (sd ** 2 * (count - 1)) / count);
