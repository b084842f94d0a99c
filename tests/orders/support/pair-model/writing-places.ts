/** The ways of writing where the lenses of a pair stand. */
import type { Chance } from './chance';
import { byBaseWords, byRing, mm } from './figures';
import { both, centreFor, EYES, type Eye, exactly, outAndUp, plus, prismOf, type Vector, weakest } from './lens';
import { decidedInMillimetres } from './oracle-placing';
import { hasPoint, isMounted, isPlacedByCentres, type Known, type Pair } from './pair';

export type Prism = 'words' | 'ring' | 'beside power' | 'none';
export type Distance = 'pd each' | 'pd whole and each' | 'pd total' | 'centres each' | 'centres total' | 'none';

export interface PlaceWay {
  readonly prism: Prism;
  readonly distance: Distance;
  /** Heights of the centres; those of segments and fitting points are always read. */
  readonly heights: boolean;
}

export type KnownPlaces = Pick<Known, 'across' | 'up'>;

export interface Places {
  readonly known: KnownPlaces;
  readonly rounding: Readonly<Record<'prism' | 'centres', number>>;
  /** Prism that follows the power of its lens on one line. */
  readonly besidePower: ((eye: Eye, step: number) => string) | null;
  readonly lines: (step: number) => readonly string[];
}

const PRISMS: readonly Prism[] = ['words', 'ring', 'beside power'];
const DISTANCES: readonly Distance[] = ['pd each', 'pd whole and each', 'pd total', 'centres each', 'centres total'];

/** Every way that says where such a pair stands; some say less than others, and what they leave open is known. */
export function placeWays(pair: Pair): readonly PlaceWay[] {
  if (!isMounted(pair)) return PRISMS.map((prism) => ({ prism, distance: 'none', heights: false }));
  const distances = DISTANCES.filter((distance) => canBeRead(pair, distance));
  if (!isPlacedByCentres(pair)) return PRISMS.map((prism) => ({ prism, distance: 'pd each', heights: false }));
  const ways: PlaceWay[] = [];
  const hasCentreHeights = !hasPoint(pair);
  if (canPrismTell(pair))
    for (const prism of PRISMS) {
      ways.push({ prism, distance: 'none', heights: false });
      for (const distance of distances) ways.push({ prism, distance, heights: hasCentreHeights });
    }
  for (const distance of distances)
    for (const heights of hasCentreHeights ? [true, true, true, false] : [false])
      ways.push({ prism: 'none', distance, heights });
  return ways;
}

/** Prism moves the bare centres, and the whole of a distance between them does not say which; a weak lens far off has none. */
function canBeRead({ ordered, made }: Pair, distance: Distance): boolean {
  if (distance.startsWith('pd')) return true;
  const prisms = EYES.map((eye) => ordered[eye].prism);
  if (prisms.every(({ right, up }) => right === 0 && up === 0))
    return EYES.every((eye) => weakest(made[eye].power) > 0);
  return (
    distance === 'centres each' &&
    EYES.every((eye) => Math.abs(centreOf(eye, ordered[eye].prism, made[eye].power).right) < 12)
  );
}

const centreOf = (_: Eye, prism: Vector, power: Pair['made']['R']['power']): Vector =>
  prism.right === 0 && prism.up === 0
    ? { right: 0, up: 0 }
    : weakest(power) < 0.5
      ? { right: 99, up: 99 }
      : centreFor(power, prism);

/**
 * Where millimetres decide and a lens has next to no power its centre cannot be found from its prism; where prism decides
 * it need not be.
 */
const canPrismTell = (pair: Pair): boolean =>
  decidedInMillimetres(pair).length === 0 || EYES.every((eye) => weakest(pair.made[eye].power) >= 0.6);

/** Prism of each lens before its eye, with the ordered one: of a mark of its own, or of where it stands. */
const prismRead = (pair: Pair, eye: Eye): Vector => {
  const { power, prism, out, up } = pair.made[eye];
  const made = isMounted(pair) && isPlacedByCentres(pair) ? prismOf(power, outAndUp(eye, out, up)) : prism;
  return plus(pair.ordered[eye].prism, made);
};

export function placesOf(pair: Pair, way: PlaceWay, near: Known['near'], chance: Chance): Places {
  const { ordered, made } = pair;
  const isByCentres = isMounted(pair) && isPlacedByCentres(pair);
  const prisms = both((eye) => prismRead(pair, eye));
  const isRing = way.prism === 'ring';
  const shown = (eye: Eye, step: number): Vector => {
    const by = eye === 'R' ? step * 0.01 : -step * 0.01;
    return { right: exactly(prisms[eye].right + by), up: exactly(prisms[eye].up - by) };
  };
  const place = pair.kind === 'progressive' && chance.is(0.5) ? ' at prism-point' : '';
  const text = (eye: Eye, step: number): string => {
    const prism = shown(eye, step);
    return isRing ? byRing(eye, prism) : byBaseWords(eye, prism, chance);
  };
  const out = (eye: Eye, step: number): number => exactly(ordered[eye].out + made[eye].out + step * 0.1);
  const centre = (eye: Eye, step: number): number => {
    const { right } = centreOf(eye, ordered[eye].prism, made[eye].power);
    return out(eye, step) + (eye === 'R' ? -right : right);
  };
  const each = (of: (eye: Eye) => string): string => EYES.map((eye) => `${eye} ${of(eye)}`).join(' ');
  // A pair for near may be read by either word, and is read again by the same.
  const word = pair.kind === 'near' ? chance.of(['pd near', 'near-pd', 'pd']) : 'pd';
  const lines = (step: number): string[] => {
    const list: string[] = [];
    if (way.prism === 'words' || isRing) list.push(`prism ${each((eye) => text(eye, step))}${place}`);
    list.push(...distanceLines(way, step, { out, centre }, word));
    if (pair.kind === 'segment' && isMounted(pair)) list.push(nearLine(pair, near, step));
    if (hasPoint(pair) && isMounted(pair)) list.push(`height ${each((eye) => mm(made[eye].height + step * 0.1))}`);
    else if (way.heights) list.push(`height ${each((eye) => mm(ordered[eye].height + made[eye].up + step * 0.1))}`);
    return list;
  };
  return {
    known: knownBy(pair, way),
    rounding: roundingOf(pair, way, isByCentres),
    besidePower:
      way.prism === 'beside power' ? (eye, step) => ` prism ${byBaseWords(eye, shown(eye, step), chance)}` : null,
    lines,
  };
}

/** Prism tells of each lens; so do places of each, and of heights where they are ordered, or else no more than the difference. */
function knownBy(pair: Pair, { prism, distance, heights }: PlaceWay): KnownPlaces {
  if (prism !== 'none' || !isMounted(pair)) return { across: 'each', up: 'each' };
  return {
    across: distance.endsWith('each') ? 'each' : distance.endsWith('total') ? 'total' : 'none',
    up: !heights ? 'none' : pair.hasHeights ? 'each' : 'difference',
  };
}

function roundingOf({ made }: Pair, { prism, distance }: PlaceWay, isByCentres: boolean): Places['rounding'] {
  const isPrism = prism !== 'none';
  // Two lenses, two parts, and the angle of a ring to a tenth of a degree.
  const ofPrism = isPrism ? 0.025 : 0.002;
  const ofCentres = distance === 'centres each' ? 0.012 : 1e-4;
  const worst = Math.min(...EYES.map((eye) => weakest(made[eye].power)));
  return {
    prism: Math.max(ofPrism, ofCentres),
    centres: isPrism && isByCentres ? Math.max(ofCentres, (0.02 * 10) / worst) : ofCentres,
  };
}

function distanceLines(
  { distance }: PlaceWay,
  step: number,
  of: { readonly out: (eye: Eye, step: number) => number; readonly centre: (eye: Eye, step: number) => number },
  word: string,
): string[] {
  const each = (which: 'out' | 'centre'): string => EYES.map((eye) => `${eye} ${mm(of[which](eye, step))}`).join(' ');
  const total = (which: 'out' | 'centre'): string => mm(of[which]('R', step) + of[which]('L', step));
  switch (distance) {
    case 'none':
      return [];
    case 'pd each':
      return [`${word} ${each('out')}`];
    case 'pd whole and each':
      return [`${word} ${total('out')} ${each('out')}`];
    case 'pd total':
      return [`${word} ${total('out')}`];
    case 'centres each':
      return [`optical-centres ${each('centre')}`];
    case 'centres total':
      return [`optical-centres ${total('centre')}`];
  }
}

function nearLine({ made }: Pair, near: Known['near'], step: number): string {
  const of = (eye: Eye): number => exactly(made[eye].near + step * 0.1);
  return near === 'total' ? `near-pd ${mm(of('R') + of('L'))}` : `near-pd R ${mm(of('R'))} L ${mm(of('L'))}`;
}
