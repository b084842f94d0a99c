/** Things by name, for names that people type: never more of them than fit in memory. */

/** Names beyond so many are put together under `REST`. */
const MOST = 500;

export const REST = '(all others)';

export class Named<T> {
  readonly #make: () => T;
  readonly #things = new Map<string, T>();

  constructor(make: () => T) {
    this.#make = make;
  }

  of(name: string): T {
    const kept = this.#things.has(name) || this.#things.size < MOST ? name : REST;
    const known = this.#things.get(kept);
    if (known !== undefined) return known;
    const made = this.#make();
    this.#things.set(kept, made);
    return made;
  }

  /** By name, the same way on every machine. */
  sorted(): readonly (readonly [name: string, thing: T])[] {
    return [...this.#things].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  }
}

/** How often each name came, the most frequent first and equals by name. */
export class Frequency {
  readonly #counts = new Named(() => ({ count: 0 }));

  add(name: string, times = 1): void {
    this.#counts.of(name).count += times;
  }

  ranked(): readonly { readonly name: string; readonly count: number }[] {
    return this.#counts
      .sorted()
      .map(([name, { count }]) => ({ name, count }))
      .sort((a, b) => b.count - a.count);
  }
}
