/** Orders that wait: not read, not complete, or refused without a decision, by how long. */
import { daysBetween } from '../calendar';
import { type Seen, usableDay, type Where } from '../seen';
import { dueOf } from './order-lines';

export type Waiting = 'unread' | 'incomplete' | 'reject';

export interface Aged extends Where {
  readonly state: Waiting;
  /** Day of the newest reading, or the day on which an unread order is due. */
  readonly day: string;
  /** Days from then to the day of the report; an order that is not due yet has a negative age. */
  readonly age: number;
}

export interface AgeBucket {
  /** Days, both ends included; null is open. */
  readonly from: number | null;
  readonly to: number | null;
  readonly count: number;
}

export interface WaitingJson {
  readonly state: Waiting;
  readonly orders: number;
  readonly ages: readonly AgeBucket[];
  /** Orders without a day to count from. */
  readonly undated: number;
}

export interface OpenJson {
  readonly waiting: readonly WaitingJson[];
  /** Those that have waited longest. */
  readonly oldest: readonly Aged[];
}

const STATES: readonly Waiting[] = ['unread', 'incomplete', 'reject'];
const EDGES: readonly (readonly [from: number | null, to: number | null])[] = [
  [null, -1],
  [0, 7],
  [8, 14],
  [15, 30],
  [31, 90],
  [91, null],
];

/** How many are listed by name. */
const OLDEST = 25;

type Dated = Omit<Aged, 'age'>;

export class OpenOrders {
  readonly #days = {
    unread: new Map<string, number>(),
    incomplete: new Map<string, number>(),
    reject: new Map<string, number>(),
  };
  readonly #undated = { unread: 0, incomplete: 0, reject: 0 };
  #oldest: Dated[] = [];

  add({ analysis, order, evaluation: { verdict }, where }: Seen): void {
    if (verdict === 'accept' || order.decided) return;
    const day = usableDay(
      verdict === 'unread' ? dueOf(analysis.block) : newest(order.readings.map(({ date }) => date)),
    );
    if (day === null) {
      this.#undated[verdict]++;
      return;
    }
    const days = this.#days[verdict];
    days.set(day, (days.get(day) ?? 0) + 1);
    this.#oldest.push({ ...where, state: verdict, day });
    // Sorted only now and then, so that each order costs little.
    if (this.#oldest.length >= 8 * OLDEST) this.#oldest = oldestOf(this.#oldest);
  }

  /** @param today the day that ages are counted to; null where no file holds a date */
  result(today: string | null): OpenJson {
    const age = (day: string): number => (today === null ? 0 : daysBetween(day, today));
    return {
      waiting: STATES.map((state) => {
        const dated = [...this.#days[state]].map(([day, count]) => ({ age: age(day), count }));
        const undated = this.#undated[state];
        const within = (from: number | null, to: number | null): number =>
          sum(dated.filter((one) => one.age >= (from ?? one.age) && one.age <= (to ?? one.age)));
        const ages = EDGES.map(([from, to]) => ({ from, to, count: within(from, to) }));
        return { state, orders: sum(dated) + undated, ages, undated };
      }),
      oldest: oldestOf(this.#oldest)
        .map((one) => ({ ...one, age: age(one.day) }))
        .filter((one) => one.age >= 0),
    };
  }
}

const sum = (list: readonly { readonly count: number }[]): number =>
  list.reduce((total, { count }) => total + count, 0);

/** Equal days stay in the order in which they were read. */
const oldestOf = (list: readonly Dated[]): Dated[] =>
  list.toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0)).slice(0, OLDEST);

const newest = (days: readonly (string | null)[]): string | null =>
  days.reduce((latest, day) => (day !== null && (latest === null || day > latest) ? day : latest), null);
