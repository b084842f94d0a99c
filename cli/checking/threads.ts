/** Threads that judge tasks side by side; what they tell comes in the order of the tasks. */
import { Worker } from 'node:worker_threads';
import type { Task, Told, Wanted } from './task';

/** Tasks under way for each thread: one at work, and others so that it need not wait. Bounds what is held in memory. */
const AHEAD = 3;

/** The young part of the heap of each, megabytes: results live until they are told, and a small one is cleared too soon. */
const YOUNG = 48;

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
      under.push(give(task, threads));
      if (under.length >= count * AHEAD) yield (await under.shift()) as readonly Told[];
    }
    for (const told of under) yield await told;
  } finally {
    await Promise.all(threads.map(({ worker }) => worker.terminate()));
  }
}

function start(wanted: Wanted): Thread {
  // Bundled, both lie in one folder.
  const worker = new Worker(new URL('./check-thread.mjs', import.meta.url), {
    workerData: wanted,
    resourceLimits: { maxYoungGenerationSizeMb: YOUNG },
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
