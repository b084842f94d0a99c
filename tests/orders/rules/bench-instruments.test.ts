/** Instruments: their zero, their test lenses and their step, told where they are declared and where they were used. */
import { describe, expect, test } from 'vitest';
import { analyse, analyseDocument, parseDocument } from '../../../orders';
import { messages, told } from '../../support/findings';
import { JOB, read, written } from '../../support/job';
import { judged } from '../../support/judged';

/** The job with more lines in the block of its instrument, and with some lines of its reading written otherwise. */
const withInstrument = (lines: readonly string[], ...reading: readonly string[]): string =>
  [
    ...JOB.head,
    ...lines.map((line) => `  ${line}`),
    ...read(...reading)
      .split('\n')
      .slice(JOB.head.length),
  ].join('\n');

const again = (text: string, line = 'R -4.50 -0.75 x 022', header = 'reading 2026-11-25'): string =>
  [text, `  ${header}`, `    ${line}`].join('\n');

interface Row {
  readonly text: string;
  readonly told: readonly string[];
}
const row = (text: string, ...expected: readonly string[]): Row => ({ text, told: expected });

const ROWS: Readonly<Record<string, readonly Row[]>> = {
  'instrument-off-zero': [
    // 0.06 D at 0 D: ISO 8598:1996. 0.03 D, and 0.02 D on a display in hundredths: a Chinese verification rule.
    row(read('zero +0.03')),
    row(read('zero -0.04'), 'info [-0.04]'),
    row(read('zero +0.06'), 'info [+0.06]'),
    row(read('zero +0.07'), 'warning [+0.07]'),
    row(read('zero -0.12'), 'warning [-0.12]'),
    row(withInstrument(['zero +0.03'])),
    row(withInstrument(['zero +0.05']), 'info [+0.05]'),
    row(withInstrument(['zero +0.09']), 'warning [+0.09]', 'warning [FOC-A]'),
    row(withInstrument(['reads-to 0.01', 'zero +0.025']), 'info [+0.025]'),
    // The zero of the day wins, and a power that is corrected already has none taken off.
    row(withInstrument(['zero +0.09'], 'zero 0.00'), 'warning [+0.09]'),
    row(
      withInstrument(['zero +0.09'], 'R -4.50 -0.75 x 022 corrected', 'L -4.25 -1.00 x 168 corrected'),
      'warning [+0.09]',
    ),
  ],
  'reference-outside': [
    // ISO 8598:1996: 0.06 D up to 5 D, 0.09 D up to 10 D, 0.12 up to 15, 0.18 up to 20, 0.25 beyond.
    row(withInstrument(['test-lens +5.00 read +5.06', 'test-lens -10.00 read -9.91'])),
    row(withInstrument(['test-lens +5.00 read +5.07']), 'warning [+5.00 read +5.07]', 'warning [FOC-A]'),
    row(withInstrument(['test-lens -10.00 read -10.10']), 'warning [-10.00 read -10.10]', 'warning [FOC-A]'),
    row(
      withInstrument(['test-lens +15.00 read +15.12', 'test-lens -20.00 read -20.18', 'test-lens +25.00 read +24.75']),
    ),
    row(withInstrument(['test-lens +25.00 read +24.74']), 'warning [+25.00 read +24.74]', 'warning [FOC-A]'),
    // What its own zero explains is taken off as it is in every reading.
    row(withInstrument(['zero +0.06', 'test-lens +5.00 read +5.12'])),
    // A display that rounds to eighths shows +5.00 for itself, and may show -10.00 an eighth off.
    row(
      withInstrument(['kind digital focimeter', 'test-lens +5.00 read +5.06']),
      'warning [+5.00 read +5.06]',
      'warning [FOC-A]',
    ),
    row(withInstrument(['kind digital focimeter', 'test-lens -10.00 read -9.875'])),
  ],
  'finer-than-step': [
    row(read('R -4.53 -0.75 x 022'), 'hint R [-4.53 -0.75 x 022]'),
    row(read('R -4.62 -0.87 x 022')),
    row(read('R -4.625 -0.875 x 022')),
    row(read('R lines -4.50 / -5.30 x 022'), 'hint R [lines -4.50 / -5.30 x 022]'),
    row(read('add R +2.06 L +2.00'), 'hint R [R +2.06]'),
    row(read('add R -4.50 -> -2.45 L +2.00'), 'hint R [R -4.50 -> -2.45]'),
    row(read('R -4.53 -0.75 x 022 with FOC-Z')),
    // A zero and a length are estimated, or not read on the drum at all.
    row(read('zero +0.03', 'pd 63.3')),
  ],
};

describe.each(Object.entries(ROWS))('%s', (code, rows) => {
  test.each(rows)('$told', ({ text, told: expected }) => {
    expect(told(text, code), text).toEqual(expected);
  });
});

test('a step of a sixteenth is printed as 0.06, and one of a hundredth has no thirds', () => {
  const stepped = (step: string, power: string) =>
    told(
      written({
        ...JOB,
        head: ['standard z80.1-2015', 'instrument FOC-A', `  reads-to ${step}`],
        reading: [JOB.reading[0] ?? '', `R ${power}`],
      }),
      'finer-than-step',
    );
  for (const power of ['-4.56', '-4.62', '-4.69', '-4.81', '-4.94']) expect(stepped('0.06', power)).toEqual([]);
  expect(stepped('0.06', '-4.59')).toHaveLength(1);
  expect(stepped('0.01', '-4.59')).toEqual([]);
  expect(stepped('0.01', '-4.595')).toHaveLength(1);
  expect(stepped('0.25', '-4.60')).toHaveLength(1);
});

test('the messages carry the figures', () => {
  expect(messages(read('zero +0.09'), 'instrument-off-zero')).toEqual([
    'FOC-A shows +0.09 with nothing on the stop; 0.06 D is the most ISO 8598:1996 allows. It is taken off the powers read on it.',
  ]);
  expect(messages(withInstrument(['test-lens -10.00 read -9.80']), 'reference-outside')[0]).toBe(
    'FOC-A reads its test lens -10.00 as -9.80: +0.20 D off, and 0.09 D is the most ISO 8598:1996 allows there.',
  );
  expect(messages(read('R lines -4.53 / -5.30 x 022'), 'finer-than-step')).toEqual([
    'FOC-A shows steps of 0.125 D; -4.53 and -5.30 lie between two of them.',
  ]);
});

test('an instrument in trouble leaves no plain accept, and a small zero does', () => {
  expect(judged(read('zero +0.03')).reservations).toEqual([]);
  expect(judged(read('zero +0.06'))).toMatchObject({ verdict: 'accept', reservations: [] });
  expect(judged(read('zero +0.07'))).toMatchObject({ verdict: 'accept', reservations: ['instrument-off-zero'] });
  expect(judged(withInstrument(['test-lens +5.00 read +5.12']))).toMatchObject({
    verdict: 'accept',
    reservations: ['reference-outside'],
  });
});

test('once another reading has replaced everything, it is no reservation any more', () => {
  const all = [...JOB.reading.slice(1)];
  const later = [read('zero +0.12'), '  reading 2026-11-25', ...all.map((line) => `    ${line}`)].join('\n');
  expect(told(later, 'instrument-off-zero')).toEqual(['info [+0.12]']);
  expect(judged(later)).toMatchObject({ verdict: 'accept', reservations: [] });
  // Half of it read anew still rests on the first reading.
  expect(told(again(read('zero +0.12')), 'instrument-off-zero')).toEqual(['warning [+0.12]']);
});

test('the zero of the day belongs to the instrument of the reading', () => {
  const head = ['standard z80.1-2015', 'instrument FOC-A', 'instrument FOC-B', '  zero +0.06'];
  const sphereOf = (line: string) =>
    judged(written({ ...JOB, head, reading: [JOB.reading[0] ?? '', 'zero +0.03', line] })).values.power.R?.value.sphere;
  expect(sphereOf('R -4.50 -0.75 x 022')).toBe(-4.53);
  expect(sphereOf('R -4.50 -0.75 x 022 with FOC-A')).toBe(-4.53);
  expect(sphereOf('R -4.50 -0.75 x 022 with FOC-B')).toBe(-4.56);
  expect(sphereOf('R -4.50 -0.75 x 022 with FOC-B corrected')).toBe(-4.5);
});

test('an edit of an instrument is felt by the orders read on it, and leaves the others as they are', () => {
  const text = (zero: string) =>
    [
      'standard z80.1-2015',
      'instrument A',
      `  zero ${zero}`,
      'instrument B',
      ...['A', 'B'].flatMap((name) => [
        `order T-${name}`,
        '  R -1.00',
        '  L -1.00',
        '  pd 62',
        `  reading 2026-11-24 with ${name}`,
        '    R -1.00',
        '    L -1.00',
      ]),
    ].join('\n');
  const before = parseDocument(text('0.00'));
  const first = analyseDocument(before);
  const line = 2;
  const after = before.edit({ start: { line, character: 7 }, end: { line, character: 11 } }, '+0.12');
  const second = analyseDocument(after);
  const orderOf = (analysis: typeof first, name: string) => analysis.blocks.find(({ order }) => order?.name === name);
  expect(orderOf(second, 'T-B')).toBe(orderOf(first, 'T-B'));
  expect(orderOf(second, 'T-A')?.evaluation?.values.power.R?.value.sphere).toBe(-1.12);
  expect(orderOf(second, 'T-A')?.findings.map(({ code }) => code)).toContain('instrument-off-zero');
  expect(analyse(text('+0.12')).blocks.map(({ findings }) => findings)).toEqual(
    second.blocks.map(({ findings }) => findings),
  );
});
