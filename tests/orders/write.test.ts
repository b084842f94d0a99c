import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseLine } from '../../grammar';
import { analyse, type Order, ruleOf, tidy } from '../../orders';
import { blankOrder, blankReading, nowhere, writeOrder } from '../../orders/write';
import { examplePaths, textOf } from '../exchange/support/examples';
import { holds, seed } from '../grammar/support/random-text';
import { linesOf, pairs } from './computed/support/random-orders';

const orderIn = (text: string): Order => {
  const order = analyse(text).blocks.find((block) => block.order)?.order;
  if (!order) throw new Error(`no order in ${text}`);
  return order;
};

/** Where something was typed is not part of what was said. */
const WHERE = new Set(['place', 'withPlace', 'named', 'make']);

/** An order without its places, its figures to the ten-thousandth that the writer keeps. */
const meaning = (order: Order): unknown =>
  JSON.parse(
    JSON.stringify({ ...order, made: [Boolean(order.make.R), Boolean(order.make.L)] }, (key, value) =>
      WHERE.has(key) ? undefined : typeof value === 'number' ? tidy(value) : value,
    ),
  );

/** Writes the order, reads it again and wants the same order, and the same text when that is written. */
function checkSame(order: Order, told: readonly string[] = []): void {
  const text = writeOrder(order);
  const again = orderIn(text);
  expect(meaning(again), text).toEqual(meaning(order));
  expect(writeOrder(again)).toBe(text);
  // Nothing is told of the new text that was not told of the old one.
  expect(
    codesOf(text).filter((code) => !told.includes(code)),
    text,
  ).toEqual([]);
}

/** What is told about how the text is written. */
const codesOf = (text: string): readonly string[] =>
  analyse(text)
    .blocks.flatMap(({ findings }) => findings.map(({ code }) => code))
    .filter((code) => ruleOf(code)?.family === 'writing');

const checkText = (text: string): void => checkSame(orderIn(text), [...codesOf(text), 'axis-short']);

const LINES = [
  'both -2.00 add +2.25 prism 1.50 BI',
  'R plano -0.75 x 005',
  'R -4.50 @ 022 / -5.25 @ 112',
  'R +2.12 +0.37 x 180',
  'L -4.125',
  'add R +2.00 L +2.25',
  'add +2.25 intermediate +1.12',
  'prism R 2.00 BI 0.50 BD L 1.25 BO',
  'prism R 2.06 base 014',
  'prism total 4 BI',
  'split equal',
  'yoked',
  'pd 63 R 31.5 L 31.5 near R 30 L 30',
  'height R 17 L 16.5',
  'frame A 52 B 36 DBL 18 ED 55',
  'height R 2 below datum',
  'design R single-vision near L bifocal flat-top 28',
  'design single-vision intermediate +1.25',
  'design trifocal flat-top 7x28',
  'design double flat-top 28 gap 13',
  'design progressive corridor 14',
  'design office degression 1.25 working 60',
  'lens resin-1.50',
  'lens 1.60',
  'lens R "house blend" index 1.586 abbe 30 density 1.2 L resin-1.60',
  'base-curve R 4.12 L 4.25',
  'thickness centre 2.0 edge 1.5 min 1.8',
  'blank 70',
  'inset R 2 L 2.5',
  'decentre R 2.5 in 1 up',
  'decentre L 2 out 1 down',
  'thinning 1.50 BD',
  'slab-off R 3.00',
  'reverse-slab L 3.00',
  'as-worn vertex 13 panto 8 wrap 5',
  'tested vertex 12',
  'compensation vertex',
  'supply uncut',
  'purpose child',
  'standard iso-21987-2017',
  'make R',
  'rx R -4.50 -0.75 x 022 add +2.00 prism 1 BU L -2.00',
  'previous R -4.00 L -3.75 add +1.50',
  'kept L -2.00 -0.25 x 015 add +2.00 prism 1.50 BD',
  'balance L -4.25',
  'balance L',
  'verification R -3.12 -0.93 x 012 add +2.12 prism 0.18 BI',
  'confirmed axis-short "R -4.50 -0.75 x 5" "clinic" by KO',
  'decided accept by MT "as the clinic says"',
];

const TOGETHER = LINES.filter((line) => !/^(?:both|height R 17|balance)/.test(line));

const READ = [
  'zero +0.03',
  'R -4.50 -0.62 x 024 at distance-point with "FOC A" corrected',
  'again R -4.50 -0.62 x 022',
  'L lines -4.25 / -5.25 x 168',
  'L lines -4.25',
  'L -4.25 @ 168 / -5.25 @ 078',
  'add R -4.50 -> -2.50 front-vertex',
  'add R +2.00 engraved',
  'add L +2.00 intermediate +1.12',
  'clock R +6.25 -> +8.25',
  'prism R 0 L 0.50 BO at prism-point',
  'prism R 2.06 base 014',
  'pd 63.5 near 60',
  'near-pd R 30 L 30.5',
  'optical-centres R 33 L 32',
  'height R 17 L 16.5',
  'base-curve R 4.12 L 4',
  'thickness R centre 2.1 L centre 2.0',
  'segment R 28 tilt 1',
  'impact batch "cert 88"',
  'cosmetic passed',
  'replaced R',
  'R -4.51',
];

describe('an order that is written and read again is the same', () => {
  test.each(LINES)('%s', (line) => checkText(`order X\n  ${line}\n`));

  test('with all lines that go together', () => checkText(`order X\n  ${TOGETHER.join('\n  ')}\n`));

  test.each(READ)('reading: %s', (line) => checkText(`order X\n  reading 2026-11-24\n    ${line}\n`));

  test('a whole reading', () => {
    const header = 'reading 2026-11-24 14:30:12 by "A. Moss" with FOC-A stage edged';
    checkText(`order X\n  ${header}\n    ${READ.join('\n    ')}\n`);
  });

  test.each(examplePaths)('every order of %s', (path) => {
    // Defaults and the file's standard belong to the file and come out as lines of the order.
    for (const { order } of analyse(textOf(path)).blocks) if (order) checkSame(order, codesOf(textOf(path)));
  });

  test(`random pairs, seed ${seed}`, () => {
    holds(300, pairs, fc.constantFrom('minus' as const, 'plus' as const), (pair, form) => {
      checkText(`order X\n  ${linesOf(pair, form).join('\n  ')}\n`);
    });
  });

  test(`random names, seed ${seed}`, () => {
    const names = fc.oneof(
      fc.string({ maxLength: 12 }),
      fc.constantFrom('order', 'x', 'by', '2026-01-01', '-4', '“a”'),
    );
    holds(500, names, (name) => {
      const order: Order = {
        ...blankOrder(name.trim() || null),
        readings: [{ ...blankReading(), by: name.trim() || null, with: name.trim() || null, zero: nowhere(0.01) }],
      };
      checkSame(order, ['name-missing']);
    });
  });
});

test('a name with line ends in it stays in its line', () => {
  const text = writeOrder(blankOrder('A\norder B\r\n"C"'));
  expect(text).toBe('order "A order B ""C"""\n');
  expect(parseLine(text.trimEnd()).problems).toEqual([]);
});

test('the layout is that of a slip', () => {
  const text =
    'order QL-1\n  R -4.5 -0.75 x 22\n  add 2\n  pd 63 near 60\n  reading 2026-11-24\n    R -4.5 -0.75 x 22\n';
  expect(writeOrder(orderIn(text)).split('\n')).toEqual([
    'order QL-1',
    '  R           -4.50 -0.75 x 022',
    '  add         +2.00',
    '  pd          63',
    '  near-pd     60',
    '',
    '  reading 2026-11-24',
    '    R        -4.50 -0.75 x 022',
    '',
  ]);
});
