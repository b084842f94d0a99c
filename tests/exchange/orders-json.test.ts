import Ajv from 'ajv/dist/2020';
import { describe, expect, test } from 'vitest';
import { toOrdersJson } from '../../exchange';
import { analyse } from '../../orders';
import schema from '../../schema/orders.schema.json';
import { analysisOf, examplePaths } from './support/examples';

// JSON Schema 2020-12; a date is checked by the pattern of the notation already.
const validate = new Ajv({ strict: true, allowUnionTypes: true, formats: { date: /^\d{4}-\d\d-\d\d$/ } }).compile(
  schema,
);

describe.each(examplePaths)('%s', (path) => {
  const { result } = toOrdersJson(analysisOf(path));

  test('is as the schema says', () => {
    validate(JSON.parse(JSON.stringify(result)));
    expect(validate.errors ?? []).toEqual([]);
  });

  test('holds every line of every order, as facts or in words', () => {
    for (const { losses } of [toOrdersJson(analysisOf(path))])
      expect(
        losses.filter(({ order, why, what }) => order !== null && why === 'no-place' && !what.startsWith('#')),
      ).toEqual([]);
  });
});

test('facts keep their digits, and other lines their words', () => {
  const text = `order A
  R -4.5 -0.750 x 22
  pd 63.0
  coating "hard"
  supply glazed
  reading 2026-11-24 by KO
    R -4.50 -0.62 x 024
    again R -4.47 at near-point
    note "tray 7"
    decided accept by MT
`;
  expect(toOrdersJson(analyse(text)).result).toEqual({
    lentil: 1,
    orders: [
      {
        name: 'A',
        R: { sphere: '-4.5', cylinder: '-0.750', axis: '22' },
        L: {},
        pair: { pd: '63.0' },
        lines: ['coating "hard"', 'supply glazed'],
        readings: [
          {
            date: '2026-11-24',
            time: null,
            by: 'KO',
            with: null,
            stage: 'final',
            lenses: [
              { eye: 'R', repeat: 0, with: null, at: null, facts: { sphere: '-4.50', cylinder: '-0.62', axis: '24' } },
              { eye: 'R', repeat: 0, with: null, at: 'near-point', facts: { sphere: '-4.47' } },
            ],
            lines: ['note "tray 7"', 'decided accept by MT'],
          },
        ],
      },
    ],
  });
});

test.each([
  { sphere: -4.5 },
  { sphere: '+4.50' },
  { axis: '22' },
  { cylinder: '-0.75', axis: '22' },
  { impact: 'yes' },
])('the schema refuses %j', (R) => {
  const order = { name: 'A', R, L: {}, pair: {}, lines: [], readings: [] };
  expect(validate({ lentil: 1, orders: [order] })).toBe(false);
});
