/**
 * Mounted single-vision pairs, for far and for near, by every set for mounted pairs: written in several ways each, and all
 * of them get the verdict that the model alone gives. The seed is printed.
 */
import { test } from 'vitest';
import { expectOneVerdict } from '../support/pair-model/expect-one-verdict';
import { MOUNTED, trial } from '../support/pair-model/trial';

const SEED = 20261124;
const WAYS = 2;

test.each([
  ['single vision', 700, SEED],
  ['near', 300, SEED + 1],
] as const)('%s: %i pairs, seed %i', (kind, pairs, seed) => {
  const wanted = MOUNTED.map((set) => ({ set, kind, supply: 'glazed' as const }));
  expectOneVerdict(`${kind}, seed ${seed}`, trial(wanted, seed, pairs, WAYS));
});
