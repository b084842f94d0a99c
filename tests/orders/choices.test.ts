/** What the user decides for all orders: the guard band, and from which share of a limit on a pass is told. */
import { describe, expect, test } from 'vitest';
import { analyseDocument, carryContributors, contextOf, type LentilDocument, parseDocument } from '../../orders';
import { messages, told } from '../support/findings';
import { JOB, put, written } from '../support/job';

/** The job with one line of its reading; the limit of this axis in Z80.1-2015 is 5 degrees, of the PD 2.5 mm. */
const read = (line: string): string => written({ ...JOB, reading: put(JOB.reading, line) });

describe('a deviation that passes with little to spare', () => {
  test.each([
    ['R -4.50 -0.75 x 026', 80, ['info R [-4.50 -0.75 x 026]']],
    ['R -4.50 -0.75 x 026', 81, []],
    ['R -4.50 -0.75 x 025', 80, []],
    ['pd 65.5 near 60', 100, ['info [65.5]']],
    ['pd 65.4 near 60', 100, []],
  ] as const)('%s at %d percent', (line, nearPercent, expected) => {
    expect(told(read(line), 'nearly-used-up', { nearPercent })).toEqual(expected);
  });

  test('nothing is told until a share is set, nor of what fails', () => {
    expect(told(read('pd 65.5 near 60'), 'nearly-used-up')).toEqual([]);
    expect(told(read('pd 66 near 60'), 'nearly-used-up', { nearPercent: 50 })).toEqual([]);
  });

  test('the message says how much', () => {
    expect(messages(read('pd 65 near 60'), 'nearly-used-up', { nearPercent: 80 })).toEqual([
      'PD off by +2 mm, which is 80 % of the limit of 2.5 mm (z80.1-2015).',
    ]);
  });
});

test('another choice is worked out anew, the same one is not', () => {
  const document = parseDocument(read('pd 65 near 60'));
  const order = (nearPercent: number | null) => analyseDocument(document, { nearPercent }).blocks.at(-1);
  const first = order(80);
  expect(first?.findings.map(({ code }) => code)).toContain('nearly-used-up');
  expect(order(80)).toBe(first);
  expect(order(null)?.findings.map(({ code }) => code)).not.toContain('nearly-used-up');
});

/** A text of small blocks, some of which others rest on. */
const TEXT = [
  'standard z80.1-2015',
  'order A',
  'instrument FOC-A',
  'order B',
  'defaults',
  'order C',
  'tolerance house from z80.1-2015',
].join('\n');

test.each([
  ['an order comes', 1, 0, 'order N\n'],
  ['an instrument comes', 3, 0, 'instrument FOC-N\n'],
  ['an instrument goes', 2, 1, ''],
  ['several blocks change at once', 1, 4, 'defaults\ninstrument FOC-M\n'],
  ['an order changes', 3, 1, 'order N\n'],
  ['the end changes', 6, 1, 'order N\n'],
])('after an edit the context is that of the whole text: %s', (_, line, gone, text) => {
  const before = parseDocument(TEXT);
  const range = { start: { line, character: 0 }, end: { line: line + gone, character: 0 } };
  const after = before.edit(range, text);
  const [head, tail] = shared(before, after);
  carryContributors(before, after, head, tail);
  const names = ({ instruments, houses, standard, defaults }: ReturnType<typeof contextOf>) => [
    [...instruments.keys()],
    [...houses.keys()],
    standard?.name,
    defaults && after.blocks.indexOf(defaults),
  ];
  const anew = parseDocument(after.text());
  const whole = contextOf(anew);
  expect(names(contextOf(after))).toEqual([
    [...whole.instruments.keys()],
    [...whole.houses.keys()],
    whole.standard?.name,
    whole.defaults && anew.blocks.indexOf(whole.defaults),
  ]);
});

/** How many blocks two documents share at their beginnings and at their ends. */
function shared(before: LentilDocument, after: LentilDocument): readonly [number, number] {
  let head = 0;
  while (before.blocks[head] && before.blocks[head] === after.blocks[head]) head++;
  const most = Math.min(before.blocks.length, after.blocks.length) - head;
  let tail = 0;
  while (tail < most && before.blocks.at(-1 - tail) === after.blocks.at(-1 - tail)) tail++;
  return [head, tail];
}
