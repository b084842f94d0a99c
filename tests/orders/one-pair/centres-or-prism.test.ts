/**
 * Weak single-vision pairs with their centres out of place, each written once as prism and once as optical centres with
 * heights. An oracle takes the matrix of each lens, and both ways must come to what it says. The seed is printed.
 */
import { expect, test } from 'vitest';
import { analyse } from '../../../orders';
import { type Chance, chanceOf } from '../support/pair-model/chance';
import { byBaseWords, mm, powerText } from '../support/pair-model/figures';
import {
  along,
  type Both,
  both,
  EYES,
  type Eye,
  inwards,
  outAndUp,
  prismOf,
  type Toric,
} from '../support/pair-model/lens';
import { pairRow, printedSet } from '../support/pair-model/limits';

const SEED = 20261124;
const PAIRS = 550;
const SET = 'z80.1-2015';

interface Weak {
  readonly power: Toric;
  readonly out: number;
  readonly up: number;
}

function anyLens(chance: Chance): Weak {
  const [one, other] = [chance.step(-2.5, 2.5, 0.25), chance.step(-2.5, 2.5, 0.25)];
  const [sphere, second] = one >= other ? [one, other] : [other, one];
  const power = { sphere, cylinder: second - sphere, axis: second === sphere ? 180 : chance.step(1, 180, 1) };
  return { power, out: chance.step(-4, 4, 0.5), up: chance.step(-4, 4, 0.5) };
}

/** How far the limits are passed by the prism of the pair, prism dioptres: above 0 outside. */
function beyond(pair: Both<Weak>): number {
  const prisms = both((eye) => prismOf(pair[eye].power, outAndUp(eye, pair[eye].out, pair[eye].up)));
  const limit = (direction: 'horizontal' | 'vertical'): number => {
    const power = Math.max(...EYES.map((eye) => along(pair[eye].power, direction)));
    // Such lenses are all in the rows of prism.
    return pairRow(printedSet(SET), 'single vision', direction, power, 0)?.prism as number;
  };
  const horizontal = inwards('R', prisms.R) + inwards('L', prisms.L);
  const vertical = prisms.R.up - prisms.L.up;
  return Math.max(Math.abs(horizontal) - limit('horizontal'), Math.abs(vertical) - limit('vertical'));
}

function textOf(pair: Both<Weak>, as: 'prism' | 'centres', name: string, chance: Chance): string {
  const powers = EYES.map((eye) => `  ${eye} ${powerText(pair[eye].power, 'minus', 0, chance)}`);
  const each = (of: (eye: Eye) => string): string => EYES.map((eye) => `${eye} ${of(eye)}`).join(' ');
  const prism = (eye: Eye): string =>
    byBaseWords(eye, prismOf(pair[eye].power, outAndUp(eye, pair[eye].out, pair[eye].up)), chance);
  const places =
    as === 'prism'
      ? [`  prism ${each(prism)}`]
      : [
          `  optical-centres ${each((eye) => mm(31 + pair[eye].out))}`,
          `  height ${each((eye) => mm(18 + pair[eye].up))}`,
        ];
  return [
    `order ${name}`,
    ...powers,
    '  pd R 31 L 31',
    '  height 18',
    '  design single-vision',
    '  supply glazed',
    '  reading 2026-11-24',
    ...powers,
    ...places,
  ].join('\n');
}

test(`${PAIRS} weak pairs as prism and as centres, seed ${SEED}`, () => {
  const chance = chanceOf(SEED);
  const pairs: Both<Weak>[] = [];
  let dropped = 0;
  while (pairs.length < PAIRS) {
    const pair = both(() => anyLens(chance));
    // Prism is typed to the hundredth: two lenses, so one hundredth of the pair.
    if (Math.abs(beyond(pair)) < 0.0105) dropped++;
    else pairs.push(pair);
  }
  const ways = ['prism', 'centres'] as const;
  const texts = pairs.flatMap((pair, at) => ways.map((way) => textOf(pair, way, `P-${at}-${way}`, chance)));
  const verdicts = analyse(`standard ${SET}\n${texts.join('\n')}`).blocks.flatMap(({ evaluation }) =>
    evaluation ? [evaluation.verdict] : [],
  );
  const wrong = pairs.flatMap((pair, at) => {
    const expected = beyond(pair) > 0 ? 'reject' : 'accept';
    return ways.flatMap((way, number) =>
      verdicts[2 * at + number] === expected ? [] : [`${expected} ${way}: ${texts[2 * at + number]}`],
    );
  });
  const rejects = pairs.filter((pair) => beyond(pair) > 0).length;
  console.info(`${PAIRS} pairs, ${rejects} outside, ${dropped} too near to a limit, ${wrong.length} verdicts wrong`);
  expect(wrong.slice(0, 5)).toEqual([]);
  expect(wrong).toHaveLength(0);
  expect(verdicts).toHaveLength(2 * PAIRS);
  expect(dropped / (dropped + PAIRS)).toBeLessThan(0.15);
  expect(Math.min(rejects, PAIRS - rejects)).toBeGreaterThan(PAIRS / 10);
});
