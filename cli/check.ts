/** `lentil check`: reads, judges, prints and drops block by block. */
import { type FindingsWriter, jsonLinesWriter, jsonWriter, junitWriter, sarifWriter, textWriter } from '../exchange';
import {
  analyseBlock,
  type Block,
  type Choices,
  type Context,
  contextOf,
  type GuardBand,
  type LentilDocument,
  parseDocument,
  toleranceSetById,
} from '../orders';
import { BenchFiles } from './bench-files';
import { configuration } from './configuration';
import { inkFor } from './ink';
import { type Input, inputsOf, STANDARD_INPUT } from './inputs';
import { Output } from './output';
import { Progress } from './progress';
import { readStandardInput, readText, type TextOrError } from './read-text';
import { noSuchSet } from './unknown-name';

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
  for (const input of inputsOf(paths)) {
    await run.take(input);
    if (run.isOver) break;
  }
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
  readonly #benches = new BenchFiles();
  readonly #choices: Choices;
  readonly #strict: boolean;
  readonly #told = new Set<string>();
  #orders = 0;
  #failed = false;
  #unusable = false;

  constructor(wanted: Wanted) {
    this.#writer = WRITERS[wanted.format](wanted);
    this.#choices = wanted.choices;
    this.#strict = wanted.strict;
    this.#output.add(this.#writer.start());
  }

  get isOver(): boolean {
    return this.#output.isClosed;
  }

  async take(input: Input): Promise<void> {
    if (input.kind === 'nothing') this.#complain(`${input.path}: ${input.reason}`);
    else if (input.kind === 'empty') process.stderr.write(`lentil: ${input.path}: no .lentil file in this folder\n`);
    else if (input.kind === 'standard-input')
      await this.#file(STANDARD_INPUT, await readStandardInput(), this.#benches.nearestIn(process.cwd()));
    else await this.#file(input.path, readText(input.absolute), this.#benches.nearestTo(input.absolute));
  }

  async finish(): Promise<0 | 1 | 2> {
    this.#progress.clear();
    this.#output.add(this.#writer.end());
    await this.#output.flush();
    return this.#unusable ? 2 : this.#failed ? 1 : 0;
  }

  async #file(path: string, read: TextOrError, bench: ReturnType<BenchFiles['nearestIn']>): Promise<void> {
    if ('error' in read) {
      this.#complain(`${path}: ${read.error}`);
      this.#output.add(this.#writer.unreadable(path, read.error));
      return;
    }
    if (bench?.error) this.#complain(`${bench.path}: ${bench.error}`);
    this.#output.add(this.#writer.openFile(path));
    await this.#blocks(path, this.#cut(read.text, bench?.document ? [bench.document] : []));
    if (this.#output.add(this.#writer.closeFile())) await this.#output.flush();
  }

  /** The document itself is not kept: only its context, and its blocks from the last to the first. */
  #cut(text: string, shared: readonly LentilDocument[]): { readonly context: Context; readonly rest: Block[] } {
    const document = parseDocument(text);
    const context = contextOf(document, this.#choices, shared);
    const { fallbackStandard } = context;
    if (fallbackStandard !== null && !isKnownSet(fallbackStandard, context))
      this.#complain(noSuchSet(fallbackStandard).message);
    return { context, rest: document.blocks.toReversed() };
  }

  /** Each block is let go after it is written; its trees and results go with it. */
  async #blocks(path: string, { context, rest }: { context: Context; rest: Block[] }): Promise<void> {
    let firstLine = 0;
    for (let block = rest.pop(); block && !this.isOver; block = rest.pop()) {
      const analysis = analyseBlock(block, context);
      if (analysis.order) this.#orders++;
      this.#failed ||= analysis.findings.some(
        ({ level }) => level === 'error' || (this.#strict && level === 'warning'),
      );
      if (this.#output.add(this.#writer.block(analysis, firstLine))) {
        await this.#output.flush();
        this.#progress.tell(this.#orders, path);
      }
      firstLine += block.lines.length;
    }
  }

  /** One line on standard error, once; the other files are still checked. */
  #complain(text: string): void {
    this.#unusable = true;
    if (this.#told.has(text)) return;
    this.#told.add(text);
    this.#progress.clear();
    process.stderr.write(`lentil: ${text}\n`);
  }
}

/** A built-in set, or a set of the house that the file or its bench file declares. */
const isKnownSet = (name: string, { houses }: Context): boolean =>
  toleranceSetById.has(name.toLowerCase()) || houses.has(name);
