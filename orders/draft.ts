import type { Eye } from '../grammar';
import type { Finding, FindingData, Level, Place } from './finding';
import type { Placed } from './model';

/**
 * What a value is said of: the whole order, the lens before an eye, or a power stated beside the order for an eye, such as
 * `rx.R`. Two words find a value faster than one that has to be put together first, and an order asks for a hundred.
 */
export type Owner = 'order' | Eye | `${string}.${Eye}`;

/** The values said of one owner, by what they are. */
export class Said {
  readonly #values = new Map<string, Placed<unknown>>();

  get<V>(key: string): Placed<V> | null {
    return (this.#values.get(key) as Placed<V> | undefined) ?? null;
  }

  set(key: string, said: Placed<unknown>): void {
    this.#values.set(key, said);
  }
}

const NOTHING_SAID = new Said();

/** Gathers the values of one order as its lines are read, and notices when something is said twice. */
export class Draft {
  readonly findings: Finding[] = [];
  readonly #owners = new Map<Owner, Said>();

  tell(
    code: string,
    level: Level,
    { line, start, end }: Place,
    data: FindingData = {},
    eye: Eye | null = null,
    related: readonly Place[] = [],
  ): void {
    this.findings.push({ code, level, data, eye, line, start, end, ...(related.length > 0 ? { related } : {}) });
  }

  /** Keeps the first value of a key. A second one that differs is told, never summed and never taken instead. */
  put(owner: Owner, key: string, value: unknown, place: Place, eye: Eye | null = null): void {
    const said = this.#saidOf(owner);
    const first = said.get(key);
    if (!first) {
      said.set(key, { value, place });
      return;
    }
    if (JSON.stringify(first.value) === JSON.stringify(value)) return;
    this.tell('said-twice', 'error', place, { in: 'order' }, eye, [first.place]);
  }

  /** Takes a value only where the order itself says nothing; that is how `defaults` hold. Returns whether it was taken. */
  putDefault(owner: Owner, key: string, value: unknown, place: Place): boolean {
    const said = this.#saidOf(owner);
    if (said.get(key)) return false;
    said.set(key, { value, place });
    return true;
  }

  of(owner: Owner): Said {
    return this.#owners.get(owner) ?? NOTHING_SAID;
  }

  #saidOf(owner: Owner): Said {
    let said = this.#owners.get(owner);
    if (!said) {
      said = new Said();
      this.#owners.set(owner, said);
    }
    return said;
  }
}
