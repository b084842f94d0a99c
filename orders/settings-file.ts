/**
 * What a `lentil.config.json` says. The command and the server read it by this one text, so that an order has one verdict
 * wherever it is judged.
 */
import { nearestWord } from '../grammar';
import type { Choices } from './context';
import { GUARD_BANDS, type GuardBand } from './uncertainty';

/** The name of the file, looked for in the folder of an order file and above it. */
export const SETTINGS_FILE = 'lentil.config.json';

export interface FileSettings extends Choices {
  /** Whether warnings count as errors for the exit status of the command. */
  readonly strict?: boolean;
}

/** Why a settings file cannot be used, and where: offsets in its text, UTF-16 units. */
export interface SettingsFault {
  readonly message: string;
  readonly start: number;
  readonly end: number;
}

export type ReadSettings = { readonly settings: FileSettings } | { readonly fault: SettingsFault };

type Reader = (value: unknown) => FileSettings | string;

/** Each setting with its values, or what it has to be. The names are those of the options on the command line. */
const READERS: Readonly<Record<string, Reader>> = {
  standard: (value) => (typeof value === 'string' ? { standard: value } : 'the name of a tolerance set'),
  strict: (value) => (typeof value === 'boolean' ? { strict: value } : 'true or false'),
  guard: (value) => (isGuard(value) ? { guard: value } : `one of ${GUARD_BANDS.join(', ')}`),
  near: (value) =>
    typeof value === 'number' && value > 0 && value <= 100
      ? { nearPercent: value }
      : 'a percentage above 0 and up to 100',
};

const isGuard = (value: unknown): value is GuardBand => GUARD_BANDS.some((band) => band === value);

/** Reads the text of a settings file. One thing in it that is not known makes all of it unusable, and is told with its place. */
export function readSettings(text: string): ReadSettings {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    const { message } = error as Error;
    return { fault: { message: `it is not JSON: ${message}`, ...placeOfFault(text, message) } };
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return {
      fault: { message: 'it has to be an object such as { "standard": "z80.1-2015" }', start: 0, end: text.length },
    };
  const settings: Record<string, unknown> = {};
  for (const [key, one] of Object.entries(value)) {
    // An editor finds the schema of the file by this member.
    if (key === '$schema') continue;
    const read = Object.hasOwn(READERS, key) ? READERS[key]?.(one) : noSuchSetting(key);
    if (typeof read === 'string') {
      const message = Object.hasOwn(READERS, key) ? `${key} has to be ${read}` : read;
      return { fault: { message, ...placeOfKey(text, key) } };
    }
    Object.assign(settings, read);
  }
  return { settings };
}

function noSuchSetting(key: string): string {
  const known = Object.keys(READERS);
  const near = nearestWord(key, known);
  return `there is no setting called ${key}. ${near ? `Did you mean ${near}?` : `There are ${known.join(', ')}.`}`;
}

/** Where a key stands, or the whole text where it is written in a way that is not looked for. */
function placeOfKey(text: string, key: string): { readonly start: number; readonly end: number } {
  const written = JSON.stringify(key);
  for (let at = text.indexOf(written); at >= 0; at = text.indexOf(written, at + 1))
    if (/^\s*:/.test(text.slice(at + written.length))) return { start: at, end: at + written.length };
  return { start: 0, end: text.length };
}

/** Engines tell the place of a fault in their own words, or not at all. */
function placeOfFault(text: string, message: string): { readonly start: number; readonly end: number } {
  const position = /position (\d+)/.exec(message)?.[1];
  if (position === undefined) return { start: 0, end: text.length };
  const mark = text.startsWith('\uFEFF') ? 1 : 0;
  const start = Math.min(Number(position) + mark, Math.max(0, text.length - 1));
  return { start, end: Math.min(start + 1, text.length) };
}
