/** `lentil check`: reads, judges, prints and drops block by block. */
import { type FindingsWriter, jsonLinesWriter, jsonWriter, junitWriter, sarifWriter, textWriter } from '../exchange';
import { analyseBlock, type Choices, type GuardBand } from '../orders';
import { Complaints } from './complaints';
import { configuration } from './configuration';
import { inkFor } from './ink';
import { type OrderFile, orderFiles } from './order-files';
import { Output } from './output';
import { Progress } from './progress';

export type CheckFormat = 'text' | 'json' | 'jsonl' | 'sarif' | 'junit';

export interface CheckOptions {
  readonly format: CheckFormat;
  readonly standard?: string;
  readonly strict?: boolean;
  readonly guard?: GuardBand;
  /** Percent of a limit from which on a deviation is told. */
  readonly near?: number;
  readonly brief?: boolean;
  /** A file to read settings from, or false for none. */
  readonly config?: string | false;
}

/** What the options and the settings file say together. */
interface Wanted {
  readonly format: CheckFormat;
  readonly brief: boolean;
  readonly strict: boolean;
  readonly choices: Choices;
}

const WRITERS: Readonly<Record<CheckFormat, (wanted: Wanted) => FindingsWriter>> = {
  text: () => textWriter(inkFor(process.stdout)),
  json: jsonWriter,
  jsonl: jsonLinesWriter,
  sarif: sarifWriter,
  junit: ({ strict }) => junitWriter(strict),
};

export async function check(paths: readonly string[], options: CheckOptions): Promise<0 | 1 | 2> {
  const run = new Check(wanted(options));
  await run.read(paths);
  return run.finish();
}

/** Options win over the settings file. */
function wanted({ format, brief = false, config, ...options }: CheckOptions): Wanted {
  const file = configuration(config);
  return {
    format,
    brief,
    strict: options.strict ?? file.strict ?? false,
    choices: {
      standard: options.standard ?? file.standard ?? null,
      guard: options.guard ?? file.guard ?? 'simple',
      nearPercent: options.near ?? file.nearPercent ?? null,
    },
  };
}

class Check {
  readonly #writer: FindingsWriter;
  readonly #output = new Output(process.stdout);
  readonly #progress = new Progress();
  readonly #complaints = new Complaints(this.#progress);
  readonly #choices: Choices;
  readonly #strict: boolean;
  #orders = 0;
  #failed = false;

  constructor(wanted: Wanted) {
    this.#writer = WRITERS[wanted.format](wanted);
    this.#choices = wanted.choices;
    this.#strict = wanted.strict;
    this.#output.add(this.#writer.start());
  }

  async read(paths: readonly string[]): Promise<void> {
    for await (const file of orderFiles(paths, this.#choices, this.#complaints)) {
      if (file.kind === 'unreadable') this.#output.add(this.#writer.unreadable(file.path, file.error));
      else await this.#file(file);
      if (this.#output.isClosed) break;
    }
  }

  async finish(): Promise<0 | 1 | 2> {
    this.#progress.clear();
    this.#output.add(this.#writer.end());
    await this.#output.flush();
    return this.#complaints.any ? 2 : this.#failed ? 1 : 0;
  }

  async #file({ path, context, blocks }: OrderFile): Promise<void> {
    this.#output.add(this.#writer.openFile(path));
    for (const { block, firstLine } of blocks) {
      const analysis = analyseBlock(block, context);
      if (analysis.order) this.#orders++;
      this.#failed ||= analysis.findings.some(
        ({ level }) => level === 'error' || (this.#strict && level === 'warning'),
      );
      if (this.#output.add(this.#writer.block(analysis, firstLine))) {
        await this.#output.flush();
        this.#progress.tell(this.#orders, path);
      }
      if (this.#output.isClosed) return;
    }
    if (this.#output.add(this.#writer.closeFile())) await this.#output.flush();
  }
}
