/** What `lentil.config.json` says: the nearest one in the folder of the command or above it, or the one that is named. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { nearestWord } from '../grammar';
import { type Choices, GUARD_BANDS, type GuardBand } from '../orders';
import { readText } from './read-text';
import { UnusableArgument } from './unusable-argument';

const NAME = 'lentil.config.json';

export interface Configuration extends Choices {
  readonly strict?: boolean;
}

/** The names of the file, which are those of the options on the command line. */
const READERS: Readonly<Record<string, (value: unknown, refuse: (wanted: string) => never) => Configuration>> = {
  standard: (value, refuse) =>
    typeof value === 'string' ? { standard: value } : refuse('the name of a tolerance set'),
  strict: (value, refuse) => (typeof value === 'boolean' ? { strict: value } : refuse('true or false')),
  guard: (value, refuse) => (isGuard(value) ? { guard: value } : refuse(`one of ${GUARD_BANDS.join(', ')}`)),
  near: (value, refuse) =>
    typeof value === 'number' && value > 0 && value <= 100
      ? { nearPercent: value }
      : refuse('a percentage above 0 and up to 100'),
};

const isGuard = (value: unknown): value is GuardBand => GUARD_BANDS.some((band) => band === value);

/**
 * @param named path given on the command line, or false to read none; otherwise the nearest file is taken, and its absence
 * is no fault
 * @throws UnusableArgument where the file cannot be read or says something that is not known
 */
export function configuration(named: string | false | undefined): Configuration {
  const path = named === false ? null : (named ?? nearest(process.cwd()));
  if (path === null) return {};
  const read = readText(path);
  if ('error' in read) throw new UnusableArgument(`${path}: ${read.error}`);
  return checked(path, parsed(path, read.text.replace(/^\uFEFF/, '')));
}

function nearest(folder: string): string | null {
  const path = join(folder, NAME);
  if (existsSync(path)) return path;
  const parent = dirname(folder);
  return parent === folder ? null : nearest(parent);
}

function parsed(path: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new UnusableArgument(`${path}: it is not JSON: ${(error as Error).message}`);
  }
}

function checked(path: string, value: unknown): Configuration {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new UnusableArgument(`${path}: it has to be an object such as { "standard": "z80.1-2015" }`);
  const known = Object.keys(READERS);
  const settings = Object.entries(value).map(([key, one]): Configuration => {
    // An editor finds the schema of the file by this member.
    if (key === '$schema') return {};
    const read = Object.hasOwn(READERS, key) ? READERS[key] : undefined;
    const refuse = (wanted: string): never => {
      throw new UnusableArgument(`${path}: ${key} has to be ${wanted}`);
    };
    if (read) return read(one, refuse);
    const near = nearestWord(key, known);
    throw new UnusableArgument(
      `${path}: there is no setting called ${key}. ${near ? `Did you mean ${near}?` : `There are ${known.join(', ')}.`}`,
    );
  });
  return Object.assign({}, ...settings);
}
