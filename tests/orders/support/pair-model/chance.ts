/** Chances from a printed seed: the same seed gives the same pairs everywhere. Generator: mulberry32, public domain. */
export interface Chance {
  /** From 0 up to 1. */
  readonly next: () => number;
  /** A step of a scale, both ends included. */
  readonly step: (least: number, most: number, by: number) => number;
  readonly of: <T>(list: readonly T[]) => T;
  /** True so often. */
  readonly is: (share: number) => boolean;
}

export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    step: (least, most, by) => {
      const count = Math.floor((most - least) / by + 1e-9) + 1;
      return Number((least + Math.floor(next() * count) * by).toFixed(6)) + 0;
    },
    of: <T>(list: readonly T[]) => list[Math.floor(next() * list.length)] as T,
    is: (share) => next() < share,
  };
}
