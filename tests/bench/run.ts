/** Prints what takes how long, each beside a peer in the same run. Names of benches may be given to run only those. */
import { cpus } from 'node:os';
import { benchAnswers } from './answers';
import { benchBatch } from './batch';
import { benchEdit } from './edit';
import { benchMemory } from './memory';
import { benchParser } from './parser';
import { benchReport } from './report';
import { SEED } from './work';
import { benchYear } from './year';

const BENCHES: Readonly<Record<string, () => Promise<void>>> = {
  parser: benchParser,
  batch: benchBatch,
  edit: benchEdit,
  answers: benchAnswers,
  memory: benchMemory,
  year: benchYear,
  report: benchReport,
};

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !(name in BENCHES));
if (unknown.length > 0) {
  console.error(`There is no bench called ${unknown.join(', ')}. There are: ${Object.keys(BENCHES).join(', ')}.`);
  process.exit(2);
}
console.log(`Node ${process.version}, ${cpus().length} cores (${cpus()[0]?.model}), seed ${SEED}`);
for (const [name, bench] of Object.entries(BENCHES)) if (wanted.length === 0 || wanted.includes(name)) await bench();
