/** What was made again, and what people decided beside the computed verdict. */
import type { Seen } from '../seen';
import { Frequency } from '../statistics/named';
import { type Rate, rateOf } from '../statistics/rate';
import { repeatedIn } from './order-lines';

export interface RemakesJson {
  /** Orders that repeat another one (`remake-of`), of all orders. */
  readonly remakeOrders: Rate;
  /** Orders in which a lens was replaced, of all orders; and the lenses. */
  readonly ordersReplaced: Rate;
  readonly lensesReplaced: number;
  /** Orders decided to be made again, of all orders. */
  readonly decidedRemake: Rate;
  /** Orders that a person accepted although they were outside a limit when decided, of all orders. */
  readonly acceptedOutside: Rate;
  /** Orders that a person refused although nothing was outside. */
  readonly refusedInside: Rate;
  /** Orders accepted on a later reading after one that failed, without a word of what was done, of all orders. */
  readonly reworkUnsaid: Rate;
  /** As written, the most frequent first; at most thirty. */
  readonly reasons: readonly { readonly why: string; readonly count: number }[];
}

const MOST_REASONS = 30;

export class Remakes {
  readonly #counts = { orders: 0, remake: 0, replaced: 0, lenses: 0, decided: 0, outside: 0, inside: 0, unsaid: 0 };
  readonly #reasons = new Frequency();

  add({ analysis, order, evaluation: { verdict, reservations } }: Seen): void {
    const counts = this.#counts;
    const { isRemake, replaced, reasons } = repeatedIn(analysis.block);
    counts.orders++;
    counts.lenses += replaced;
    if (isRemake) counts.remake++;
    if (replaced > 0) counts.replaced++;
    if (order.decided?.verdict === 'remake') counts.decided++;
    if (order.decided?.verdict === 'accept' && verdict === 'reject') counts.outside++;
    if (order.decided?.verdict === 'reject' && verdict === 'accept') counts.inside++;
    if (reservations.includes('rework-unsaid')) counts.unsaid++;
    for (const why of reasons) this.#reasons.add(why);
  }

  result(): RemakesJson {
    const { orders, remake, replaced, lenses, decided, outside, inside, unsaid } = this.#counts;
    return {
      remakeOrders: rateOf(remake, orders),
      ordersReplaced: rateOf(replaced, orders),
      lensesReplaced: lenses,
      decidedRemake: rateOf(decided, orders),
      acceptedOutside: rateOf(outside, orders),
      refusedInside: rateOf(inside, orders),
      reworkUnsaid: rateOf(unsaid, orders),
      reasons: this.#reasons
        .ranked()
        .slice(0, MOST_REASONS)
        .map(({ name, count }) => ({ why: name, count })),
    };
  }
}
