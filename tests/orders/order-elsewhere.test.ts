/** One order number with other powers in another file is told; a copy is not, however its powers are written. */
import { describe, expect, test } from 'vitest';
import { analyse, type OrderElsewhere, orderPowersIn, orderPowersOf, parseDocument } from '../../orders';

const OTHER = 'standard z80.1-2015\n\norder A\n  R -2.00 -1.00 x 180\n  L -1.00\n  add +2.00\n';

const from = (text: string): ReadonlyMap<string, readonly OrderElsewhere[]> =>
  new Map([['A', orderPowersIn(text, (name) => name === 'A').map((one) => ({ ...one, path: 'other.lentil' }))]]);

const told = (text: string, other = OTHER): readonly unknown[] =>
  analyse(text, { elsewhere: from(other) }).blocks.flatMap(({ findings }) =>
    findings.filter(({ code }) => code === 'order-elsewhere').map(({ level, data }) => [level, data.path, data.line]),
  );

describe('the same lenses', () => {
  // Transposition: sphere and cylinder added, sign turned, axis turned by 90 degrees.
  test.each([
    ['word for word', 'order A\n  R -2.00 -1.00 x 180\n  L -1.00\n  add +2.00\n'],
    ['transposed', 'order A\n  R -3.00 +1.00 x 090\n  L -1.00 DS\n  add R 2.00 L 2.00\n'],
    ['with a reading below', `${OTHER}  reading 2026-11-24\n    R -9.00\n`],
  ])('%s are no fault', (_, text) => {
    expect(told(text)).toEqual([]);
  });
});

describe('other lenses', () => {
  test.each([
    ['power', 'order A\n  R -2.25 -1.00 x 180\n  L -1.00\n  add +2.00\n'],
    ['sign', 'order A\n  R +2.00 -1.00 x 180\n  L -1.00\n  add +2.00\n'],
    ['axis', 'order A\n  R -2.00 -1.00 x 090\n  L -1.00\n  add +2.00\n'],
    ['add', 'order A\n  R -2.00 -1.00 x 180\n  L -1.00\n  add +2.25\n'],
    ['prism', 'order A\n  R -2.00 -1.00 x 180\n  L -1.00\n  add +2.00\n  prism R 2 BU L 0\n'],
    ['eyes', 'order A\n  L -2.00 -1.00 x 180\n  R -1.00\n  add +2.00\n'],
  ])('by their %s are told with the file and the line', (_, text) => {
    expect(told(text)).toEqual([['warning', 'other.lentil', 3]]);
  });
});

test('an order without a power is compared with nothing', () => {
  expect(told('order A\n')).toEqual([]);
  expect(told(OTHER, 'order A\n  pd 64\n')).toEqual([]);
});

test('an accepted order carries a reservation', () => {
  const text =
    'standard z80.1-2015\norder A\n  R -2.00\n  make R\n  design single-vision\n  supply uncut\n  reading 2026-11-24\n    R -2.00\n    prism R 0\n';
  const { evaluation } = analyse(text, { elsewhere: from(OTHER) }).blocks.find(({ order }) => order !== null) ?? {};
  expect(evaluation).toMatchObject({ verdict: 'accept', reservations: ['order-elsewhere'] });
});

test('a text and its document give the same', () => {
  const text = `defaults\n  add +1.00\n\n${OTHER}\norder "B 2"\n  both +1.00\norder C\n`;
  expect(orderPowersOf(parseDocument(text), () => true)).toEqual(orderPowersIn(text, () => true));
});
