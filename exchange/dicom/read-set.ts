/** Elements of a data set by their keywords, with what nobody has looked at told at the end. */
import type { Eye } from '../../orders';
import type { Loss, LossReason } from '../conversion';
import { inWords, isList, isNumber, isObject, type Json, type JsonObject } from '../safe-json';
import { type Keyword, keywordOf, tagOf } from './tags';

/** Thrown inside of a data set that cannot be taken; it never leaves the reader of that set. */
export class NotTaken extends Error {}

/** One data set or item while it is read. */
export class ReadSet {
  readonly #set: JsonObject;
  readonly #seen = new Set<string>();

  constructor(set: JsonObject) {
    this.#set = set;
  }

  /** Marks elements as looked at. */
  pass(...keywords: readonly Keyword[]): void {
    for (const keyword of keywords) this.#seen.add(tagOf(keyword));
  }

  /** The first value, or undefined where the element is absent or empty. */
  value(keyword: Keyword): Json {
    const tag = tagOf(keyword);
    this.#seen.add(tag);
    const value = this.#values(tag)[0];
    return value === null ? undefined : value;
  }

  text(keyword: Keyword): string | null {
    const value = this.value(keyword);
    const own = isObject(value) ? value.Alphabetic : value;
    return typeof own === 'string' && own.trim() !== '' ? own.trim() : null;
  }

  /** The digits of a number, or null where there is none. */
  digits(keyword: Keyword): string | null {
    const value = this.value(keyword);
    if (value === undefined) return null;
    if (!isNumber(value)) throw new NotTaken(`${keyword} ${inWords(value)} is not a number`);
    return value.value;
  }

  /** The one item of a sequence. */
  item(keyword: Keyword): ReadSet | null {
    const value = this.value(keyword);
    if (value === undefined) return null;
    if (!isObject(value)) throw new NotTaken(`${keyword} holds no item`);
    if (this.#values(tagOf(keyword)).length > 1) throw new NotTaken(`${keyword} holds more than one item`);
    return new ReadSet(value);
  }

  /** Tells every element with a value that nobody has looked at. */
  rest(lose: (what: string, why: LossReason, eye?: Loss['eye']) => void, path = '', eye: Eye | null = null): void {
    for (const tag of Object.keys(this.#set)) {
      if (this.#seen.has(tag)) continue;
      const values = this.#values(tag);
      const isElsewhere =
        isObject(this.#set[tag]) && ('BulkDataURI' in this.#set[tag] || 'InlineBinary' in this.#set[tag]);
      if (values.length > 0 || isElsewhere)
        lose(`${path}${keywordOf(tag)} ${values.map(inWords).join(', ')}`.trim(), 'no-place', eye);
    }
  }

  #values(tag: string): readonly Json[] {
    const element = Object.hasOwn(this.#set, tag) ? this.#set[tag] : undefined;
    return isObject(element) && isList(element.Value) ? element.Value : [];
  }
}
