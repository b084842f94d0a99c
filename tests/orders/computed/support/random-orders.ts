/** Random orders of a pair, as lines, and the same pair with its eyes changed over. */
import fc from 'fast-check';
import type { Eye } from '../../../../orders';

export { holds, seed } from '../../../grammar/support/random-text';

const quarters = (least: number, most: number) => fc.integer({ min: least * 4, max: most * 4 }).map((n) => n / 4);
const tenths = (least: number, most: number) => fc.integer({ min: least * 10, max: most * 10 }).map((n) => n / 10);

const lens = fc.record({
  sphere: quarters(-8, 8),
  cylinder: quarters(-3, -0.25),
  axis: fc.integer({ min: 1, max: 180 }),
  pd: tenths(29, 35),
  height: tenths(14, 22),
  in: tenths(0, 3),
  up: tenths(0, 3),
});

export type RandomLens = typeof lens extends fc.Arbitrary<infer V> ? V : never;

/** What a pair shares, line by line, so that each line may be left out. */
const shared = fc.record({
  add: fc.constantFrom('add +1.00', 'add +2.25'),
  design: fc.constantFrom(
    'design single-vision',
    'design bifocal flat-top 28',
    'design bifocal round 22',
    'design bifocal full-width',
    'design trifocal flat-top 7x28',
    'design progressive corridor 14',
  ),
  lens: fc.constantFrom('lens resin-1.50', 'lens resin-1.67', 'lens polycarbonate'),
  curve: fc.constantFrom('base-curve 2.00', 'base-curve 4.25', 'base-curve 6.00'),
  frame: fc.constantFrom('frame A 50 B 38 DBL 18 ED 54', 'frame A 52 B 44 DBL 16 ED 58'),
  near: fc.constantFrom('', 'inset 2'),
  tested: fc.constantFrom('tested vertex 12', 'tested vertex 14'),
  worn: fc.constantFrom('as-worn vertex 13 panto 8 wrap 5', 'as-worn vertex 10 panto 4', 'as-worn wrap 15'),
  thickness: fc.constantFrom('', 'thickness centre 2.2', 'thickness edge 1.5', 'thickness min 1.8'),
});

export type Shared = typeof shared extends fc.Arbitrary<infer V> ? V : never;

export interface RandomPair {
  readonly R: RandomLens;
  readonly L: RandomLens;
  readonly shared: Shared;
}

export const pairs: fc.Arbitrary<RandomPair> = fc.record({ R: lens, L: lens, shared });

const dioptres = (value: number): string =>
  value === 0 ? '0.00' : `${value > 0 ? '+' : '-'}${Math.abs(value).toFixed(2)}`;

/** The power in either cylinder form. */
function power({ sphere, cylinder, axis }: RandomLens, form: 'minus' | 'plus'): string {
  const axes = String(form === 'minus' ? axis : axis <= 90 ? axis + 90 : axis - 90).padStart(3, '0');
  return form === 'minus'
    ? `${dioptres(sphere)} ${dioptres(cylinder)} x ${axes}`
    : `${dioptres(sphere + cylinder)} ${dioptres(-cylinder)} x ${axes}`;
}

/** The lines of the order, the powers of both lenses in one cylinder form. */
export function linesOf({ R, L, shared }: RandomPair, form: 'minus' | 'plus' = 'minus'): readonly string[] {
  const own = (eye: Eye, { in: inwards, up }: RandomLens) => [
    `prism ${eye} ${inwards} BI ${up} BU`,
    `decentre ${eye} ${inwards} in ${up} up`,
  ];
  return [
    `R ${power(R, form)}`,
    `L ${power(L, form)}`,
    `pd R ${R.pd} L ${L.pd}`,
    `height R ${R.height} L ${L.height}`,
    ...own('R', R),
    ...own('L', L),
    ...Object.values(shared).filter((line) => line !== ''),
  ];
}

/** The wearer as a mirror shows: each lens before the other eye, its axis turned over. */
export function mirrored({ R, L, shared }: RandomPair): RandomPair {
  const turned = (lens: RandomLens): RandomLens => ({ ...lens, axis: lens.axis === 180 ? 180 : 180 - lens.axis });
  return { R: turned(L), L: turned(R), shared };
}
