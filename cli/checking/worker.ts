/** A thread that judges what it is handed. */
import { parentPort, workerData } from 'node:worker_threads';
import { Judge } from './judge';
import type { Task, Told } from './task';

const judge = await Judge.for(workerData);

parentPort?.on('message', (task: Task) => {
  const told = judge.told(task);
  // Handed over instead of copied.
  parentPort?.postMessage(told, told.flatMap(bytesOf));
});

const bytesOf = (told: Told): ArrayBuffer[] => (told.kind === 'part' ? [told.text.buffer] : []);
