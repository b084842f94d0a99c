/**
 * Which settings an order file is judged by: what the options say, then what the nearest `lentil.config.json` in its
 * folder or above says, as the server does it. A named file, or none at all, may stand in the place of the nearest.
 */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Choices, type FileSettings, readSettings, SETTINGS_FILE } from '../orders';
import { readText } from './read-text';
import { UnusableArgument } from './unusable-argument';

/** What the command line says of settings, as plain data. */
export interface GivenSettings {
  readonly options: FileSettings;
  /** Those of a named file, empty where no file is to be read; null where the nearest one of each file holds. */
  readonly fixed: FileSettings | null;
}

/** What holds for a file. */
export interface SettingsOfFile {
  readonly choices: Choices;
  /** Whether warnings count as errors. */
  readonly strict: boolean;
  /** The settings file that was found, with its text; both null without one. */
  readonly path: string | null;
  readonly text: string | null;
  /** Why it cannot be used. Nothing may be judged then. */
  readonly error: string | null;
}

/**
 * Reads what the command line names.
 * @param config path given on the command line, false to read none, undefined for the nearest of each file
 * @throws UnusableArgument where the named file, or the one of the folder of the command, cannot be used
 */
export function givenSettings(options: FileSettings, config: string | false | undefined): GivenSettings {
  const named = typeof config === 'string' ? read(config) : undefined;
  const given = { options, fixed: config === false ? {} : (named?.settings ?? null) };
  const error = named ? named.error : new SettingsFiles(given).nearestTo(null).error;
  if (error !== null) throw new UnusableArgument(error);
  return given;
}

/** Finds the settings of files. Each settings file is read once. */
export class SettingsFiles {
  readonly #given: GivenSettings;
  readonly #byFolder = new Map<string, SettingsOfFile>();

  constructor(given: GivenSettings) {
    this.#given = given;
  }

  /** @param file absolute path, or null for standard input, which has the folder of the command */
  nearestTo(file: string | null): SettingsOfFile {
    return this.#nearestIn(file === null || this.#given.fixed ? process.cwd() : dirname(file));
  }

  #nearestIn(folder: string): SettingsOfFile {
    const known = this.#byFolder.get(folder);
    if (known) return known;
    const path = join(folder, SETTINGS_FILE);
    const parent = dirname(folder);
    const { fixed } = this.#given;
    let found: SettingsOfFile;
    if (fixed) found = this.#with(fixed);
    else if (existsSync(path)) found = this.#from(path);
    else found = parent === folder ? this.#with({}) : this.#nearestIn(parent);
    this.#byFolder.set(folder, found);
    return found;
  }

  #from(path: string): SettingsOfFile {
    const { settings, text, error } = read(path);
    return { ...this.#with(settings ?? {}), path, text, error };
  }

  #with(file: FileSettings): SettingsOfFile {
    const { options } = this.#given;
    return {
      choices: {
        standard: options.standard ?? file.standard ?? null,
        guard: options.guard ?? file.guard ?? 'simple',
        nearPercent: options.nearPercent ?? file.nearPercent ?? null,
      },
      strict: options.strict ?? file.strict ?? false,
      path: null,
      text: null,
      error: null,
    };
  }
}

interface Read {
  readonly settings: FileSettings | null;
  readonly text: string | null;
  readonly error: string | null;
}

function read(path: string): Read {
  const found = readText(path);
  if ('error' in found) return { settings: null, text: null, error: `${path}: ${found.error}` };
  const { text } = found;
  const said = readSettings(text);
  return 'fault' in said
    ? { settings: null, text, error: `${path}: ${said.fault.message}` }
    : { settings: said.settings, text, error: null };
}
