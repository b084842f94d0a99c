/** Whole files: parse and check, beside the `yaml` package reading the same orders as YAML. */
import { parse as parseYaml } from 'yaml';
import { analyse, parseDocument } from '../../orders';
import { inMs, median, perSecond, print, times } from './measure';
import { jobs, lentilText, yamlText } from './work';

const ORDERS = 5_000;

export async function benchBatch(): Promise<void> {
  const work = jobs(ORDERS);
  const text = lentilText(work);
  const yaml = yamlText(work);
  const parse = await median(5, () => {
    for (const { kind, lines } of parseDocument(text).blocks) for (const line of lines) line.parsed(kind);
  });
  const check = await median(5, () => {
    let findings = 0;
    for (const block of analyse(text).blocks) findings += block.findings.length;
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
