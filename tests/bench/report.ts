/** The quality report over generated work, beside `lentil check` over the same file in the same run, starts included. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inMs, middle, perSecond, times } from './measure';
import { type Timed, timed } from './timed';
import { jobs, lentilText } from './work';

const ORDERS = 20_000;
const RUNS = 3;

const COMMANDS: readonly (readonly [what: string, args: readonly string[]])[] = [
  ['check, all cores', ['check']],
  ['check, one core', ['check', '--threads', '1']],
  ['report as a page, one core', ['report']],
  ['report as JSON, one core', ['report', '--format', 'json']],
];

export async function benchReport(): Promise<void> {
  const folder = join(process.cwd(), 'test-output', 'bench');
  mkdirSync(folder, { recursive: true });
  const file = join(folder, 'report.lentil');
  writeFileSync(file, lentilText(jobs(ORDERS)));
  const taken: (readonly [string, readonly Timed[]])[] = [];
  for (const [what, args] of COMMANDS) taken.push([what, await runs([...args, '--no-config', file])]);
  rmSync(file);
  const time = (all: readonly Timed[]): number => middle(all.map(({ ms }) => ms));
  const alone = time(taken[1]?.[1] ?? []);
  console.log(`\nThe report on ${ORDERS.toLocaleString('en')} orders of twenty lines in one file, beside their check`);
  console.table(
    taken.map(([what, all]) => ({
      what,
      pace: perSecond(ORDERS, time(all)),
      time: inMs(time(all)),
      'peak MB': Math.round(Math.max(...all.map(({ memory }) => memory ?? Number.NaN)) / 1e6),
      'beside check on one core': times(alone, time(all)),
    })),
  );
}

async function runs(args: readonly string[]): Promise<readonly Timed[]> {
  const command = join(process.cwd(), 'dist', 'lentil.mjs');
  const all: Timed[] = [];
  for (let run = 0; run < RUNS; run++) all.push(await timed(process.execPath, [command, ...args]));
  return all;
}
