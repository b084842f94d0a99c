/** Pairs by chance: ordered as people wear them, made as a bench meets them, from right to far off. */
import type { Chance } from './chance';
import { type Both, both, type Eye, exactly, NOTHING, type Toric, type Vector } from './lens';
import type { Focimeter, Kind, MadeLens, OrderedLens, Pair } from './pair';

export interface Wanted {
  readonly set: string;
  readonly kind: Kind;
  readonly supply: Pair['supply'];
}

const ZEROS: Readonly<Record<Focimeter['step'], readonly number[]>> = {
  0.01: [0, 0, 0.03, -0.06],
  0.125: [0, 0, 0.125, -0.125],
};

export function anyPair({ set, kind, supply }: Wanted, chance: Chance): Pair {
  const step = chance.of([0.01, 0.01, 0.125] as const);
  const focimeter: Focimeter = {
    step,
    zero: chance.of(ZEROS[step]),
    zeroOf: chance.of(['instrument', 'day'] as const),
  };
  const hasHeights = kind === 'segment' || kind === 'progressive' || chance.is(0.7);
  const ordered = anyOrder(kind, hasHeights, chance);
  const isRight = chance.is(0.15);
  const made = both((eye) => (isRight ? asOrdered(ordered[eye]) : anyMade(ordered[eye], focimeter, chance)));
  return {
    set,
    kind,
    supply,
    ordered,
    made: isRight ? made : inTheMain(made, ordered, chance),
    hasHeights,
    noThinning: kind === 'progressive' && chance.is(0.3),
    focimeter,
  };
}

function anyOrder(kind: Kind, hasHeights: boolean, chance: Chance): Both<OrderedLens> {
  const sphere = chance.step(-7, 6, 0.25);
  const isAlike = chance.is(0.55);
  const hasPrism = chance.is(kind === 'progressive' ? 0.15 : 0.25);
  const isInHalves = chance.is(0.5);
  const [half, level, add] = [chance.step(29, 34, 0.5), chance.step(16, 22, 0.5), chance.step(1, 3, 0.25)];
  const [turnedIn, base] = [chance.of([1, 1.5, 2]), chance.of([2, 4, 6])];
  return both((): OrderedLens => {
    const own = isAlike ? sphere + chance.step(-0.75, 0.75, 0.25) : chance.step(-7, 6, 0.25);
    const cylinder = chance.is(0.3) ? 0 : -chance.step(0.25, 3, 0.25);
    const power = { sphere: own, cylinder, axis: cylinder === 0 ? 180 : chance.step(1, 180, 1) };
    const out = isInHalves ? half : half + chance.step(-1, 1, 0.5);
    return {
      power,
      // A lens with a meridian of no power has no place where a prism comes of it.
      prism: hasPrism && chance.is(0.8) ? anyPrism(chance) : NOTHING,
      out,
      // Where no heights are ordered both centres are to stand equally high.
      height: !hasHeights || chance.is(0.7) ? level : level + chance.step(-1, 1, 0.5),
      add: kind === 'single vision' ? 0 : add,
      near: out - turnedIn,
      width: 28,
      base,
    };
  });
}

const anyPrism = (chance: Chance): Vector =>
  chance.of([
    { right: chance.of([-1, 1]) * chance.step(0.5, 4, 0.25), up: 0 },
    { right: 0, up: chance.of([-1, 1]) * chance.step(0.5, 3, 0.25) },
    { right: chance.of([-1, 1]) * chance.step(0.5, 2.5, 0.25), up: chance.of([-1, 1]) * chance.step(0.5, 2, 0.25) },
  ]);

export const asOrdered = ({ power, add, height, near, width, base }: OrderedLens): MadeLens => ({
  power,
  out: 0,
  up: 0,
  prism: NOTHING,
  add,
  height,
  near,
  width,
  tilt: 0,
  base,
});

/** Off in everything by a little, or by more than most limits. */
function anyMade(ordered: OrderedLens, focimeter: Focimeter, chance: Chance): MadeLens {
  const far = chance.of([0.4, 1, 1, 3]);
  const mm = (most: number): number => chance.step(-Math.round(most * far * 10) / 10, most * far, 0.1);
  const prism = (): number => chance.step(-Math.round(25 * far) / 100, 0.25 * far, 0.01);
  return {
    power: anyPower(ordered.power, focimeter, chance),
    out: mm(1.2),
    up: mm(0.6),
    prism: { right: prism(), up: prism() },
    add:
      ordered.add +
      (focimeter.step === 0.125 ? chance.of([0, 0, 0.125, -0.125, 0.25]) : chance.step(-0.15, 0.15, 0.01)),
    height: ordered.height + mm(0.5),
    near: ordered.near + mm(0.8),
    width: ordered.width + chance.of([0, 0, 0, 0.2, -0.3, 0.4, -0.5, 0.6]),
    tilt: chance.of([0, 0, 0, 1, 2, 3]),
    base: ordered.base + chance.of([0, 0, 0, 0.12, -0.25, 0.5, 1]),
  };
}

function anyPower(ordered: Toric, { step }: Focimeter, chance: Chance): Toric {
  const by = (): number => (step === 0.125 ? chance.of([0, 0, 0.125, -0.125]) : chance.step(-0.14, 0.14, 0.01));
  const sphere = exactly(ordered.sphere + by());
  if (ordered.cylinder === 0)
    return chance.is(0.8) ? { ...ordered, sphere } : { sphere, cylinder: step === 0.125 ? -0.125 : -0.06, axis: 37 };
  const least = step === 0.125 ? -0.125 : -0.05;
  const cylinder = exactly(Math.min(ordered.cylinder + by(), least));
  const turn = chance.step(-4, 4, 1);
  return { sphere, cylinder, axis: ((ordered.axis + turn + 179) % 180) + 1 };
}

/** Most pairs are off in one or two things only, so that these decide. */
function inTheMain(made: Both<MadeLens>, ordered: Both<OrderedLens>, chance: Chance): Both<MadeLens> {
  const isOff = (share: number): boolean => chance.is(share);
  const [power, places, ground, add, points, look] = [0.3, 0.7, 0.7, 0.3, 0.3, 0.15].map(isOff);
  return both((eye: Eye) => {
    const [own, right] = [made[eye], asOrdered(ordered[eye])];
    return {
      power: power ? own.power : right.power,
      out: places ? own.out : 0,
      up: places ? own.up : 0,
      prism: ground ? own.prism : NOTHING,
      add: add ? own.add : right.add,
      height: points ? own.height : right.height,
      near: points ? own.near : right.near,
      width: look ? own.width : right.width,
      tilt: look ? own.tilt : 0,
      base: look ? own.base : right.base,
    };
  });
}
