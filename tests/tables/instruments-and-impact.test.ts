import { describe, expect, it } from 'vitest';
import {
  dressImpactFacts,
  focimeterLimits,
  type ImpactFact,
  safetyImpactFacts,
  safetyThicknesses,
  toleranceSetById,
} from '../../tables';
import { band, tableFor } from './support/as-printed';

// Copied a second time from the account of ISO 8598:1996 (iso-8598-1996) and not from the tables.
describe('focimeter limits', () => {
  it('are those of the 1996 edition', () => {
    expect(focimeterLimits.vertexPower.map((row) => `${band(row.band)} | ${row.limit} | ${row.evidence}`)).toEqual([
      '≥ 0.00 ≤ 5.00 | 0.06 | published',
      '> 5.00 ≤ 10.00 | 0.09 | published',
      '> 10.00 ≤ 15.00 | 0.12 | published',
      '> 15.00 ≤ 20.00 | 0.18 | published',
      '> 20.00 | 0.25 | published',
    ]);
    expect(focimeterLimits.prism.map((row) => `${band(row.band)} | ${row.limit} | ${row.evidence}`)).toEqual([
      '> 0.00 ≤ 5.00 | 0.1 | published',
      '> 5.00 ≤ 10.00 | 0.2 | memory',
      '> 10.00 ≤ 15.00 | 0.3 | published',
      '> 15.00 ≤ 20.00 | 0.4 | published',
      '> 20.00 | 0.5 | published',
    ]);
  });

  it('leave the hidden cells of rounding instruments empty', () => {
    const lines = focimeterLimits.rounding.flatMap((table) =>
      table.rows.map((row) => `${table.step}: ${band(row.band)} | ${row.limit ?? 'hidden'}`),
    );
    expect(lines).toEqual([
      '0.25: ≥ 0.00 ≤ 5.00 | 0',
      '0.25: > 5.00 ≤ 10.00 | hidden',
      '0.25: > 10.00 ≤ 15.00 | 0',
      '0.25: > 15.00 | hidden',
      '0.125: ≥ 0.00 ≤ 5.00 | 0',
      '0.125: > 5.00 ≤ 10.00 | 0.125',
      '0.125: > 10.00 ≤ 15.00 | 0.125',
      '0.125: > 15.00 | hidden',
    ]);
  });

  it('have the single limits of the national rule, and two from memory', () => {
    expect(focimeterLimits.single.map((one) => `${one.item} ${one.limit} ${one.unit} ${one.evidence}`)).toEqual([
      'zero 0.03 D secondary',
      'zero-on-0.01-display 0.02 D secondary',
      'residual-prism 0.1 prism-dioptre secondary',
      'parallax 0.1 prism-dioptre secondary',
      'ink-mark 0.5 mm secondary',
      'axis-marker 1 deg memory',
      'optical-centre-mark 0.4 mm memory',
    ]);
  });

  it('use up half of a lens tolerance near low powers', () => {
    // focimetry-article: errors up to 0.06 D inside 5 D are usual, about half the usual power tolerance.
    const iso = toleranceSetById.get('iso-8980-2004');
    const lens = tableFor(iso?.power ?? [], 'single-vision-multifocal').rows[0]?.meridian.limit;
    expect(lens).toMatchObject({ amount: 2 * (focimeterLimits.vertexPower[0]?.limit ?? 0) });
  });
});

// Units by their definitions: inch 25.4 mm, foot 0.3048 m, ounce 28.349523125 g, pound 0.45359237 kg.
describe('impact tests', () => {
  it.each([
    { facts: dressImpactFacts, id: 'ball-diameter', exact: (5 / 8) * 25.4, digits: 1 },
    { facts: dressImpactFacts, id: 'ball-mass', exact: 0.56 * 28.349523125, digits: 1 },
    { facts: dressImpactFacts, id: 'drop', exact: 50 * 0.0254, digits: 2 },
    { facts: dressImpactFacts, id: 'point-of-strike', exact: (5 / 8) * 25.4, digits: 1 },
    { facts: dressImpactFacts, id: 'base-plate', exact: 27 * 0.45359237, digits: 1 },
    { facts: safetyImpactFacts, id: 'basic-ball-diameter', exact: 25.4, digits: 1 },
    { facts: safetyImpactFacts, id: 'basic-ball-mass', exact: 2.4 * 28.349523125, digits: 0 },
    { facts: safetyImpactFacts, id: 'basic-drop', exact: 50 * 0.0254, digits: 2 },
    { facts: safetyImpactFacts, id: 'rated-ball-diameter', exact: 25.4 / 4, digits: 2 },
    { facts: safetyImpactFacts, id: 'rated-speed', exact: 150 * 0.3048, digits: 1 },
  ])('$id is the stated figure in metric units', ({ facts, id, exact, digits }) => {
    expect(value(facts, id)).toBe(Number(exact.toFixed(digits)));
  });

  it.each([
    { facts: dressImpactFacts, ball: 'ball' },
    { facts: safetyImpactFacts, ball: 'basic-ball' },
  ])('the $ball weighs what steel of 7.85 g/cm³ weighs', ({ facts, ball }) => {
    const mass = (Math.PI / 6) * (value(facts, `${ball}-diameter`) / 10) ** 3 * 7.85;
    expect(Math.abs(value(facts, `${ball}-mass`) / mass - 1)).toBeLessThan(0.04);
  });

  it('keeps records for three years', () => {
    expect(value(dressImpactFacts, 'sale-records')).toBe(3);
    expect(value(dressImpactFacts, 'test-records')).toBe(3);
  });

  it('has the least thicknesses of safety lenses', () => {
    // z87.1-2020-laboratory-manual: 3.0 mm; 2.5 mm from +3.00 D; 2.0 mm where impact-rated.
    expect(
      safetyThicknesses.map((row) => `${row.rating} ${band(row.power ?? {})} ${row.atLeast} ${row.where}`),
    ).toEqual(['basic < 3.00 3 anywhere', 'basic ≥ 3.00 2.5 thinnest-point', 'impact-rated  2 thinnest-point']);
  });

  it('names no fact twice', () => {
    for (const facts of [dressImpactFacts, safetyImpactFacts]) {
      expect(new Set(facts.map((fact) => fact.id)).size).toBe(facts.length);
      expect(facts.filter((fact) => (fact.value === undefined) !== (fact.unit === undefined))).toEqual([]);
    }
  });
});

function value(facts: readonly ImpactFact[], id: string): number {
  return facts.find((fact) => fact.id === id)?.value ?? Number.NaN;
}
