/**
 * The parser alone, on a file of twenty thousand orders: beside a parser of the same lines written the usual way with the
 * same library, and beside the `yaml` package reading the same orders as YAML. A character typed in the middle of that
 * file is answered by the peers with reading all of it anew.
 */
import { parse as parseYaml } from 'yaml';
import { type LentilDocument, parseDocument, parseLine } from '../../grammar';
import { inMs, median, perSecond, print, times } from './measure';
import { parseNaively } from './naive-parser';
import { jobs, lentilText, SEED, yamlText } from './work';

const ORDERS = 20_000;
const RUNS = 5;
/** The peers take seconds a run, and their runs hardly differ. */
const PEER_RUNS = 1;
const KEYSTROKES = 200;

export async function benchParser(): Promise<void> {
  // Each run reads work it has not seen, since lines that returned from the last run would be known already.
  const texts = Array.from({ length: RUNS + 1 }, (_, run) => lentilText(jobs(ORDERS, SEED + run)));
  const text = texts[0] as string;
  const parse = await median(RUNS, () => parseAll(parseDocument(texts.pop() as string)));
  const alone = await median(RUNS, () => parseAlone(parseDocument(text)));
  const edit = medianKeystroke(parseDocument(text));
  const naive = await median(PEER_RUNS, () => parseNaively(text));
  const yaml = yamlText(jobs(ORDERS));
  const peer = await median(PEER_RUNS, () => parseYaml(yaml));

  const row = (what: string, ours: number, other: number, say: (taken: number) => string) => ({
    what,
    ours: say(ours),
    peer: say(other),
    ratio: times(other, ours),
  });
  const rate = (taken: number): string => `${perSecond(ORDERS, taken)} (${inMs(taken)})`;
  print(`The parser on ${ORDERS} orders of twenty lines; the peers are a grammar of whole files and the yaml package`, [
    row('parse, beside one grammar for the file', parse, naive, rate),
    row('parse, beside YAML', parse, peer, rate),
    row('parse without sharing trees, beside one grammar', alone, naive, rate),
    row('parse without sharing trees, beside YAML', alone, peer, rate),
    row('one character, beside one grammar', edit, naive, inMs),
    row('one character, beside YAML', edit, peer, inMs),
  ]);
}

function parseAll({ blocks }: LentilDocument): void {
  for (const { kind, lines } of blocks) for (const line of lines) line.parsed(kind);
}

/** As though no two lines of the file read the same. */
function parseAlone({ blocks }: LentilDocument): void {
  for (const { lines } of blocks) for (const { text } of lines) parseLine(text);
}

/** Types digits into the axes of orders all over the file, and parses what each of them changed. */
function medianKeystroke(opened: LentilDocument): number {
  parseAll(opened);
  let document = opened;
  const taken: number[] = [];
  for (let at = 0; at < KEYSTROKES; at++) {
    const line = axisBelow(document, Math.floor((document.lineCount * (at + 0.5)) / KEYSTROKES));
    const character = (document.line(line)?.text.length ?? 0) - 1;
    const start = performance.now();
    document = document.edit({ start: { line, character }, end: { line, character: character + 1 } }, `${at % 10}`);
    const block = document.blocks[document.blockAt(line)];
    for (const changed of block?.lines ?? []) changed.parsed(block?.kind ?? 'order');
    taken.push(performance.now() - start);
  }
  taken.sort((a, b) => a - b);
  return taken[taken.length >> 1] as number;
}

function axisBelow(document: LentilDocument, line: number): number {
  let at = line;
  while (!/ x \d+$/.test(document.line(at)?.text ?? '')) at++;
  return at;
}
