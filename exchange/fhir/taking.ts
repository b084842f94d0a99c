/** What one resource says, gathered element by element, and what of it finds no place. */
import type { Eye } from '../../orders';
import { quoted } from '../../orders/write';
import type { Loss, LossReason } from '../conversion';
import type { PartCode } from '../parts/part';
import type { Fact } from '../parts/to-order';
import { inWords, isList, isObject, type Json, type JsonObject } from '../safe-json';
import { DATA_ABSENT } from './codes';

/** Thrown inside of a resource that cannot be taken; it never leaves the reader of that resource. */
export class NotTaken extends Error {}

/** Gathers what one resource says and what of it finds no place. */
export class Taking {
  readonly losses: Loss[] = [];
  readonly facts: Fact[] = [];
  /** Notes of the two lenses often say the same; each line is taken once. */
  readonly lines = new Set<string>();
  readonly #order: string | null;
  readonly #designs = new Map<Eye, string>();

  constructor(order: string | null) {
    this.#order = order;
  }

  lose(what: string, why: LossReason, eye: Eye | null = null): void {
    this.losses.push({ what, why, order: this.#order, eye, line: null });
  }

  fact(code: PartCode, eye: Eye | null, value: number): void {
    this.facts.push({ code, eye, value });
  }

  note(text: string): void {
    this.lines.add(`note ${quoted(text)}`);
  }

  design(eye: Eye, words: string): void {
    this.#designs.set(eye, words);
  }

  /** The design lines: one where both lenses are alike. */
  get designs(): readonly string[] {
    const [right, left] = [this.#designs.get('R'), this.#designs.get('L')];
    if (right !== undefined && right === left) return [`design ${right}`];
    return [...this.#designs].map(([eye, words]) => `design ${eye} ${words}`);
  }

  /** Tells every element that nobody has looked at. */
  rest(object: JsonObject, path: string, known: ReadonlySet<string>, eye: Eye | null = null): void {
    for (const [key, value] of Object.entries(object)) {
      if (known.has(key) || isOnlyAbsent(value)) continue;
      this.lose(`${path}${key} ${inWords(value)}`, 'no-place', eye);
    }
  }
}

/** Nothing but the statement that there is no value, which is no loss. */
function isOnlyAbsent(value: Json): boolean {
  if (!isObject(value) || Object.keys(value).length !== 1 || !isList(value.extension)) return false;
  return value.extension.every((one) => isObject(one) && one.url === DATA_ABSENT);
}
