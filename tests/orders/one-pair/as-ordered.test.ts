/**
 * Everyday pairs made exactly as ordered, in every way of writing that tells all of them: each is a plain accept, without a
 * word from the bench. The seed is that of what falls by chance besides, such as which spelling of an eighth.
 */
import { expect, test } from 'vitest';
import { chanceOf } from '../support/pair-model/chance';
import { POWER_FORMS } from '../support/pair-model/figures';
import { type Both, both, NOTHING, type Toric, type Vector } from '../support/pair-model/lens';
import type { Focimeter, Kind, OrderedLens, Pair } from '../support/pair-model/pair';
import { asOrdered } from '../support/pair-model/random-pairs';
import { inWords, trialOf } from '../support/pair-model/trial';
import type { Way } from '../support/pair-model/writing';
import { addWays } from '../support/pair-model/writing-adds';
import { placeWays } from '../support/pair-model/writing-places';

const SEED = 20261128;

const FINE: Focimeter = { step: 0.01, zero: 0.03, zeroOf: 'instrument' };
const DRUM: Focimeter = { step: 0.125, zero: 0, zeroOf: 'instrument' };

function everyday(set: string, kind: Kind, powers: Both<Toric>, focimeter: Focimeter, prism = NOTHING): Pair {
  const ordered = both((eye): OrderedLens => {
    const inward: Vector = { right: eye === 'R' ? prism.right : -prism.right, up: 0 };
    const add = kind === 'single vision' ? 0 : 2;
    const [out, near] = kind === 'near' ? [30, 30] : [31.5, 30];
    return { power: powers[eye], prism: inward, out, height: 20, add, near, width: 28, base: 4 };
  });
  const made = both((eye) => asOrdered(ordered[eye]));
  return { set, kind, supply: 'glazed', ordered, made, hasHeights: true, noThinning: false, focimeter };
}

const lens = (sphere: number, cylinder = 0, axis = 180): Toric => ({ sphere, cylinder, axis });

const WEAK = { R: lens(-2.5, -0.75, 22), L: lens(-2.25, -1, 168) };
const STRONG = { R: lens(-4.5, -0.75, 22), L: lens(-4.25, -1, 168) };
const PLUS = { R: lens(2.25), L: lens(2.5, -0.5, 90) };
const EIGHTHS = { R: lens(-2.625, -0.625, 22), L: lens(-2.375, -0.875, 168) };

const PAIRS: readonly Pair[] = [
  everyday('z80.1-2015', 'single vision', WEAK, FINE),
  everyday('iso-21987-2017', 'single vision', STRONG, DRUM),
  everyday('z80.1-2010', 'single vision', PLUS, FINE, { right: 2, up: 0 }),
  everyday('nj-13-35-5.2', 'single vision', EIGHTHS, DRUM),
  everyday('z80.1-1999', 'near', PLUS, DRUM),
  everyday('z80.1-2015', 'segment', STRONG, FINE),
  everyday('iso-21987-2017', 'segment', PLUS, DRUM),
  everyday('z80.1-2015', 'progressive', WEAK, FINE),
  everyday('iso-21987-2017', 'progressive', STRONG, DRUM),
];

/**
 * All forms of the power with all ways of the places; the rest goes round with them. A whole distance alone is left out:
 * where the order states one for each eye, it is asked about.
 */
function waysOf(pair: Pair): readonly Way[] {
  const places = placeWays(pair).filter(
    ({ prism, distance, heights }) =>
      prism !== 'none' || (distance !== 'none' && !distance.endsWith('total') && heights),
  );
  const adds = addWays(pair).filter((way) => way !== 'drum, back surface');
  return POWER_FORMS.flatMap((power, first) =>
    places.map((place, second): Way => {
      const at = first + second;
      return {
        power,
        place,
        add: adds[at % adds.length] ?? 'none',
        near: at % 2 === 0 ? 'each' : 'total',
        isCorrected: at % 3 === 0,
        times: ([1, 2, 3] as const)[at % 3] ?? 1,
        isNamedByLine: at % 5 === 0,
        isSplit: at % 4 === 0,
      };
    }),
  );
}

test(`exactly as ordered is a plain accept in every way, seed ${SEED}`, () => {
  const { outcomes, dropped } = trialOf(PAIRS, waysOf, chanceOf(SEED));
  const wrong = outcomes.filter(
    ({ verdict, judged, reservations }) =>
      verdict !== 'accept' || judged.verdict !== 'accept' || reservations.length > 0,
  );
  console.info(`${outcomes.length} ways of ${PAIRS.length} pairs, ${wrong.length} no plain accept`);
  expect(wrong.slice(0, 3).map(inWords)).toEqual([]);
  expect(wrong).toHaveLength(0);
  expect(dropped).toBe(0);
  expect(outcomes.length).toBeGreaterThan(PAIRS.length * 30);
});
