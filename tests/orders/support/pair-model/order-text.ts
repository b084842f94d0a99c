/** The order of a pair as text, in any of the ways an order has. */
import type { Chance } from './chance';
import { byBaseWords, byRing, dioptres, mm, ORDER_FORMS, powerText } from './figures';
import { type Both, EYES, type Eye, type Toric } from './lens';
import { printedSet } from './limits';
import { isNearOfEach } from './oracle';
import { isMounted, type Pair } from './pair';

const DESIGNS: Readonly<Record<Pair['kind'], string>> = {
  'single vision': 'design single-vision',
  near: 'design single-vision near',
  segment: 'design bifocal flat-top 28',
  progressive: 'design progressive corridor 11',
};

/** Thickness of each lens at its reference point, millimetres, and the index of its material. */
export const BODY = { thickness: 2.4, index: 1.498, material: 'resin-1.50' } as const;

/** Head of a file that all pairs of a set of instruments share. */
export const instruments = (pairs: readonly Pair[]): readonly string[] => {
  const known = new Map(pairs.map((pair) => [instrumentName(pair), pair.focimeter]));
  return [...known].flatMap(([name, { step, zero, zeroOf }]) => [
    `instrument ${name}`,
    `  kind ${step === 0.125 ? 'manual' : 'digital'} focimeter`,
    `  reads-to ${step}`,
    '  calibrated 2026-05-14 due 2027-05-14',
    ...(zeroOf === 'instrument' && zero !== 0 ? [`  zero ${signed(zero)}`] : []),
  ]);
};

export const instrumentName = ({ focimeter: { step, zero, zeroOf } }: Pair): string =>
  `F-${step * 1000}-${zeroOf === 'instrument' ? Math.round(zero * 1000) + 500 : 'day'}`;

export const signed = (value: number): string => `${value < 0 ? '-' : '+'}${Math.abs(value)}`;

/** The lines of the order; figures alike before both eyes are written once or twice as it falls. */
export function orderLines(pair: Pair, name: string, chance: Chance): string[] {
  const { kind, ordered, set } = pair;
  const hasAdd = kind !== 'single vision';
  const { plain } = printedSet(set);
  const form = chance.of(ORDER_FORMS);
  const figure = (value: number): string => dioptres(value, chance);
  const lines = [
    `order ${name}`,
    // Indented, since one at the margin would speak for the whole file.
    `  standard ${set}`,
    ...EYES.map((eye) => `${eye} ${powerText(written(pair, eye), form, 0, chance)}`),
    ...(hasAdd ? [`add ${eachOrBoth(ordered, ({ add }) => figure(add), chance)}`] : []),
    DESIGNS[kind],
    `lens ${BODY.material}`,
    // What a set does not limit would be read and left unjudged.
    ...(plain.baseCurve ? [`base-curve ${eachOrBoth(ordered, ({ base }) => figure(base).slice(1), chance)}`] : []),
    ...(plain.centreThickness ? [`thickness centre ${BODY.thickness}`] : []),
  ];
  if (EYES.some((eye) => ordered[eye].prism.right !== 0 || ordered[eye].prism.up !== 0)) {
    // An order is exact, and so is an angle only along the two directions.
    const isStraight = EYES.every((eye) => ordered[eye].prism.right === 0 || ordered[eye].prism.up === 0);
    const way = isStraight ? chance.of([byBaseWords, byRing]) : byBaseWords;
    lines.push(`prism ${EYES.map((eye) => `${eye} ${way(eye, ordered[eye].prism, chance)}`).join(' ')}`);
  }
  if (pair.noThinning) lines.push('thinning none');
  if (!isMounted(pair)) return [...lines, `supply ${pair.supply}`];
  lines.push(...placeLines(pair, chance), 'frame A 52 B 36 DBL 18 ED 55', 'tested vertex 12', 'supply glazed');
  return lines;
}

/** The power as the order writes it: of a pair for near that for far, to which the add comes. */
function written({ kind, ordered }: Pair, eye: Eye): Toric {
  const { power, add } = ordered[eye];
  return kind === 'near' ? { ...power, sphere: power.sphere - add } : power;
}

function placeLines({ kind, ordered, hasHeights, set }: Pair, chance: Chance): string[] {
  const [far, near] = [(of: Eye) => ordered[of].out, (of: Eye) => ordered[of].near];
  // A pair for near stands by its near distance, and the one for far is a little wider.
  const distances =
    kind === 'near'
      ? `pd ${distance((eye) => far(eye) + 1.5, chance, 0.5)} near ${distance(far, chance, 0.5)}`
      : `pd ${distance(far, chance, kind === 'progressive' ? 0 : 0.5)}${kind === 'segment' ? ` near ${distance(near, chance, isNearOfEach(set) ? 0 : 0.3)}` : ''}`;
  const heights = hasHeights ? [`height ${eachOrBoth(ordered, ({ height }) => mm(height), chance)}`] : [];
  return [distances, ...heights];
}

/** By halves, or as a whole where both halves are alike and it so falls. */
function distance(of: (eye: Eye) => number, chance: Chance, share: number): string {
  const isAlike = of('R') === of('L');
  if (isAlike && chance.is(share)) return mm(of('R') + of('L'));
  return `R ${mm(of('R'))} L ${mm(of('L'))}`;
}

function eachOrBoth<T>(of: Both<T>, text: (one: T) => string, chance: Chance): string {
  const [right, left] = [text(of.R), text(of.L)];
  return right === left && chance.is(0.5) ? right : `R ${right} L ${left}`;
}
