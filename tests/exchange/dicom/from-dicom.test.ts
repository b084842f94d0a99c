import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DicomDataSet, fromDicomJson, toDicomFile, toDicomJson } from '../../../exchange';
import { analyse } from '../../../orders';
import { holds, seed } from '../../grammar/support/random-text';
import { areJudgesMissing, reproduced } from '../support/dicom-oracles';
import { importedText, lossesTold, meaning, ordersIn } from '../support/round-trip';

const JOB = `order T0412
  design      bifocal flat-top 28

  reading 2026-03-04 10:15:12 by KO with BENCH-1
    R        -3.22 -0.74 x 014
    add      R +1.77
    prism    R 1.48 BI 0.25 BU
    L        -2.51
    again    R -3.24 -0.74 x 014
`;

const [first] = toDicomJson(analyse(JOB)).result as [DicomDataSet];
const changed = (elements: object): string => JSON.stringify({ ...first, ...elements });
const lens = (elements: object): string => changed({ '00460014': { vr: 'SQ', Value: [elements] } });
const FD = (value: number | string) => ({ vr: 'FD', Value: [value] });

test('what went out comes back, repeats and all', () => {
  const back = fromDicomJson(JSON.stringify(toDicomJson(analyse(JOB)).result));
  expect(back.losses).toEqual([]);
  expect(importedText(back)).toBe(JOB);
});

test(`any reading that DICOM holds comes back the same, seed ${seed}`, () => {
  const hundredths = (most: number) =>
    fc.integer({ min: -most * 100, max: most * 100 }).map((n) => (n / 100).toFixed(2));
  const signed = (text: string): string => (text.startsWith('-') ? text : `+${text}`);
  const axis = fc.integer({ min: 1, max: 180 });
  holds(
    200,
    hundredths(15),
    hundredths(4),
    axis,
    hundredths(3),
    hundredths(5),
    (sphere, cylinder, degrees, add, prism) => {
      const power = Number(cylinder) === 0 ? signed(sphere) : `${signed(sphere)} ${signed(cylinder)} x ${degrees}`;
      const base = Number(prism) < 0 ? 'BO' : 'BI';
      const text = `order A\n  reading 2026-03-04 10:15\n    R ${power}\n    add R ${signed(add)}\n    prism R ${Math.abs(Number(prism))} ${base} 0.25 BU\n    L ${power}\n`;
      const back = fromDicomJson(JSON.stringify(toDicomJson(analyse(text)).result));
      expect(back.losses).toEqual([]);
      const readings = (from: string) => meaning(ordersIn(from)[0]?.readings);
      expect(readings(importedText(back))).toEqual(readings(text.replace('-0.00', '0.00')));
    },
  );
});

test.skipIf(areJudgesMissing)('what another program reads from a file comes back', () => {
  const sets = toDicomJson(analyse(JOB)).result.map((set) => reproduced(toDicomFile(set).result));
  expect(importedText(fromDicomJson(JSON.stringify(sets)))).toBe(JOB);
});

describe('figures', () => {
  test('single precision is not taken for more than it is', () => {
    const set = {
      '00460146': FD(-1),
      '00460018': {
        vr: 'SQ',
        Value: [{ '00220009': { vr: 'FL', Value: [14.300000190734863] }, '00460147': FD(-0.5) }],
      },
    };
    const { result, losses } = fromDicomJson(lens(set));
    expect(result).toContain('R        -1.00 -0.50 x 014');
    expect(losses).toMatchObject([{ what: 'CylinderAxis 14.300000190734863', why: 'rounded', eye: 'R' }]);
  });

  test.each([
    ['a text', FD('-3'), 'SpherePower -3 is not a number'],
    ['beyond any lens', FD(-90), 'sphere -90 is beyond any spectacle lens'],
    ['nothing', { vr: 'FD' }, 'a lens has no sphere'],
  ])('a sphere that is %s is refused', (_, sphere, why) => {
    expect(fromDicomJson(lens({ '00460146': sphere })).refused).toEqual([{ message: why, where: null }]);
  });
});

test('what the notation has no place for is told by its keyword', () => {
  const { losses } = fromDicomJson(
    changed({
      '00080070': { vr: 'LO', Value: ['Example Instruments'] },
      '00100010': { vr: 'PN', Value: [{ Alphabetic: 'Order^T0412' }] },
      '00080020': { vr: 'DA', Value: ['20260304'] },
      '00460015': {
        vr: 'SQ',
        Value: [{ '00460146': FD(-1), '00460040': FD(92), '00460038': { vr: 'CS', Value: ['PROGRESSIVE'] } }],
      },
      '00204000': { vr: 'LT', Value: ['second try'] },
    }),
  );
  expect(lossesTold(losses).toSorted()).toEqual([
    'T0412, L: OpticalTransmittance 92: there is no place for it',
    'T0412: 00204000 second try: there is no place for it',
    'T0412: Manufacturer Example Instruments: there is no place for it',
    'T0412: PatientName {"Alphabetic":"Order^T0412"}: there is no place for it',
    'T0412: StudyDate 20260304: there is no place for it',
  ]);
});

test.each([
  [
    'another object',
    changed({ '00080016': { vr: 'UI', Value: ['1.2.840.10008.5.1.4.1.1.78.2'] } }),
    'it is no Lensometry Measurement of DICOM',
  ],
  [
    'an unknown side',
    changed({ '00460016': { vr: 'SQ', Value: [{ '00460146': FD(1) }] } }),
    'it does not say which eye the lens is for',
  ],
  ['no lens', changed({ '00460014': { vr: 'SQ' }, '00460015': { vr: 'SQ' } }), 'it measures no lens'],
  [
    'a lens twice',
    changed({ '00460014': { vr: 'SQ', Value: [{ '00460146': FD(1) }, { '00460146': FD(2) }] } }),
    'RightLensSequence holds more than one item',
  ],
  [
    'an impossible day',
    changed({ '00080023': { vr: 'DA', Value: ['20260230'] } }),
    'ContentDate 20260230 is no day of the calendar',
  ],
  [
    'a base of ours',
    lens({
      '00460146': FD(1),
      '00460028': { vr: 'SQ', Value: [{ '00460030': FD(1), '00460032': { vr: 'CS', Value: ['NASAL'] } }] },
    }),
    'there is no HorizontalPrismBase called NASAL',
  ],
  ['a text', '"LEN"', 'it is not a data set of DICOM'],
])('%s is refused', (_, json, why) => {
  expect(fromDicomJson(json)).toMatchObject({ result: '', refused: [{ message: why }] });
});

test('one bad set costs the others nothing', () => {
  const { result, refused } = fromDicomJson(`[${changed({})}, 7]`);
  expect(ordersIn(result)).toHaveLength(1);
  expect(refused).toEqual([{ message: 'it is not a data set of DICOM', where: '[1]' }]);
});
