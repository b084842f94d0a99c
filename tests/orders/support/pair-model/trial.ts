/** Pairs in several ways of writing against the oracle, many in one file, and what came out otherwise. */
import { analyse } from '../../../../orders';
import { type Chance, chanceOf } from './chance';
import { printedSet } from './limits';
import { isInside, type Judged, oracle } from './oracle';
import type { Pair } from './pair';
import { anyPair, type Wanted } from './random-pairs';
import { fileOf, type Way, type Written, wayOf, written } from './writing';

export interface Outcome {
  readonly pair: Pair;
  readonly written: Written;
  readonly judged: Judged;
  readonly verdict: string;
  /** What keeps the acceptance from being plain. */
  readonly reservations: readonly string[];
  readonly unresolved: readonly string[];
}

export interface Trial {
  readonly outcomes: readonly Outcome[];
  /** Ways left out because a figure lay so near a limit that its own rounding would decide. */
  readonly dropped: number;
}

/** The sets whose scope has glazed pairs. */
export const MOUNTED: readonly string[] = ['z80.1-2015', 'z80.1-2010', 'z80.1-1999', 'iso-21987-2017', 'nj-13-35-5.2'];

/** Twice each set that limits adds, and once those that do not: by these no pair with an add is accepted. */
export const withAdds = (sets: readonly string[]): readonly string[] =>
  sets.flatMap((set) => (printedSet(set).add.length > 0 ? [set, set] : [set]));

/** So many pairs, each in so many ways. */
export function trial(wanted: readonly Wanted[], seed: number, pairs: number, ways: number): Trial {
  const chance = chanceOf(seed);
  const made = Array.from({ length: pairs }, (_, at) => anyPair(wanted[at % wanted.length] as Wanted, chance));
  return trialOf(made, () => Array.from({ length: ways }, () => null), chance);
}

/** @param waysOf null for a way by chance */
export function trialOf(
  pairs: readonly Pair[],
  waysOf: (pair: Pair) => readonly (Way | null)[],
  chance: Chance,
): Trial {
  const all: { pair: Pair; written: Written; judged: Judged }[] = [];
  let dropped = 0;
  for (const [at, pair] of pairs.entries()) {
    for (const [number, way] of waysOf(pair).entries()) {
      const one = written(pair, way ?? wayOf(pair, chance), `P-${at}.${number}`, chance);
      const judged = oracle(pair, one.known);
      if (isUndecided(pair, one, judged)) dropped++;
      else all.push({ pair, written: one, judged });
    }
  }
  const text = fileOf(
    pairs,
    all.map((one) => one.written),
  );
  const evaluations = analyse(text).blocks.flatMap(({ evaluation }) => (evaluation ? [evaluation] : []));
  if (evaluations.length !== all.length) throw new Error(`${all.length} orders, ${evaluations.length} evaluations`);
  const outcomes = all.map((one, index): Outcome => {
    const { verdict, reservations, unresolved } = evaluations[index] as (typeof evaluations)[number];
    return { ...one, verdict, reservations, unresolved };
  });
  return { outcomes, dropped };
}

/** Whether rounding of what was typed could turn the outcome of a check. */
const isUndecided = (pair: Pair, { rounding }: Written, { checks, beside, isOnEdge }: Judged): boolean =>
  isOnEdge ||
  [...checks, ...beside].some((check) => {
    const { of, off, limit } = check;
    if (limit === null || limit === undefined || of === 'axis' || of === 'base') return false;
    const by = rounding[of];
    return isInside(pair, { ...check, off: Math.max(0, off - by) }) !== isInside(pair, { ...check, off: off + by });
  });

export const wrongOnes = ({ outcomes }: Trial): readonly Outcome[] =>
  outcomes.filter(({ judged, verdict }) => verdict !== judged.verdict);

/** An outcome as a person would want to see it: the pair in short, what it is by the model, and the text. */
export function inWords({ pair, written: one, judged, verdict, reservations, unresolved }: Outcome): string {
  const worst = judged.checks
    .filter((check) => check.limit !== undefined && !isInside(pair, check))
    .map(({ what, off, limit }) => `${what} ${off.toFixed(3)} of ${limit}`);
  return [
    `${verdict} ${[...reservations, ...unresolved].join()}, by the model ${judged.verdict}: ${[...worst, ...judged.missing.map((what) => `${what} not read`)].join('; ') || 'all inside'}`,
    ...one.lines,
  ].join('\n  ');
}
