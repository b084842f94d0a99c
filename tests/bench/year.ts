/** A year of work through the command, its start included, beside the ways a lab would otherwise go. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { inMs, middle, perSecond, times } from './measure';
import { judgedInSheet, OFFICE, rejectedInSheet, sheetOf } from './sheet';
import { type Timed, timed } from './timed';
import { HEAD, type Job, jobs, jsonText, lentilText, yamlText } from './work';

/** A year of work; `LENTIL_BENCH_ORDERS=20000 npm run bench -- year` is done sooner, and warming up weighs more in it. */
const ORDERS = Number(process.env.LENTIL_BENCH_ORDERS ?? 100_000);
const FILES = ORDERS / 10;
/** Fewer, since these take minutes; their pace is what is told. */
const AS_YAML = 4_000;
const IN_SHEET = Math.min(ORDERS, 20_000);

const command = fileURLToPath(new URL('../../dist/lentil.mjs', import.meta.url));

interface Line {
  readonly what: string;
  readonly orders: number;
  readonly run: Timed;
  /** Rejected of so many orders, where it says so: all ways have to agree. */
  readonly rejected?: number;
}

export async function benchYear(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'lentil-year-'));
  try {
    await inFolder(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function inFolder(folder: string): Promise<void> {
  const work = jobs(ORDERS);
  const year = join(folder, 'year.lentil');
  writeFileSync(year, lentilText(work));
  const days = join(folder, 'days');
  writeDays(days, work);
  const check = (...args: readonly string[]) => timed(process.execPath, [command, 'check', '--no-config', ...args]);

  const lines: Line[] = [];
  const add = (what: string, orders: number, run: Timed, rejected?: number) =>
    lines.push({ what, orders, run, ...(rejected === undefined ? {} : { rejected }) });
  const rejects = ({ stdout }: Timed): number => Number(/(\d+) reject/.exec(stdout.slice(-2_000))?.[1]);
  const text = await check(year);
  add('lentil check, one file, text', ORDERS, text, rejects(text));
  add('lentil check, one file, jsonl --brief', ORDERS, await check('--format', 'jsonl', '--brief', year));
  add('lentil check, one file, json --brief', ORDERS, await check('--format', 'json', '--brief', year));
  add('lentil check, one file, json', ORDERS, await check('--format', 'json', year));
  add(`lentil check, ${FILES.toLocaleString('en')} files, text`, ORDERS, await check(days));
  const cache = ['--cache', join(folder, 'kept')];
  add('the same, filling a cache', ORDERS, await check(...cache, days));
  add('the same, nothing changed since', ORDERS, await check(...cache, days));

  const floor = await builtFloor(folder);
  const json = join(folder, 'year.json');
  writeFileSync(json, jsonText(work));
  const least = await timed(process.execPath, [floor, json]);
  add('JSON.parse and the same evaluation', ORDERS, least, Number(least.stdout));
  const yaml = join(folder, 'year.yaml');
  writeFileSync(yaml, yamlText(work.slice(0, AS_YAML)));
  const read = await timed(process.execPath, [floor, yaml, 'yaml']);
  add('yaml package and the same evaluation', AS_YAML, read, Number(read.stdout));
  if (OFFICE === null) console.log('\nLibreOffice is not installed; the sheet is left out.');
  else {
    const sheet = join(folder, 'year.fods');
    writeFileSync(sheet, sheetOf(work.slice(0, IN_SHEET)));
    const run = await judgedInSheet(OFFICE, sheet, folder);
    add('LibreOffice Calc, the same limits as formulas', IN_SHEET, run, rejectedInSheet(folder));
  }
  show(lines, least);
  await coldStart(folder, work);
}

/** Ten orders a file, in folders as a lab would have them. */
function writeDays(folder: string, work: readonly Job[]): void {
  const each = ORDERS / FILES;
  for (let at = 0; at < FILES; at++) {
    const day = join(folder, `day-${String(Math.floor(at / 40)).padStart(3, '0')}`);
    mkdirSync(day, { recursive: true });
    const text = lentilText(work.slice(at * each, (at + 1) * each));
    writeFileSync(join(day, `file-${String(at).padStart(5, '0')}.lentil`), text);
  }
}

async function builtFloor(folder: string): Promise<string> {
  const outfile = join(folder, 'floor.mjs');
  const banner = "import { createRequire as make } from 'node:module'; const require = make(import.meta.url);";
  await build({
    entryPoints: ['tests/bench/floor.ts'],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    banner: { js: banner },
    logLevel: 'warning',
  });
  return outfile;
}

function show(lines: readonly Line[], least: Timed): void {
  console.log(`\nA year of work, starts included; ${HEAD.split('\n')[0]}, twenty lines an order`);
  const floor = least.ms / ORDERS;
  console.table(
    lines.map(({ what, orders, run: { ms, memory }, rejected }) => ({
      what,
      orders: orders.toLocaleString('en'),
      time: inMs(ms),
      pace: perSecond(orders, ms),
      'peak MB': memory === null ? '?' : Math.round(memory / 1e6),
      'times the floor': times(ms / orders, floor),
      rejected: rejected === undefined ? '' : `${rejected} (${((100 * rejected) / orders).toFixed(1)} %)`,
    })),
  );
}

async function coldStart(folder: string, work: readonly Job[]): Promise<void> {
  const small = join(folder, 'small.lentil');
  writeFileSync(small, lentilText(work.slice(0, 1)));
  const [ours, bare]: [number[], number[]] = [[], []];
  for (let run = 0; run < 11; run++) {
    ours.push((await timed(process.execPath, [command, 'check', small])).ms);
    bare.push((await timed(process.execPath, ['-e', '0'])).ms);
  }
  console.log('Cold start, one order in one file');
  console.table([
    {
      'lentil check': inMs(middle(ours)),
      'node -e 0': inMs(middle(bare)),
      ratio: times(middle(ours), middle(bare)),
    },
  ]);
}
