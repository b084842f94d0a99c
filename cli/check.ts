/** `lentil check`: reads, judges, prints and drops, some hundred orders at a time. */
import { availableParallelism } from 'node:os';
import type { FindingsWriter } from '../exchange';
import type { GuardBand } from '../orders';
import { Judge } from './checking/judge';
import type { CheckFormat, Task, Told, Wanted } from './checking/task';
import { type SizedTask, tasksOf } from './checking/tasks';
import { writerFor } from './checking/writers';
import { Complaints } from './complaints';
import { hasColours } from './ink';
import { Output } from './output';
import { Progress } from './progress';
import { givenSettings } from './settings-files';
import { Surroundings } from './surroundings';

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
  /** How many threads judge; without it, as many as there are cores, once the work is large. */
  readonly threads?: number;
  /** A folder that keeps results for the next run. */
  readonly cache?: string;
}

export async function check(paths: readonly string[], options: CheckOptions): Promise<0 | 1 | 2> {
  if (options.cache !== undefined) (await import('./checking/cache')).makeCacheFolder(options.cache);
  const run = new Check(wanted(options), options.threads ?? null);
  await run.read(paths);
  return run.finish();
}

function wanted({ format, brief = false, config, cache, ...options }: CheckOptions): Wanted {
  const { standard, strict, guard, near: nearPercent } = options;
  return {
    format,
    brief,
    painted: hasColours(process.stdout),
    cache: cache ?? null,
    settings: givenSettings(said({ standard, strict, guard, nearPercent }), config),
  };
}

/** What was said, without what was not. */
const said = (options: Readonly<Record<string, unknown>>): object =>
  Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined));

/** Characters of text from which on it pays to start threads: some three thousand orders. */
const MUCH = 1536 * 1024;

class Check {
  readonly #wanted: Wanted;
  readonly #threads: number | null;
  readonly #writer: FindingsWriter;
  readonly #output = new Output(process.stdout);
  readonly #progress = new Progress();
  readonly #complaints = new Complaints(this.#progress);
  #path = '';
  #orders = 0;
  #failed = false;

  constructor(wanted: Wanted, threads: number | null) {
    this.#wanted = wanted;
    this.#threads = threads;
    this.#writer = writerFor(wanted);
    this.#output.add(this.#writer.start());
  }

  async read(paths: readonly string[]): Promise<void> {
    const tasks = tasksOf(paths, new Surroundings(this.#wanted.settings), this.#complaints);
    for await (const list of this.#judged(tasks)) {
      for (const told of list) await this.#tell(told);
      this.#progress.tell(this.#orders, this.#path);
      if (this.#output.isClosed) break;
    }
  }

  async finish(): Promise<0 | 1 | 2> {
    this.#progress.clear();
    this.#output.add(this.#writer.end());
    await this.#output.flush();
    return this.#complaints.any ? 2 : this.#failed ? 1 : 0;
  }

  async *#judged(tasks: AsyncGenerator<SizedTask>): AsyncGenerator<readonly Told[]> {
    const first: Task[] = [];
    const isLong = await isMuch(tasks, first);
    const threads = this.#threads ?? (isLong ? availableParallelism() : 1);
    const all = join(first, tasks);
    if (isLong) (await import('./checking/engine')).expectLongWork();
    if (threads > 1) {
      const { toldByThreads } = await import('./checking/threads');
      yield* toldByThreads(threads, all, this.#wanted);
    } else {
      const judge = await Judge.for(this.#wanted);
      for await (const task of all) yield judge.told(task);
    }
  }

  async #tell(told: Told): Promise<void> {
    const writer = this.#writer;
    if (told.kind === 'complaint') this.#complaints.tell(told.text);
    else if (told.kind === 'unreadable') this.#output.add(writer.unreadable(told.path, told.error));
    else if (told.kind === 'close') {
      for (const text of writer.closing()) await this.#write(text);
    } else if (told.kind === 'open') {
      this.#path = told.path;
      await this.#write(writer.openFile(told.path));
    } else {
      this.#orders += told.orders;
      this.#failed ||= told.failed;
      await this.#write(writer.add(told.note));
      await this.#write(told.text);
    }
  }

  async #write(text: string | Uint8Array): Promise<void> {
    if (this.#output.add(text) && !this.#output.isClosed) await this.#output.flush();
  }
}

/** Threads take longer to start than little work takes. The tasks looked at are kept, for they still have to be judged. */
async function isMuch(tasks: AsyncGenerator<SizedTask>, looked: Task[]): Promise<boolean> {
  for (let size = 0; size < MUCH; ) {
    const next = await tasks.next();
    if (next.done) return false;
    looked.push(next.value.task);
    size += next.value.size;
  }
  return true;
}

async function* join(first: readonly Task[], rest: AsyncIterable<SizedTask>): AsyncGenerator<Task> {
  yield* first;
  for await (const { task } of rest) yield task;
}
