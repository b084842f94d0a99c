/** Whole files: parse and check, beside the `yaml` package reading the same orders as YAML. */
import { parse as parseYaml } from 'yaml';
import { analyse, parseDocument } from '../../orders';
import { inMs, median, perSecond, print, times } from './measure';
import { jobs, lentilText, SEED, yamlText } from './work';

const ORDERS = 5_000;
const RUNS = 5;

/** Each run reads work it has not seen, since lines that returned from the last run would be known already. */
export async function benchBatch(): Promise<void> {
  const texts = Array.from({ length: RUNS + 1 }, (_, run) => lentilText(jobs(ORDERS, SEED + run)));
  const others = Array.from({ length: RUNS + 1 }, (_, run) => lentilText(jobs(ORDERS, SEED + RUNS + 1 + run)));
  const yaml = yamlText(jobs(ORDERS));
  const parse = await median(RUNS, () => {
    for (const { kind, lines } of parseDocument(texts.pop() as string).blocks)
      for (const line of lines) line.parsed(kind);
  });
  const check = await median(RUNS, () => {
    let findings = 0;
    for (const block of analyse(others.pop() as string).blocks) findings += block.findings.length;
    return findings;
  });
  const peer = await median(3, () => parseYaml(yaml));
  const row = (what: string, ours: number) => ({
    what,
    ours: `${perSecond(ORDERS, ours)} (${inMs(ours)})`,
    peer: `${perSecond(ORDERS, peer)} (${inMs(peer)})`,
    ratio: times(peer, ours),
  });
  print(`${ORDERS} orders of twenty lines; the peer only reads them, as YAML (yaml package)`, [
    row('parse', parse),
    row('parse, evaluate, find', check),
  ]);
}
