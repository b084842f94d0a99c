/**
 * The verdict on a physical pair, worked out from the model alone and the printed tables. Where an account of a set leaves
 * two readings, the one taken is said with the reason.
 */

import { EYES, type Eye } from './lens';
import { addLimit, type Class, printedSet } from './limits';
import { lensPrismChecks } from './oracle-lens-prism';
import { placingChecks } from './oracle-placing';
import { powerChecks } from './oracle-power';
import { hasPoint, isMounted, type Known, type MadeLens, type OrderedLens, type Pair } from './pair';
import { addFromBack } from './writing-adds';

/** One figure against one limit. */
export interface Check {
  readonly of: 'power' | 'axis' | 'add' | 'prism' | 'centres' | 'mm' | 'base';
  readonly what: string;
  /** The size of what is off. */
  readonly off: number;
  /** Null where the set says that it defines none: always inside. Undefined where it has no such limit: not judged. */
  readonly limit: number | null | undefined;
}

export type Verdict = 'accept' | 'reject' | 'incomplete';

export interface Judged {
  readonly verdict: Verdict;
  readonly checks: readonly Check[];
  /** What this way of reading leaves open. */
  readonly missing: readonly string[];
  /** What is read beside the thing itself and held against a limit all the same: an add from the wrong side. */
  readonly beside: readonly Check[];
  /** A power so close to the end of a row that the last digit would choose the row. */
  readonly isOnEdge: boolean;
}

export const classOf = ({ kind }: Pair): Class => (kind === 'progressive' ? 'progressive' : 'single vision');

/** An instrument that shows eighths cannot tell one eighth from 0.12 or 0.13: inside. Common practice, no source. */
const isOneEighth = ({ focimeter }: Pair, { of, off, limit }: Check): boolean =>
  focimeter.step === 0.125 &&
  (of === 'power' || of === 'add') &&
  (limit === 0.12 || limit === 0.13) &&
  Math.abs(off - 0.125) < 1e-6;

export function isInside(pair: Pair, check: Check): boolean {
  const { off, limit } = check;
  return limit === null || (limit !== undefined && off <= limit + 1e-6) || isOneEighth(pair, check);
}

export function oracle(pair: Pair, known: Known): Judged {
  const adds = addChecks(pair);
  const missing = known.surface === 'back' ? adds.flatMap((check) => hiddenByBack(pair, check)) : [];
  const checks: Check[] = [...powerChecks(pair), ...adds, ...baseChecks(pair)];
  let isOnEdge = false;
  if (isMounted(pair)) {
    const placing = placingChecks(pair, known);
    isOnEdge = placing.isOnEdge;
    checks.push(...placing.checks, ...placesOfPoints(pair, known));
    missing.push(...placing.missing);
  }
  checks.push(...lensPrismChecks(pair, known), ...segmentChecks(pair));
  const judged = checks.filter(({ limit }) => limit !== undefined);
  const isHidden = ({ what }: Check): boolean => missing.some((other) => other.startsWith(what));
  const isOut = judged.some((check) => !isHidden(check) && !isInside(pair, check));
  const isOpen = missing.length > 0 || judged.length < checks.length;
  const beside = known.surface === 'back' ? adds.map((check) => asReadFromBack(pair, check)) : [];
  return { verdict: isOut ? 'reject' : isOpen ? 'incomplete' : 'accept', checks, missing, beside, isOnEdge };
}

function addChecks(pair: Pair): AddCheck[] {
  const printed = printedSet(pair.set);
  return EYES.flatMap((eye): AddCheck[] => {
    const [ordered, made] = [pair.ordered[eye], pair.made[eye]];
    if (!hasPoint(pair)) return [];
    const limit = addLimit(printed, classOf(pair), ordered.add);
    return [{ of: 'add', what: `add ${eye}`, off: Math.abs(made.add - ordered.add), limit, eye }];
  });
}

type AddCheck = Check & { readonly eye: Eye };

/**
 * With the back surface on the stop an add shows too strong. It says what the lens has where that makes no difference to
 * the outcome, and nothing where it does.
 */
function hiddenByBack(pair: Pair, check: AddCheck): readonly string[] {
  const isSame = isInside(pair, check) === isInside(pair, asReadFromBack(pair, check));
  return isSame ? [] : [`${check.what}, from its own side`];
}

const asReadFromBack = ({ made, ordered }: Pair, check: AddCheck): Check => ({
  ...check,
  off: Math.abs(addFromBack(made[check.eye]) - ordered[check.eye].add),
});

function baseChecks(pair: Pair): Check[] {
  const limit = printedSet(pair.set).plain.baseCurve;
  if (limit === undefined) return [];
  return EYES.map((eye) => ({
    of: 'base',
    what: `base ${eye}`,
    off: Math.abs(pair.made[eye].base - pair.ordered[eye].base),
    limit,
  }));
}

/**
 * ANSI limits the near PD as a total: “2.5 mm” stands without a word of each eye in the state rule, and its note speaks of
 * symmetry as a look. ISO counts each segment (study cards), and so does New Jersey: “position items” are those of a lens.
 */
export const isNearOfEach = (set: string): boolean => set.startsWith('iso') || set.startsWith('nj');

const apart = (
  pair: Pair,
  eye: Eye,
  figure: keyof OrderedLens & keyof MadeLens & ('height' | 'near' | 'width'),
): number => pair.made[eye][figure] - pair.ordered[eye][figure];

/** A figure that the set limits; what it does not limit is not read either, so that nothing is left unjudged by it. */
const limited = (what: string, off: number, limit: number | undefined): readonly Check[] =>
  limit === undefined ? [] : [{ of: 'mm', what, off: Math.abs(off), limit }];

/** Segments and fitting points: their heights, the difference between these, and their places across. */
function placesOfPoints(pair: Pair, known: Known): readonly Check[] {
  if (!hasPoint(pair)) return [];
  const { plain } = printedSet(pair.set);
  const off = (eye: Eye, figure: 'height' | 'near'): number => apart(pair, eye, figure);
  const isSegment = pair.kind === 'segment';
  const checks = EYES.flatMap((eye) => [
    ...limited(`height ${eye}`, off(eye, 'height'), isSegment ? plain.segmentHeight : plain.fittingHeight),
    ...(isSegment ? [] : limited(`fitting ${eye}`, pair.made[eye].out, plain.fittingHorizontal)),
  ]);
  const difference = isSegment ? plain.segmentHeightDifference : plain.fittingHeightDifference;
  checks.push(...limited('heights', off('R', 'height') - off('L', 'height'), difference));
  if (!isSegment) return checks;
  if (isNearOfEach(pair.set) && known.near === 'each')
    return [...checks, ...EYES.flatMap((eye) => limited(`near ${eye}`, off(eye, 'near'), plain.nearPd))];
  // Of a total read where each counts, all of the error may be in one of them.
  return [...checks, ...limited('near', off('R', 'near') + off('L', 'near'), plain.nearPd)];
}

/** Width and tilt of segments, of lenses not yet glazed as well. */
function segmentChecks(pair: Pair): readonly Check[] {
  if (pair.kind !== 'segment') return [];
  const { plain } = printedSet(pair.set);
  const off = (eye: Eye): number => apart(pair, eye, 'width');
  return [
    ...EYES.flatMap((eye) => [
      ...limited(`width ${eye}`, off(eye), plain.segmentSize),
      ...limited(`tilt ${eye}`, pair.made[eye].tilt, plain.segmentTilt),
    ]),
    ...limited('widths', off('R') - off('L'), plain.segmentSizeDifference),
  ];
}
