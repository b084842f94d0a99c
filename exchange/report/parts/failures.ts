/** What fails when orders are first read, and what probably happened: each ranked, so that the few that matter most stand first. */
import { type Quantity, tidy } from '../../../orders';
import type { Seen } from '../seen';
import { Frequency } from '../statistics/named';
import { type Rate, rateOf } from '../statistics/rate';

export interface Ranked {
  /** Quantity of a measure, or code of a cause. */
  readonly what: string;
  /** Orders in which it failed, of all orders rejected when first read. */
  readonly orders: Rate;
  /** How many times in all; an order may fail in both lenses. */
  readonly times: number;
  /** Share of all times that this one and those above it make. */
  readonly cumulative: number;
}

export interface FailuresJson {
  /** Orders rejected when first read. */
  readonly orders: number;
  readonly measures: readonly Ranked[];
  readonly causes: readonly Ranked[];
  /** Rejected orders for which no cause was found. */
  readonly unexplained: Rate;
}

export class Failures {
  #orders = 0;
  #unexplained = 0;
  readonly #measures = new Pareto();
  readonly #causes = new Pareto();

  add({ first }: Seen): void {
    if (first?.evaluation.verdict !== 'reject') return;
    this.#orders++;
    const failed = first.evaluation.measures.filter(({ outcome }) => outcome === 'fail');
    this.#measures.add(failed.map(({ quantity }): Quantity => quantity));
    this.#causes.add(first.causes.map(({ code }) => code));
    if (first.causes.length === 0) this.#unexplained++;
  }

  result(): FailuresJson {
    const orders = this.#orders;
    return {
      orders,
      measures: this.#measures.result(orders),
      causes: this.#causes.result(orders),
      unexplained: rateOf(this.#unexplained, orders),
    };
  }
}

class Pareto {
  readonly #orders = new Frequency();
  readonly #times = new Frequency();

  /** @param names of one order, each as often as it came */
  add(names: readonly string[]): void {
    for (const name of names) this.#times.add(name);
    for (const name of new Set(names)) this.#orders.add(name);
  }

  result(orders: number): readonly Ranked[] {
    const ranked = this.#times.ranked();
    const inOrders = new Map(this.#orders.ranked().map(({ name, count }) => [name, count]));
    const all = ranked.reduce((sum, { count }) => sum + count, 0);
    let sum = 0;
    return ranked.map(({ name, count }) => {
      sum += count;
      return {
        what: name,
        orders: rateOf(inOrders.get(name) ?? 0, orders),
        times: count,
        cumulative: tidy(sum / all),
      };
    });
  }
}
