/** How well readings repeat: the spread within what was read more than once, in all, by instrument and by operator. */
import type { Quantity, Unit } from '../../../orders';
import type { Seen } from '../seen';
import { Named } from '../statistics/named';
import { type Repeatability, Within } from '../statistics/within';
import { instrumentNameOf } from './reader';

export interface RepeatsJson extends Repeatability {
  readonly quantity: Quantity;
  readonly unit: Unit;
  /** Whose they are; null stands for all together. */
  readonly instrument: string | null;
  readonly by: string | null;
}

interface Kind {
  readonly unit: Unit;
  readonly all: Within;
  readonly byInstrument: Named<Within>;
  readonly byOperator: Named<Within>;
}

export class Repeats {
  readonly #kinds = new Map<Quantity, Kind>();

  add({ order: { readings }, evaluation: { measures, earlier } }: Seen): void {
    for (const measure of [...measures, ...earlier]) {
      const { repeats, unit, quantity, reading } = measure;
      if (repeats.length < 2 || unit === null) continue;
      const kind = this.#kindOf(quantity, unit);
      if (kind.unit !== unit) continue;
      const figures = repeats.map(({ deviation }) => deviation);
      kind.all.add(figures);
      const instrument = instrumentNameOf(measure, readings);
      const by = reading === null ? null : readings[reading]?.by;
      if (instrument) kind.byInstrument.of(instrument).add(figures);
      if (by) kind.byOperator.of(by).add(figures);
    }
  }

  #kindOf(quantity: Quantity, unit: Unit): Kind {
    let kind = this.#kinds.get(quantity);
    if (!kind) {
      const named = () => new Named(() => new Within());
      kind = { unit, all: new Within(), byInstrument: named(), byOperator: named() };
      this.#kinds.set(quantity, kind);
    }
    return kind;
  }

  result(): readonly RepeatsJson[] {
    const kinds = [...this.#kinds].sort(([a], [b]) => (a < b ? -1 : 1));
    return kinds.flatMap(([quantity, { unit, all, byInstrument, byOperator }]) =>
      [
        { instrument: null, by: null, found: all.result() },
        ...byInstrument.sorted().map(([instrument, within]) => ({ instrument, by: null, found: within.result() })),
        ...byOperator.sorted().map(([by, within]) => ({ instrument: null, by, found: within.result() })),
      ].flatMap(({ instrument, by, found }) => (found ? [{ quantity, unit, instrument, by, ...found }] : [])),
    );
  }
}
