/** How many orders passed when they were first read, in all and week by week. */
import type { Verdict } from '../../../orders';
import { mondayOf, weekOf } from '../calendar';
import { firstReading, type Seen, usableDay } from '../seen';
import { type Rate, rateOf } from '../statistics/rate';

export interface Passed {
  /** Orders with a first reading. */
  readonly read: number;
  readonly accept: number;
  readonly reject: number;
  /** Nothing outside, but something called for was not read or could not be judged at that reading. */
  readonly incomplete: number;
  /** First-pass yield: accepted of all first read. */
  readonly yield: Rate;
  readonly rejectRate: Rate;
}

export interface Week extends Passed {
  /** ISO 8601, such as `2026-W48`. */
  readonly week: string;
  /** Its Monday. */
  readonly from: string;
}

export interface FirstPassJson extends Passed {
  readonly weeks: readonly Week[];
  /** Orders whose first reading has no date. */
  readonly undated: Passed;
}

/** Counts verdicts of first readings. */
export class PassCount {
  readonly #counts = { accept: 0, reject: 0, incomplete: 0, unread: 0 };

  add(verdict: Verdict): void {
    this.#counts[verdict]++;
  }

  result(): Passed {
    const { accept, reject, incomplete } = this.#counts;
    const read = accept + reject + incomplete;
    return { read, accept, reject, incomplete, yield: rateOf(accept, read), rejectRate: rateOf(reject, read) };
  }
}

export class Verdicts {
  readonly #all = new PassCount();
  readonly #undated = new PassCount();
  readonly #weeks = new Map<string, PassCount>();

  add(seen: Seen): void {
    if (!seen.first) return;
    const { verdict } = seen.first.evaluation;
    this.#all.add(verdict);
    this.#countOf(usableDay(firstReading(seen)?.date)).add(verdict);
  }

  result(): FirstPassJson {
    const weeks = [...this.#weeks].sort(([a], [b]) => (a < b ? -1 : 1));
    return {
      ...this.#all.result(),
      weeks: weeks.map(([from, count]) => ({ week: weekOf(from), from, ...count.result() })),
      undated: this.#undated.result(),
    };
  }

  #countOf(day: string | null): PassCount {
    if (day === null) return this.#undated;
    const monday = mondayOf(day);
    const known = this.#weeks.get(monday);
    if (known) return known;
    const made = new PassCount();
    this.#weeks.set(monday, made);
    return made;
  }
}
