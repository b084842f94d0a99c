/** Speed beside a peer, in one run on one machine. Nothing here passes or fails: numbers are printed to be read. */
import { cpus } from 'node:os';
import { benchBatch } from './batch';
import { benchEdit } from './edit';
import { SEED } from './work';

console.log(`Node ${process.version}, ${cpus().length} cores (${cpus()[0]?.model}), seed ${SEED}`);
await benchBatch();
await benchEdit();
