/** What a bench would do next with a refused pair, and when nothing is said. */
import { expect, test } from 'vitest';
import { analyse, nextSteps, RULES } from '../../orders';
import { read } from '../support/job';
import { pair } from '../support/judged';

function stepsFor(text: string): readonly string[] {
  const block = analyse(text).blocks.find(({ order }) => order);
  if (!block?.order || !block.evaluation) throw new Error('no order');
  return nextSteps(block.order, block.evaluation, block.findings);
}

const ORDER = ['R -2.00 -0.50 x 090', 'L -3.25 -0.75 x 080', 'pd 62', 'design single-vision', 'supply glazed'];
const PLACED = ['pd 62', 'prism R 0 L 0'];

test('nothing for a pair that is not refused', () => {
  expect(stepsFor(read())).toEqual([]);
  expect(stepsFor(pair(ORDER, PLACED))).toEqual([]);
});

test('nothing when a person has decided, unless no decision covers it', () => {
  const text = pair(ORDER, ['R -2.50 -0.50 x 090', 'L -3.25 -0.75 x 080', ...PLACED]);
  expect(stepsFor(text)).toHaveLength(1);
  expect(stepsFor(`${text}\n    decided remake R by MT`)).toEqual([]);
  expect(stepsFor(`${text}\n    impact failed\n    decided accept by MT "in a hurry"`)).toEqual([
    'Do not dispense this pair. Make new lenses and test them.',
  ]);
});

test.each([
  [
    'exchanged lenses are not remade at once',
    pair(ORDER, ['R -3.25 -0.75 x 080', 'L -2.00 -0.50 x 090', ...PLACED]),
    [/^See which lens is in the right rim/],
  ],
  [
    'one lens is remade and not its partner',
    pair(ORDER, ['R -2.50 -0.50 x 090', 'L -3.25 -0.75 x 080', ...PLACED]),
    [/^Read the R lens again; if the figures stay, remake it\.$/],
  ],
  [
    'both lenses each for itself',
    pair(ORDER, ['R -2.30 -0.50 x 090', 'L -2.80 -0.75 x 080', ...PLACED]),
    [/^Read the R lens again/, /^Read the L lens again/],
  ],
  [
    'a turned lens is turned back',
    pair(ORDER, ['R -2.00 -0.50 x 100', 'L -3.25 -0.75 x 080', ...PLACED]),
    [/^Loosen the rim, turn the R lens back/],
  ],
  [
    'a lens of a low shape is not',
    pair([...ORDER, 'frame A 52 B 34 DBL 18'], ['R -2.00 -0.50 x 100', 'L -3.25 -0.75 x 080', ...PLACED]),
    [/^Remake the R lens at the ordered axis/],
  ],
  [
    'ties are both settled by one more reading',
    pair(ORDER, ['R -2.00 -0.50 x 180', 'L -3.25 -0.75 x 080', ...PLACED]),
    [
      /thin lines first\. If the axis stays across, remake the R lens/,
      /^Read the R lens again, thin lines first, before/,
    ],
  ],
  [
    'what costs a lens comes before what is spaced',
    pair(ORDER, ['R -2.50 -0.50 x 090', 'L -3.25 -0.75 x 080', 'pd 74', 'prism R 0 L 0']),
    [/^Read the R lens again/, /re-space/],
  ],
])('%s', (_, text, expected) => {
  const steps = stepsFor(text);
  expect(steps, steps.join('\n')).toHaveLength(expected.length);
  for (const [at, step] of expected.entries()) expect(steps[at]).toMatch(step);
});

test.each(RULES.filter(({ family }) => family === 'cause').map(({ code }) => code))('%s has its step', (code) => {
  expect(stepOfCode(code)).toMatch(/^\p{Lu}.*\.$/u);
});

/** The step of a cause by itself: an order refused for one figure, with a finding of that code over it. */
function stepOfCode(code: string): string {
  const text = pair(ORDER, ['R -2.50 -0.50 x 090', 'L -3.25 -0.75 x 080', ...PLACED]);
  const block = analyse(text).blocks.find(({ order }) => order);
  const failed = block?.evaluation?.measures.find(({ outcome }) => outcome === 'fail');
  if (!block?.order || !block.evaluation || !failed?.place) throw new Error('nothing fails');
  const steps = nextSteps(block.order, block.evaluation, [
    { code, level: 'info', data: {}, eye: 'R', ...failed.place },
  ]);
  expect(steps).toHaveLength(1);
  return steps[0] as string;
}
