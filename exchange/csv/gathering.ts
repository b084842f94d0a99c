/** Orders as they come together from the rows of a table. */
import type { Eye } from '../../orders';
import type { Fact, ReadFacts, ReadingHead } from '../parts/to-order';

export interface ReadingDraft {
  readonly head: ReadingHead;
  readonly lenses: ReadFacts[];
  readonly eyes: Set<Eye | null>;
}

export interface OrderDraft {
  readonly name: string | null;
  readonly facts: Fact[];
  readonly lines: Set<string>;
  readonly readings: Map<string, ReadingDraft>;
}

export class Gathering {
  readonly #byName = new Map<string, OrderDraft>();
  readonly orders: OrderDraft[] = [];

  /** The order of a row. Rows without a name are orders of their own. */
  order(name: string | null): OrderDraft {
    const known = name === null ? undefined : this.#byName.get(name);
    if (known) return known;
    const order: OrderDraft = { name, facts: [], lines: new Set(), readings: new Map() };
    this.orders.push(order);
    if (name !== null) this.#byName.set(name, order);
    return order;
  }
}

/** Takes facts of an order; false where one of them was said otherwise before, and then nothing is taken. */
export function takeOrdered(order: OrderDraft, facts: readonly Fact[]): boolean {
  const before = (fact: Fact) => order.facts.find(({ code, eye }) => code === fact.code && eye === fact.eye);
  if (facts.some((fact) => (before(fact)?.value ?? fact.value) !== fact.value)) return false;
  for (const fact of facts) if (!before(fact)) order.facts.push(fact);
  return true;
}

/** Takes what was read of one lens. The same lens once more in one reading is a repeat. */
export function takeRead(
  order: OrderDraft,
  key: string,
  head: ReadingHead,
  eye: Eye | null,
  facts: readonly Fact[],
): void {
  let reading = order.readings.get(key);
  if (!reading) {
    reading = { head, lenses: [], eyes: new Set() };
    order.readings.set(key, reading);
  }
  if (facts.length === 0) return;
  reading.lenses.push({ eye, again: reading.eyes.has(eye), facts });
  reading.eyes.add(eye);
}
