import { describe, expect, it } from 'vitest';
import { type Material, type MaterialConstant, materials } from '../../tables';

// Copied a second time from the handbook list (material-handbooks-from-memory): n_d, n_e, Abbe number, density.
const HANDBOOK = `
glass-1.52     1.523        1.525        58-59  2.54
resin-1.50     1.498        1.500        58     1.32
polycarbonate  1.586        1.589        30     1.20
resin-1.53     1.530-1.532  1.533        43-45  1.11
resin-1.60     1.592        1.597-1.600  41     1.30
resin-1.67     1.660        1.668        32     1.35
resin-1.74     1.732-1.738  1.738-1.740  32-33  1.46-1.47
glass-1.60     1.600        1.604        41-42  2.60-2.63
glass-1.70     1.700        1.705        39-42  2.99-3.20
glass-1.80     1.802        1.807        34-35  3.62-3.66
glass-1.90     1.885        1.893        30-31  3.99-4.02
`;

const ROWS = HANDBOOK.trim()
  .split('\n')
  .map((line) => {
    const [id = '', ...figures] = line.split(/\s+/);
    return { id, figures };
  });

it.each(ROWS)('$id has the constants of the handbooks', ({ id, figures }) => {
  const { indexD, indexE, abbe, density } = material(id);
  expect([indexD, indexE, abbe, density].map(ends)).toEqual(figures.map((figure) => figure.split('-').map(Number)));
});

it('has one material that no handbook lists, and says so', () => {
  const listed = new Set(ROWS.map((row) => row.id));
  const others = materials.filter((one) => !listed.has(one.id));
  expect(others.map((one) => one.id)).toEqual(['resin-1.56']);
  expect(others[0]?.indexD.source).toBe('mid-index-resin-from-memory');
});

it('has the indices of the course material as seen, and all else from memory', () => {
  // opticianry-course-materials: crown 1.523, allyl diglycol carbonate 1.498, polycarbonate 1.586.
  const seen = materials.flatMap((one) =>
    [one.indexD, one.indexE, one.abbe, one.density]
      .filter((constant) => constant.evidence !== 'memory')
      .map((constant) => `${one.id} ${constant.value}`),
  );
  expect(seen).toEqual(['resin-1.50 1.498', 'polycarbonate 1.586', 'glass-1.52 1.523']);
});

describe.each(materials.map((one) => ({ id: one.id, one })))('$id', ({ one }) => {
  it('takes the middle of each range', () => {
    for (const constant of [one.indexD, one.indexE, one.abbe, one.density]) {
      const [low = Number.NaN, high = low] = ends(constant);
      expect(constant.value).toBeCloseTo((low + high) / 2, 9);
    }
  });

  it('has the e index that the d index and the Abbe number lead to', () => {
    // Cauchy's two-term formula between the lines of ISO 7944 (d 587.56, e 546.07 nm) and F 486.13, C 656.27 nm. The lists
    // take the two indices from different melts and labels, which is worth up to 0.0035.
    const share = (546.07 ** -2 - 587.56 ** -2) / (486.13 ** -2 - 656.27 ** -2);
    const expected = one.indexD.value + (share * (one.indexD.value - 1)) / one.abbe.value;
    expect(Math.abs(one.indexE.value - expected)).toBeLessThan(0.0035);
    expect(one.indexE.value).toBeGreaterThan(one.indexD.value);
  });

  it('carries its index class in its name', () => {
    const label = Number(/\d\.\d+$/.exec(one.id)?.[0] ?? one.indexD.value);
    expect(Math.abs(label - one.indexE.value)).toBeLessThan(0.01);
  });
});

it('spells no two materials alike', () => {
  const spellings = materials.flatMap((one) => [one.id, ...one.spellings]);
  expect(spellings.filter((spelling, at) => spellings.indexOf(spelling) !== at)).toEqual([]);
  expect(spellings.filter((spelling) => spelling !== spelling.toLowerCase())).toEqual([]);
});

function material(id: string): Material {
  const found = materials.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no material ${id}`);
  return found;
}

function ends({ value, low, high }: MaterialConstant): number[] {
  return low === undefined || high === undefined ? [value] : [low, high];
}
