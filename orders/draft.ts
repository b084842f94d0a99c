import type { Eye } from '../grammar';
import type { Finding, FindingData, Level, Place } from './finding';
import type { Placed } from './model';

/** Gathers the values of one order as its lines are read, and notices when something is said twice. */
export class Draft {
  readonly findings: Finding[] = [];
  readonly #values = new Map<string, Placed<unknown>>();

  tell(
    code: string,
    level: Level,
    place: Place,
    data: FindingData = {},
    eye: Eye | null = null,
    related: readonly Place[] = [],
  ): void {
    this.findings.push({ code, level, data, eye, ...place, ...(related.length > 0 ? { related } : {}) });
  }

  /** Keeps the first value of a key. A second one that differs is told, never summed and never taken instead. */
  put(key: string, value: unknown, place: Place, eye: Eye | null = null): void {
    const first = this.#values.get(key);
    if (!first) {
      this.#values.set(key, { value, place });
      return;
    }
    if (JSON.stringify(first.value) === JSON.stringify(value)) return;
    this.tell('said-twice', 'error', place, { in: 'order' }, eye, [first.place]);
  }

  /** Takes a value only where the order itself says nothing; that is how `defaults` hold. Returns whether it was taken. */
  putDefault(key: string, value: unknown, place: Place): boolean {
    if (this.#values.has(key)) return false;
    this.#values.set(key, { value, place });
    return true;
  }

  get<V>(key: string): Placed<V> | null {
    return (this.#values.get(key) as Placed<V> | undefined) ?? null;
  }
}
