/** Threads that judge tasks side by side; what they tell comes in the order of the tasks. */
import { Worker } from 'node:worker_threads';
import { Judge } from './judge';
import type { Task, Told, Wanted } from './task';

/** Tasks under way for each thread: one at work, and others so that it need not wait. Bounds what is held in memory. */
const AHEAD = 3;

/** The heap of each, megabytes. A thread with more room would collect later, and hold more than it needs. */
const HEAP = { maxYoungGenerationSizeMb: 24, maxOldGenerationSizeMb: 192 };

/** Characters of one task that such a heap need not have room for: a single endless block, judged here instead. */
const HUGE = 2 * 1024 * 1024;

interface Thread {
  readonly worker: Worker;
  /** Who waits for its answers, the oldest first. */
  readonly waiting: { readonly done: (told: Told[]) => void; readonly failed: (error: unknown) => void }[];
}

export async function* toldByThreads(
  count: number,
  tasks: AsyncIterable<Task>,
  wanted: Wanted,
): AsyncGenerator<readonly Told[]> {
  const threads = Array.from({ length: count }, () => start(wanted));
  const under: Promise<readonly Told[]>[] = [];
  try {
    for await (const task of tasks) {
      under.push(isHuge(task) ? judgedHere(task, wanted) : give(task, threads));
      if (under.length >= count * AHEAD) yield (await under.shift()) as readonly Told[];
    }
    for (const told of under) yield await told;
  } finally {
    await Promise.all(threads.map(({ worker }) => worker.terminate()));
  }
}

const judgedHere = async (task: Task, wanted: Wanted): Promise<readonly Told[]> => (await Judge.for(wanted)).told(task);

const isHuge = (task: Task): boolean => task.kind === 'part' && task.part.cuts.text.length > HUGE;

function start(wanted: Wanted): Thread {
  // Bundled, both lie in one folder.
  const worker = new Worker(new URL('./check-thread.mjs', import.meta.url), {
    workerData: wanted,
    resourceLimits: HEAP,
  });
  const waiting: Thread['waiting'] = [];
  worker.on('message', (told: Told[]) => waiting.shift()?.done(told));
  worker.on('error', (error) => {
    for (const { failed } of waiting.splice(0)) failed(error);
  });
  return { worker, waiting };
}

function give(task: Task, threads: readonly Thread[]): Promise<readonly Told[]> {
  const { worker, waiting } = threads.reduce((a, b) => (b.waiting.length < a.waiting.length ? b : a));
  const told = new Promise<readonly Told[]>((done, failed) => waiting.push({ done, failed }));
  // It may fail before its turn comes to be waited for.
  told.catch(() => undefined);
  worker.postMessage(task);
  return told;
}
