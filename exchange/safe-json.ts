/** JSON from outside: numbers keep their digits, and no text can take more time, memory or stack than its length allows. */
import { LosslessNumber, parse } from 'lossless-json';

/** Far more than any file of prescriptions or readings holds. */
export const LARGEST_TEXT = 32 * 1024 * 1024;

export const TOO_LARGE = `it is larger than ${LARGEST_TEXT / 1024 / 1024} million characters; bring it in in parts`;

/** Deeper than any resource or data set nests. */
const DEEPEST = 64;

export type Json = string | boolean | null | undefined | LosslessNumber | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [key: string]: Json;
}

export type Parsed = { readonly value: Json } | { readonly error: string };

/** Keys that belong to the language and never to data. */
const REFUSED_KEYS = new Set(['__proto__', 'constructor', 'prototype']);

/** Reads a JSON text, or says in a few words why it cannot be read; never throws. */
export function parseJson(text: string): Parsed {
  if (text.length > LARGEST_TEXT) return { error: TOO_LARGE };
  const own = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (isTooDeep(own)) return { error: `it nests deeper than ${DEEPEST} levels` };
  try {
    const value = parse(own, null, {
      onDuplicateKey: ({ key, position }) => {
        throw new SyntaxError(`the key “${key}” stands twice in one object${lineOf(own, position)}`);
      },
    }) as Json;
    const key = refusedKey(value);
    return key === null ? { value } : { error: `the key “${key}” is not one that data has` };
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    const { message } = error;
    const position = / at position (\d+)/.exec(message);
    const said = message.startsWith('the key') ? message : 'it is not JSON';
    return { error: position ? `${said}${lineOf(own, Number(position[1]))}` : said };
  }
}

const lineOf = (text: string, position: number): string => ` (line ${text.slice(0, position).split('\n').length})`;

/** Brackets are counted before anything is read, since a reader that calls itself for each level could fail half-way. */
function isTooDeep(text: string): boolean {
  let depth = 0;
  let inString = false;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (inString) {
      if (code === 0x5c) at++;
      else if (code === 0x22) inString = false;
    } else if (code === 0x22) inString = true;
    else if (code === 0x7b || code === 0x5b) {
      if (++depth > DEEPEST) return true;
    } else if (code === 0x7d || code === 0x5d) depth--;
  }
  return false;
}

function refusedKey(value: Json): string | null {
  if (isList(value)) return firstOf(value, refusedKey);
  if (!isObject(value)) return null;
  return firstOf(Object.keys(value), (key) => (REFUSED_KEYS.has(key) ? key : refusedKey(value[key])));
}

function firstOf<V>(list: readonly V[], find: (one: V) => string | null): string | null {
  for (const one of list) {
    const found = find(one);
    if (found !== null) return found;
  }
  return null;
}

export const isList = (value: Json): value is readonly Json[] => Array.isArray(value);

export const isObject = (value: Json): value is JsonObject =>
  typeof value === 'object' && value !== null && !isList(value) && !(value instanceof LosslessNumber);

export const isNumber = (value: Json): value is LosslessNumber => value instanceof LosslessNumber;

/** A value in a few words, for what tells of it. */
export function inWords(value: Json): string {
  const text = typeof value === 'string' ? value : isNumber(value) ? value.value : JSON.stringify(value, digitsKept);
  return (text ?? '').length > 80 ? `${text?.slice(0, 79)}…` : (text ?? '');
}

const digitsKept = (_: string, value: unknown): unknown =>
  value instanceof LosslessNumber ? Number(value.value) : value;
