/** Cuts the work of a command line into tasks of about one size: many small files together, a large one in parts. */
import { statSync } from 'node:fs';
import { type Cuts, type LongText, partOf } from '../../orders';
import type { Complaints } from '../complaints';
import { ordersElsewhere } from '../elsewhere';
import { type Input, inputsOf, STANDARD_INPUT } from '../inputs';
import { openText, tellInput } from '../order-files';
import { readStandardInput, readText, type TextOrError } from '../read-text';
import type { Surroundings } from '../surroundings';
import type { FilePath, Task } from './task';

export interface SizedTask {
  readonly task: Task;
  /** About how many characters it holds. */
  readonly size: number;
}

/**
 * Characters of a task: large enough that handing it over costs nothing beside judging it, some dozen orders, and small
 * enough that the text of all tasks under way is no burden; in full JSON it is fifty times as long.
 */
const PART = 32 * 1024;

/** Files from this size on are read here and cut, so that no thread holds a whole one. */
const LARGE = 1024 * 1024;

/** Files of a task, however small they are. */
const MOST_FILES = 64;

export async function* tasksOf(
  paths: readonly string[],
  surroundings: Surroundings,
  complaints: Complaints,
): AsyncGenerator<SizedTask> {
  let files: FilePath[] = [];
  let size = 0;
  const gathered = (): SizedTask[] => {
    if (files.length === 0) return [];
    const task: SizedTask = { task: { kind: 'files', files }, size };
    files = [];
    size = 0;
    return [task];
  };
  const inParts = function* (file: FilePath, read: TextOrError): Generator<SizedTask> {
    const opened = openText(file.path, read, surroundings.of(file.absolute), file.elsewhere);
    for (const complaint of opened.complaints) complaints.tell(complaint);
    if (opened.file.kind === 'orders') yield* partsOf(file, opened.file.text);
    else yield { task: { kind: 'unreadable', path: file.path, error: opened.file.error }, size: 0 };
  };
  const inputs: Input[] = [];
  for await (const input of inputsOf(paths)) inputs.push(input);
  const elsewhere = ordersElsewhere(inputs);
  for (const input of inputs) {
    if (input.kind === 'nothing' || input.kind === 'empty') tellInput(input, complaints);
    else if (input.kind === 'standard-input') {
      yield* gathered();
      yield* inParts({ path: STANDARD_INPUT, absolute: null, elsewhere: elsewhere(null) }, await readStandardInput());
    } else {
      const { path, absolute } = input;
      const file: FilePath = { path, absolute, elsewhere: elsewhere(absolute) };
      const bytes = sizeOf(absolute);
      const read = bytes < LARGE ? null : readText(absolute);
      if (read && 'text' in read) {
        yield* gathered();
        yield* inParts(file, read);
        continue;
      }
      files.push(file);
      size += bytes;
      if (size >= PART || files.length >= MOST_FILES) yield* gathered();
    }
  }
  yield* gathered();
}

function sizeOf(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.size ?? 0;
}

function* partsOf(file: FilePath, { cuts, holding, sharedNames }: LongText): Generator<SizedTask> {
  const cutsOfHolding = [...holding.keys()].map((at): readonly [number, Cuts] => [at, partOf(cuts, at, at + 1)]);
  const count = cuts.kinds.length;
  for (let first = 0, number = 0, end = 0; first < count; first = end, number++) {
    const start = cuts.starts[first] as number;
    end = first + 1;
    while (end < count && (cuts.starts[end] as number) - start < PART) end++;
    const part = {
      cuts: partOf(cuts, first, end),
      number,
      first,
      isLast: end === count,
      holding: cutsOfHolding,
      sharedNames,
    };
    yield { task: { kind: 'part', file, part }, size: part.cuts.text.length };
  }
}
