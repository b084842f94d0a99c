/** What the server keeps after very many edits of one large file: nothing of an older text may stay. */
import { Session } from '../../server/session';
import { jobs, lentilText } from './work';

const ORDERS = 1_000;
const ROUNDS = 4;
const EDITS = 1_000;
const URI = 'file:///bench/year.lentil';

export async function benchMemory(): Promise<void> {
  const session = new Session({
    read: async () => null,
    list: async function* () {},
    reads: () => true,
    faults: () => undefined,
    configuration: async () => null,
    edited: (uri) => void session.snapshot(uri)?.analysed(),
    settled: () => undefined,
    log: () => undefined,
  });
  const text = lentilText(jobs(ORDERS));
  session.open(URI, 1, text);
  await session.ready(URI);
  session.snapshot(URI)?.analysed();
  const lines = text.split('\n').length;
  const held = [heldNow()];
  for (let edit = 0; edit < ROUNDS * EDITS; edit++) {
    // Typed and taken back all over the file; every text is a new one.
    const line = (edit * 7919) % (lines - 1);
    const range = { start: { line, character: 0 }, end: { line, character: 0 } };
    session.change(URI, 2 + 2 * edit, [{ range, text: `# ${edit}\n` }]);
    const typed = { start: { line, character: 0 }, end: { line: line + 1, character: 0 } };
    session.change(URI, 3 + 2 * edit, [{ range: typed, text: '' }]);
    if ((edit + 1) % EDITS === 0) held.push(heldNow());
  }
  console.log(`\nMemory with ${ORDERS} orders open, after each ${EDITS} lines typed and taken back (after collection)`);
  console.table(held.map((bytes, round) => ({ edits: round * EDITS, 'MB held': (bytes / 1e6).toFixed(1) })));
}

function heldNow(): number {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed;
}
