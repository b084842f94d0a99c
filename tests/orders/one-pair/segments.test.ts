/**
 * Mounted pairs with segments by every set for mounted pairs: centres, segments and adds written in several ways each, and
 * all of them get the verdict that the model alone gives. New Jersey limits no add, so that no such pair is accepted by it;
 * it comes up more seldom. The seed is printed.
 */
import { test } from 'vitest';
import { expectOneVerdict } from '../support/pair-model/expect-one-verdict';
import { MOUNTED, trial, withAdds } from '../support/pair-model/trial';

const SEED = 20261125;
const PAIRS = 700;
const WAYS = 2;

test(`${PAIRS} pairs with segments, seed ${SEED}`, () => {
  const wanted = withAdds(MOUNTED).map((set) => ({ set, kind: 'segment', supply: 'glazed' }) as const);
  expectOneVerdict(`segments, seed ${SEED}`, trial(wanted, SEED, PAIRS, WAYS));
});
