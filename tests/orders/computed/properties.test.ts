import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Amount, type Worked, type WorkedValue, workedInWords } from '../../../orders';
import { everything, find, ofLens, ofPair, orderText } from './support/figures';
import { holds, linesOf, mirrored, pairs, seed } from './support/random-orders';

const RUNS = 150;

/** Values of a figure of either lens, seen in a mirror: angles turn over, in and up stay. */
function inMirror({ values, what }: Worked): Readonly<Record<string, WorkedValue>> {
  const turned = (angle: number) => (angle === 180 ? 180 : 180 - angle);
  const seen = (name: string, value: WorkedValue): WorkedValue => {
    if (typeof value === 'number')
      return name === 'wheel' ? turned(value) : name === 'base' ? (540 - value) % 360 : value;
    if ('sphere' in value) return value.cylinder === 0 ? value : { ...value, axis: turned(value.axis) };
    return 'meridian' in value ? { ...value, meridian: turned(value.meridian) } : value;
  };
  if (what === 'meridians') expect(Object.keys(values)).not.toHaveLength(0);
  return mapped(values, seen);
}

const plain = ({ values }: Worked) => mapped(values, (_, value) => value);

const mapped = (values: Readonly<Record<string, Amount>>, to: (name: string, value: WorkedValue) => WorkedValue) =>
  Object.fromEntries(Object.entries(values).map(([name, { value }]) => [name, to(name, value)]));

/** Two sets of values alike to the last rounded digit. */
function expectAlike(found: unknown, wanted: unknown, of: string): void {
  if (typeof wanted === 'number')
    expect(Math.abs(Number(found) - wanted), `${of}: ${found} ${wanted}`).toBeLessThan(2.1e-4);
  else {
    const [one, other] = [found as Record<string, unknown>, wanted as Record<string, unknown>];
    expect(Object.keys(one), of).toEqual(Object.keys(other));
    for (const [name, part] of Object.entries(other)) expectAlike(one[name], part, `${of} ${name}`);
  }
}

describe(`random orders, seed ${seed}`, () => {
  test('a wearer in the mirror has the mirrored lenses before the other eyes', () => {
    holds(RUNS, pairs, (pair) => {
      const [text, turned] = [orderText(...linesOf(pair)), orderText(...linesOf(mirrored(pair)))];
      for (const [eye, other] of [
        ['R', 'L'],
        ['L', 'R'],
      ] as const) {
        const [seen, own] = [ofLens(text, eye), ofLens(turned, other)];
        expect(own.map(({ what }) => what)).toEqual(seen.map(({ what }) => what));
        for (const one of seen) expectAlike(plain(find(own, one.what) as Worked), inMirror(one), one.what);
      }
    });
  });

  test('between the eyes a mirror turns what one eye has more than the other', () => {
    holds(RUNS, pairs, (pair) => {
      const [seen, own] = [ofPair(orderText(...linesOf(pair))), ofPair(orderText(...linesOf(mirrored(pair))))];
      expect(own.map(({ what }) => what)).toEqual(seen.map(({ what }) => what));
      for (const { what, eye, values } of seen) {
        const other = find(own, what) as Worked;
        if (eye) expect(other.eye).toBe(eye === 'R' ? 'L' : 'R');
        for (const [name, { value }] of Object.entries(values)) {
          const turned = other.values[name]?.value;
          if (name === 'upBeforeRight') expectAlike(turned, -(value as number), what);
          else if (name !== 'right') expectAlike(turned, value, what);
        }
      }
    });
  });

  test('the other cylinder form gives the same figures', () => {
    // The near power and the meridians keep the form that was written, so they are the same lens in other words.
    const kept = new Set(['near-power', 'intermediate-power', 'meridians']);
    holds(RUNS, pairs, (pair) => {
      const [minus, plus] = [everything(orderText(...linesOf(pair))), everything(orderText(...linesOf(pair, 'plus')))];
      expect(plus.map(({ what }) => what)).toEqual(minus.map(({ what }) => what));
      for (const [at, one] of minus.entries())
        if (!kept.has(one.what)) expectAlike(plain(plus[at] as Worked), plain(one), one.what);
    });
  });

  test('every figure has a formula, inputs and a source, and says what it took as usual', () => {
    const seen = new Set<string>();
    holds(RUNS, pairs, (pair) => {
      for (const one of everything(orderText(...linesOf(pair)))) {
        seen.add(one.what);
        expect(one.formula).not.toBe('');
        expect(one.source).toMatch(/\w{3}.*\.$/);
        expect(Object.keys(one.inputs)).not.toHaveLength(0);
        expect(Object.keys(one.values).length > 0).toBe(one.refused === null);
        const isTaken = Object.values(one.inputs).some(({ from }) => from === 'assumed');
        if (isTaken) expect(one.assumed, one.what).not.toHaveLength(0);
        const { title, value, how } = workedInWords(one);
        for (const words of [title, value, how]) expect(words).toMatch(/^\S.*\S$|^\S$/);
        expect(`${value} ${how}`).not.toMatch(/undefined|NaN|null|\n/);
      }
    });
    expect([...seen].length).toBeGreaterThan(30);
  });

  test('a line that is left out takes figures away and changes none into nonsense', () => {
    holds(RUNS, pairs, fc.nat(), (pair, left) => {
      const lines = linesOf(pair);
      const rest = lines.filter((_, at) => at !== left % lines.length);
      for (const one of everything(orderText(...rest)))
        for (const { value } of Object.values(one.values))
          for (const part of typeof value === 'number' ? [value] : Object.values(value))
            expect(Number.isFinite(part), one.what).toBe(true);
    });
  });
});

test('figures outside every range make no figure that rests on them, and never throw', () => {
  const wild = fc.constantFrom('0', '-0.01', '1e9', '999', '-999', '0.001', '40', '100', '181', '7x0', 'x');
  const line = fc.oneof(
    fc.tuple(wild, wild, wild).map(([s, c, a]) => `both ${s} ${c} x ${a}`),
    ...['add', 'pd', 'height', 'inset', 'base-curve', 'blank'].map((word) => wild.map((one) => `${word} ${one}`)),
    ...['thickness centre', 'thickness edge', 'thickness min', 'tested vertex', 'as-worn vertex', 'lens M index'].map(
      (word) => wild.map((one) => `${word} ${one}`),
    ),
    fc.tuple(wild, wild).map(([panto, wrap]) => `as-worn panto ${panto} wrap ${wrap}`),
    fc.tuple(wild, wild, wild, wild).map(([a, b, dbl, ed]) => `frame A ${a} B ${b} DBL ${dbl} ED ${ed}`),
    fc.tuple(wild, wild).map(([one, other]) => `decentre ${one} in ${other} up`),
    wild.map((one) => `design bifocal round ${one}`),
    wild.map((one) => `design office degression ${one} working ${one}`),
  );
  holds(500, pairs, fc.array(line, { minLength: 1, maxLength: 4 }), (pair, lines) => {
    for (const one of everything(orderText(...lines, ...linesOf(pair))))
      for (const { value } of [...Object.values(one.values), ...Object.values(one.inputs)])
        for (const part of typeof value === 'number' ? [value] : Object.values(value))
          expect(Number.isFinite(part), one.what).toBe(true);
  });
});
