import { lineWord } from '../../grammar';

/** A plain bifocal job of an invented bench with a reading that is right in everything, line by line. */
export interface Job {
  readonly head: readonly string[];
  readonly order: readonly string[];
  readonly reading: readonly string[];
}

export const JOB: Job = {
  head: ['standard z80.1-2015', 'instrument FOC-A', '  reads-to 0.125', '  calibrated 2026-05-14 due 2027-05-14'],
  order: [
    'order QL-1042',
    'R -4.50 -0.75 x 022',
    'L -4.25 -1.00 x 168',
    'add +2.00',
    'pd 63 near 60',
    'height 17',
    'design bifocal flat-top 28',
    'lens resin-1.50',
    'base-curve 4.00',
    'thickness centre 2.0',
    'frame A 52 B 36 DBL 18 ED 55',
    'supply glazed',
  ],
  reading: [
    'reading 2026-11-24 14:30 by KO with FOC-A',
    'R -4.50 -0.75 x 022',
    'L -4.25 -1.00 x 168',
    'add +2.00',
    'pd 63 near 60',
    'prism R 0 L 0',
    'height 17',
    'base-curve 4.00',
    'thickness centre 2.0',
    'impact passed',
    'cosmetic passed',
  ],
};

/** The job without its reading. */
export const ORDER: Job = { ...JOB, reading: [] };

export const written = ({ head, order, reading }: Job): string =>
  [
    ...head,
    ...order.map((line, at) => (at === 0 ? line : `  ${line}`)),
    ...reading.map((line, at) => (at === 0 ? `  ${line}` : `    ${line}`)),
  ].join('\n');

const wordOf = (line: string): string => {
  const first = /^\s*(\S+)/.exec(line)?.[1] ?? '';
  return lineWord(first)?.word ?? first;
};

/** The lines with one put in the place of those that begin with the same word, or else at the end. */
export function put(lines: readonly string[], line: string): readonly string[] {
  const word = wordOf(line);
  const at = lines.findIndex((one) => wordOf(one) === word);
  if (at < 0) return [...lines, line];
  return lines.flatMap((one, number) => (number === at ? [line] : wordOf(one) === word ? [] : [one]));
}

export const without = (lines: readonly string[], ...words: readonly string[]): readonly string[] =>
  lines.filter((line) => !words.includes(wordOf(line)));

const putAll = (lines: readonly string[], more: readonly string[]): readonly string[] => more.reduce(put, lines);

/** The text of the order with some of its lines written otherwise. */
export const ordered = (...lines: readonly string[]): string =>
  written({ ...ORDER, order: putAll(ORDER.order, lines) });

/** The text of the job with some lines of its reading written otherwise. */
export const read = (...lines: readonly string[]): string => written({ ...JOB, reading: putAll(JOB.reading, lines) });

/** An order of nothing but these lines. */
export const only = (...lines: readonly string[]): string =>
  written({ head: JOB.head, order: ['order T-1', ...lines], reading: [] });
