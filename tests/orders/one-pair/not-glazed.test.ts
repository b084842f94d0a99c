/**
 * Lenses that are not glazed, uncut and edged, by every set that speaks of them: power, add, and prism of each lens. The
 * 1999 edition limits no prism of a lens by itself, so it is left out here. The seed is printed.
 */
import { test } from 'vitest';
import { expectOneVerdict } from '../support/pair-model/expect-one-verdict';
import type { Kind, Pair } from '../support/pair-model/pair';
import { trial } from '../support/pair-model/trial';

const SEED = 20261127;
const PAIRS = 600;
const WAYS = 2;

const SETS: readonly (readonly [set: string, supply: Pair['supply']])[] = [
  ['iso-8980-2017', 'uncut'],
  ['iso-8980-2004', 'uncut'],
  ['z80.1-2015', 'uncut'],
  ['z80.1-2010', 'uncut'],
  ['z80.1-2015', 'edged'],
  ['z80.1-2010', 'edged'],
];
const KINDS: readonly Kind[] = ['single vision', 'segment', 'progressive'];

test(`${PAIRS} pairs not glazed, seed ${SEED}`, () => {
  const wanted = SETS.flatMap(([set, supply]) => KINDS.map((kind) => ({ set, supply, kind })));
  expectOneVerdict(`not glazed, seed ${SEED}`, trial(wanted, SEED, PAIRS, WAYS));
});
