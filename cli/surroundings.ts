/** What an order file is judged with besides its own text: its settings and its bench file, each found by the command alike. */
import { type Choices, dayOfChecking, type LentilDocument, type MissingInput } from '../orders';
import { type BenchFile, BenchFiles } from './bench-files';
import { type GivenSettings, SettingsFiles, type SettingsOfFile } from './settings-files';

/** One day for all of a run, though it may last past midnight. */
const TODAY = dayOfChecking();

export class Surroundings {
  readonly #benches = new BenchFiles();
  readonly #settings: SettingsFiles;

  constructor(given: GivenSettings) {
    this.#settings = new SettingsFiles(given);
  }

  /** @param file absolute path, or null for standard input */
  of(file: string | null): SurroundingsOfFile {
    return new SurroundingsOfFile(this.#settings.nearestTo(file), this.#benches.nearestTo(file));
  }
}

export class SurroundingsOfFile {
  readonly #bench: BenchFile | null;
  readonly settings: SettingsOfFile;

  constructor(settings: SettingsOfFile, bench: BenchFile | null) {
    this.settings = settings;
    this.#bench = bench;
  }

  /** What was chosen, and what is missing: by a bench file that cannot be read nothing is judged. */
  get choices(): Choices {
    const choices = { ...this.settings.choices, today: TODAY };
    const error = this.#bench?.error;
    if (error == null) return choices;
    const missing: readonly MissingInput[] = [{ what: 'bench.lentil', why: error }];
    return { ...choices, missing };
  }

  get shared(): readonly LentilDocument[] {
    return this.#bench?.document ? [this.#bench.document] : [];
  }

  /** What is to be complained of besides the file itself. */
  get complaints(): readonly string[] {
    return this.#bench?.error == null ? [] : [`${this.#bench.path}: ${this.#bench.error}`];
  }

  /** Whatever it adds to a result, as plain data. */
  get stamp(): unknown {
    const { path, text, error } = this.settings;
    return [TODAY, path, text, error, this.#bench && [this.#bench.path, this.#bench.text, this.#bench.error]];
  }
}
