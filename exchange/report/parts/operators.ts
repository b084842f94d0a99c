/** First readings by the person who took them. */
import { firstReading, type Seen } from '../seen';
import { Named } from '../statistics/named';
import { PassCount, type Passed } from './verdicts';

export interface OperatorJson extends Passed {
  /** As in `reading … by`; null for readings that name nobody. */
  readonly by: string | null;
  /** Readings of any kind, first ones or not. */
  readonly readings: number;
}

interface Person {
  readonly passed: PassCount;
  readings: number;
}

const person = (): Person => ({ passed: new PassCount(), readings: 0 });

export class Operators {
  readonly #named = new Named(person);
  readonly #nobody = person();

  add(seen: Seen): void {
    for (const { by } of seen.order.readings) this.#of(by).readings++;
    const first = firstReading(seen);
    if (first && seen.first) this.#of(first.by).passed.add(seen.first.evaluation.verdict);
  }

  result(): readonly OperatorJson[] {
    const people = this.#named.sorted().map(([by, one]) => json(by, one));
    return this.#nobody.readings > 0 ? [...people, json(null, this.#nobody)] : people;
  }

  #of(by: string | null): Person {
    return by ? this.#named.of(by) : this.#nobody;
  }
}

const json = (by: string | null, { passed, readings }: Person): OperatorJson => ({ by, readings, ...passed.result() });
