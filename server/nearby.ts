/**
 * What lies beside a document or above it and decides its verdict: the nearest bench file and the nearest settings file.
 * A nearer file whose presence is not known yet is waited for; a farther one is never taken in its place.
 */
import {
  dayOfChecking,
  type FileSettings,
  type LentilDocument,
  type MissingInput,
  parseDocument,
  readSettings,
  SETTINGS_FILE,
  type SettingsFault,
} from '../orders';
import { BENCH_FILE, benchAddresses, isInside, keyOf, settingsAddresses } from './addresses';
import type { Elsewhere } from './names/same-numbers';
import type { Files, FileText } from './platform';
import { type Settings, settingsFrom } from './settings';
import type { Surroundings } from './snapshot';

export interface Bench {
  readonly key: string;
  readonly uri: string;
  /** Null where it cannot be read. */
  readonly document: LentilDocument | null;
  /** Text on disk; null for one that is open in the editor. */
  readonly text: string | null;
  readonly error: string | null;
}

export interface SettingsFile {
  readonly key: string;
  readonly uri: string;
  readonly text: string;
  readonly settings: FileSettings;
  /** Why it cannot be used, and where. */
  readonly fault: SettingsFault | null;
}

/** An answer on its way. */
interface Coming<T> {
  readonly done: Promise<void>;
  /** Undefined until it has come. */
  readonly answer: () => { readonly is: T } | undefined;
}

export interface Gathering {
  readonly bench: Coming<Bench | null>;
  readonly file: Coming<SettingsFile | null>;
  /** The section of the editor’s own settings. */
  readonly section: Coming<unknown>;
  /** Settles when all of it has come. */
  readonly done: Promise<unknown>;
}

/** What a document is judged with, as far as it has come. */
export interface Around {
  readonly settings: Settings;
  readonly file: SettingsFile | null;
  readonly bench: Bench | null;
  readonly missing: readonly MissingInput[];
}

export interface NearbyHost extends Pick<Files, 'read'> {
  readonly configuration: (folder: string | undefined) => Promise<unknown>;
  /** The document of a file that is open in the editor. */
  readonly inEditor: (key: string) => LentilDocument | undefined;
  /** There is no file at this address. */
  readonly absent: (uri: string) => void;
}

export class Nearby {
  readonly #host: NearbyHost;
  /** What was last read at each address, for files that nobody has open. */
  readonly #texts = new Map<string, Promise<FileText>>();
  /** The same text again keeps its document, so that nothing which rests on it is worked out again. */
  readonly #benches = new Map<string, Bench>();

  constructor(host: NearbyHost) {
    this.#host = host;
  }

  /**
   * Begins to look for everything that a document is judged with.
   * @param folder workspace folder, whose settings of the editor hold
   * @param top key of the folder above which is not looked, or null
   * @param isFresh whether files are read again that were read before
   */
  gather(uri: string, folder: string | undefined, top: string | null, isFresh: boolean): Gathering {
    const bench = coming(this.#bench(benchAddresses(uri, top), isFresh));
    const file = coming(this.#file(settingsAddresses(uri, top), isFresh));
    // An editor that refuses to tell has its defaults.
    const section = coming(this.#host.configuration(folder).catch(() => undefined));
    return { bench, file, section, done: Promise.all([bench.done, file.done, section.done]) };
  }

  /** A file was made, changed or deleted, or a folder with all that is in it. */
  changed(uri: string): void {
    const gone = keyOf(uri);
    for (const key of [...this.#texts.keys()]) if (isInside(key, gone)) this.#texts.delete(key);
  }

  async #bench(addresses: readonly string[], isFresh: boolean): Promise<Bench | null> {
    for (const uri of addresses) {
      const key = keyOf(uri);
      const document = this.#host.inEditor(key);
      if (document) return { key, uri, document, text: null, error: null };
      const text = await this.#read(uri, key, isFresh);
      if (text === null) {
        this.#host.absent(uri);
        continue;
      }
      if (typeof text !== 'string') return { key, uri, document: null, text: null, error: text.error };
      const known = this.#benches.get(key);
      const bench = known?.text === text ? known : { key, uri, document: parseDocument(text), text, error: null };
      this.#benches.set(key, bench);
      return bench;
    }
    return null;
  }

  async #file(addresses: readonly string[], isFresh: boolean): Promise<SettingsFile | null> {
    for (const uri of addresses) {
      const key = keyOf(uri);
      const text = await this.#read(uri, key, isFresh);
      if (text === null) continue;
      if (typeof text !== 'string')
        return { key, uri, text: '', settings: {}, fault: { message: text.error, start: 0, end: 0 } };
      const read = readSettings(text);
      return 'fault' in read
        ? { key, uri, text, settings: {}, fault: read.fault }
        : { key, uri, text, settings: read.settings, fault: null };
    }
    return null;
  }

  #read(uri: string, key: string, isFresh: boolean): Promise<FileText> {
    const known = isFresh ? undefined : this.#texts.get(key);
    if (known) return known;
    const text = this.#host.read(uri).catch((): FileText => ({ error: 'it cannot be read' }));
    this.#texts.set(key, text);
    return text;
  }
}

/**
 * What has come so far. A settings file decides alone what orders are judged by, so that the editor gives the verdict of
 * the command; without one the settings of the editor hold.
 */
export function aroundOf({ bench, file, section }: Gathering): Around {
  const missing: MissingInput[] = [];
  const editor = settingsFrom(section.answer()?.is);
  const [found, foundBench] = [file.answer(), bench.answer()];
  if (!found) missing.push({ what: SETTINGS_FILE, why: null });
  else if (found.is?.fault) missing.push({ what: SETTINGS_FILE, why: found.is.fault.message });
  else if (!found.is && !section.answer()) missing.push({ what: 'settings of the editor', why: null });
  if (!foundBench) missing.push({ what: BENCH_FILE, why: null });
  else if (foundBench.is?.error != null) missing.push({ what: BENCH_FILE, why: foundBench.is.error });
  const said = found?.is?.settings;
  const settings = said ? { ...editor, ...judgingIn(said) } : editor;
  return { settings, file: found?.is ?? null, bench: foundBench?.is ?? null, missing };
}

const judgingIn = ({ standard = null, guard = 'simple', nearPercent = null }: FileSettings) => ({
  standard,
  guard,
  nearPercent,
});

function coming<T>(promise: Promise<T>): Coming<T> {
  let come: { readonly is: T } | undefined;
  const done = promise.then((is) => {
    come = { is };
  });
  return { done, answer: () => come };
}

/** What the orders of a file rest on, apart from how findings are shown. */
export function surroundingsOf(
  { settings, bench, missing }: Pick<Around, 'settings' | 'bench' | 'missing'>,
  elsewhere: Elsewhere,
): Surroundings {
  const { standard, guard, nearPercent } = settings;
  const today = dayOfChecking();
  return { standard, guard, nearPercent, missing, elsewhere, today, shared: bench?.document ? [bench.document] : [] };
}
