/** Pairs made for near: their place is the near PD, and their object is near when the vertex distance changes. */
import { describe, expect, test } from 'vitest';
import { powerToMake, type Worked } from '../../orders';
import { findingsWith } from '../support/findings';
import { measureOf, pair } from '../support/judged';
import { everything, find, orderOf } from './computed/support/figures';

const figureOf = (text: string, what: Worked['what']): Worked | undefined => find(everything(text), what);

const NEAR = ['R +3.00', 'L +3.00', 'add +2.00', 'design single-vision near', 'frame A 50 B 34 DBL 18 ED 52'];

describe('a pair for near is placed by its near PD', () => {
  // ANSI Z80.1-2015 as printed: 2.5 mm above 2.75 D. At +5.00 a pair at 62 is 4 mm out for near, and right for far.
  test.each([
    ['pd 62 near 58', 'pd 58', 58, 0, 'pass'],
    ['pd 62 near 58', 'pd near 58', 58, 0, 'pass'],
    ['pd 62 near 58', 'pd 62', 58, 4, 'fail'],
    ['pd 62 near 58', 'pd near 60.5', 58, 2.5, 'pass'],
    ['pd 62 near 58', 'optical-centres 61', 58, 3, 'fail'],
    ['pd R 31 L 31 near R 29 L 29', 'pd R 29 L 29.5', 58, 0.5, 'pass'],
    ['pd 58', 'pd 58', 58, 0, 'pass'],
    ['pd near 58', 'pd 58', 58, 0, 'pass'],
  ])('%s, read %s', (ordered, read, wanted, deviation, outcome) => {
    const text = pair([...NEAR, ordered], [read]);
    expect(measureOf(text, 'pd')).toMatchObject({ ordered: wanted, deviation, outcome });
  });

  test('and decentred by it', () => {
    // (50 + 18 - 58) / 2 = 5: OpticalCourse free dispensing course, the formula of its quiz answers.
    const found = figureOf(pair([...NEAR, 'pd 62 near 58'], []), 'decentration');
    expect(found).toMatchObject({ values: { in: { value: 5 } }, formula: '(A + DBL − near PD) / 2' });
    const own = figureOf(pair([...NEAR, 'pd R 31 L 31 near R 29 L 29'], []), 'decentration');
    expect(own).toMatchObject({ values: { in: { value: 5 } }, formula: '(A + DBL) / 2 − near PD R' });
  });

  test('where one lens is for far the pair is placed by the distance PD', () => {
    const mixed = NEAR.map((line) =>
      line.startsWith('design') ? 'design R single-vision near L single-vision' : line,
    );
    expect(measureOf(pair([...mixed, 'pd 62 near 58'], ['pd 62']), 'pd')).toMatchObject({
      ordered: 62,
      outcome: 'pass',
    });
  });
});

describe('the vertex distance of a lens for near counts for a near object', () => {
  const text = (use: string, ...more: readonly string[]): string =>
    pair(
      [
        'both +10.00',
        'add +2.00',
        `design ${use}`,
        'tested vertex 10',
        'as-worn vertex 15',
        'compensation vertex',
        ...more,
      ],
      [],
    );
  const made = (order: string): number => {
    const target = powerToMake(orderOf(order), orderOf(order).lenses.R);
    return target?.kind === 'known' ? target.power.sphere : Number.NaN;
  };

  test('at the usual 40 cm, which is said', () => {
    // By hand: 12 - 1000/390 = 9.4359 leaves, 5 mm on 9.0108 arrives, and 1000/385 = 2.5974 for the object from there.
    expect(made(text('single-vision near'))).toBeCloseTo(11.6082, 3);
    const found = figureOf(text('single-vision near'), 'power-for-vertex');
    expect(found?.inputs['working distance']).toEqual({ value: 400, unit: 'mm', from: 'assumed' });
    expect(found?.assumed).toContain('working distance 40 cm (common practice, no source)');
  });

  test('for an intermediate distance where its addition is sharp, and far as before', () => {
    // 11 - 1000/990 = 9.9899, 9.9899 / (1 + 0.005 x 9.9899) = 9.5146, + 1000/985 = 1.0152.
    expect(made(text('single-vision intermediate +1.00'))).toBeCloseTo(10.5299, 3);
    // 10 / (1 + 0.005 x 10): Contact Lens Society of America, EyeWitness, Spring 2011, p. 27.
    expect(made(text('single-vision'))).toBeCloseTo(9.5238, 4);
  });
});

test('a recorded fact has no unit', () => {
  const text = pair(['R -1.00', 'L -1.00', 'pd 62'], ['impact passed', 'cosmetic failed "scratch R"']);
  expect([measureOf(text, 'impact').unit, measureOf(text, 'cosmetic').unit]).toEqual([null, null]);
});

describe('imbalance where one reads is one figure', () => {
  const anisometropic = [
    'R -2.00',
    'L -5.00',
    'add +2.00',
    'frame A 50 B 38 DBL 18 ED 54',
    'design bifocal flat-top 28',
  ];

  test.each([
    // The centre line stands at 19; 5 mm into a segment 16 high is 8 mm down, and 0.8 x 3.00 = 2.4.
    [['height 16'], 8, 2.4],
    [['height 19'], 5, 1.5],
    // No height: 10 mm.
    [[], 10, 3],
  ])('%s', (more, level, amount) => {
    const text = pair([...anisometropic, ...more], []);
    const found = figureOf(text, 'vertical-imbalance');
    expect(found?.values.upBeforeRight?.value).toBeCloseTo(amount, 4);
    const data = findingsWith(text, 'near-imbalance').map(({ finding }) => finding.data);
    expect(data).toEqual(amount > 1.5 ? [expect.objectContaining({ amount, level, slab: 'L', reverse: 'R' })] : []);
  });
});
