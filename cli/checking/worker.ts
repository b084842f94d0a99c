/** A thread that judges what it is handed. */
import { parentPort, workerData } from 'node:worker_threads';
import { Judge } from './judge';
import type { Task } from './task';

const judge = new Judge(workerData);

parentPort?.on('message', (task: Task) => parentPort?.postMessage(judge.told(task)));
