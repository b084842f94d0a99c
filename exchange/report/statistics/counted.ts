/** Figures counted by their value: quantiles and bars without keeping each figure. */

/** Figures beyond so many steps are counted at the end, so that wild figures cannot fill the memory. */
const MOST_STEPS = 5_000;

export interface Bin {
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

export class Counted {
  readonly #step: number;
  readonly #counts = new Map<number, number>();
  #total = 0;

  /** @param step to which figures are rounded before they are counted */
  constructor(step: number) {
    this.#step = step;
  }

  add(value: number): void {
    const at = Math.max(-MOST_STEPS, Math.min(MOST_STEPS, Math.round(value / this.#step)));
    this.#counts.set(at, (this.#counts.get(at) ?? 0) + 1);
    this.#total++;
  }

  /**
   * Quantiles of the counted figures; between two of them in proportion, as most libraries do it. Null where nothing was
   * counted.
   * @param shares from 0 to 1
   */
  quantiles(shares: readonly number[]): readonly number[] | null {
    if (this.#total === 0) return null;
    const sorted = [...this.#counts].sort(([a], [b]) => a - b);
    return shares.map((share) => {
      const rank = share * (this.#total - 1);
      const [low, high] = [valueAt(sorted, Math.floor(rank)), valueAt(sorted, Math.ceil(rank))];
      return (low + (high - low) * (rank - Math.floor(rank))) * this.#step;
    });
  }

  /** Bars of a width that is a multiple of the step; the first and the last also hold everything beyond. */
  bins(from: number, to: number, width: number): readonly Bin[] {
    const number = Math.round((to - from) / width);
    const counts = new Array<number>(number).fill(0);
    for (const [at, count] of this.#counts) {
      // A figure on the edge of two bars belongs to the one nearer to zero, so that exactly the limit is inside.
      const place = (at * this.#step - from) / width;
      const edge = Math.abs(place - Math.round(place)) < 1e-9;
      const bar = edge ? Math.round(place) - (at > 0 ? 1 : 0) : Math.floor(place);
      const kept = Math.max(0, Math.min(number - 1, bar));
      counts[kept] = (counts[kept] as number) + count;
    }
    return counts.map((count, at) => ({ from: from + at * width, to: from + (at + 1) * width, count }));
  }
}

function valueAt(sorted: readonly (readonly [value: number, count: number])[], rank: number): number {
  let below = 0;
  for (const [value, count] of sorted) {
    below += count;
    if (rank < below) return value;
  }
  return sorted.at(-1)?.[0] ?? 0;
}
