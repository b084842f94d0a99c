/** Of all explanations the likeliest, and those that fit as well. */
import type { Explanation } from './explanation';

export interface Told<C> {
  readonly cause: C;
  readonly explanation: Explanation;
  /** Others that fit equally well. */
  readonly tied: readonly C[];
}

/** Explanations whose remainders differ by less than this share of a limit cannot be told apart. */
const ALIKE = 0.25;

/**
 * The explanation that sets most of the failed measures right; of those that set as many right one with evidence before a
 * guess, and then the better fit. What cannot be told apart from it is a tie and comes with it.
 */
export function likeliest<C>(
  found: readonly { readonly cause: C; readonly explanation: Explanation }[],
): readonly Told<C>[] {
  const ranked = found.toSorted(
    (a, b) => rank(b.explanation) - rank(a.explanation) || a.explanation.left - b.explanation.left,
  );
  const [first] = ranked;
  if (!first) return [];
  const ties = ranked.filter(
    ({ explanation }) =>
      rank(explanation) === rank(first.explanation) && explanation.left - first.explanation.left < ALIKE,
  );
  const told = [...new Set(ties.map(({ cause }) => cause))].map((cause) => ({
    cause,
    explanation: (ties.find((one) => one.cause === cause) as (typeof ties)[number]).explanation,
  }));
  return told.map(({ cause, explanation }) => ({
    cause,
    explanation,
    tied: told
      .filter((other) => other.cause !== cause && areOfOneMatter(other.explanation, explanation))
      .map((other) => other.cause),
  }));
}

/** Two slips in different lenses may both have happened; only stories of the same figures are rivals. */
const areOfOneMatter = (a: Explanation, b: Explanation): boolean => a.explains.some((one) => b.explains.includes(one));

/** Halves never make up for a whole measure. */
const rank = ({ explains, weak }: Explanation): number => explains.length - (weak ? 0.5 : 0);
