/**
 * Mounted progressives by every set for mounted pairs. The prism at the mark of a lens is one thing and the place of the
 * mark before the eye another: the lens makes the same prism at its mark wherever that stands. The seed is printed.
 */
import { test } from 'vitest';
import { expectOneVerdict } from '../support/pair-model/expect-one-verdict';
import { MOUNTED, trial, withAdds } from '../support/pair-model/trial';

const SEED = 20261126;
const PAIRS = 600;
const WAYS = 2;

test(`${PAIRS} progressives, seed ${SEED}`, () => {
  const wanted = withAdds(MOUNTED).map((set) => ({ set, kind: 'progressive', supply: 'glazed' }) as const);
  expectOneVerdict(`progressives, seed ${SEED}`, trial(wanted, SEED, PAIRS, WAYS));
});
