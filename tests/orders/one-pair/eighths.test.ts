/**
 * One lens on a drum that shows eighths, one eighth off and so inside: `.12`, `.13` and `.125` are the same mark wherever
 * they stand, in either position of the drum, in a meridian and in the zero. (Common practice, no source.)
 */
import { expect, test } from 'vitest';
import { judged, pair } from '../../support/judged';

const HEAD = ['standard iso-21987-2017', 'instrument FOC-A', '  kind manual focimeter', '  reads-to 0.125'];
const ORDER = ['R -3.00 -0.50 x 053', 'L -3.00', 'pd 62', 'design single-vision', 'supply glazed'];
const PLACED = ['pd 62', 'prism R 0 L 0'];

/** What is off in the right lens, dioptres: both meridians by an eighth, the cylinder not at all. */
function deviations(reading: readonly string[]): readonly (number | null)[] {
  const text = pair(ORDER, [...reading, ...PLACED], HEAD).replace(
    'reading 2026-11-24',
    'reading 2026-11-24 with FOC-A',
  );
  const { measures, verdict } = judged(text);
  expect(verdict, text).toBe('accept');
  return measures
    .filter(({ eye, quantity }) => eye === 'R' && (quantity === 'power' || quantity === 'cylinder'))
    .map(({ deviation }) => deviation);
}

const FIRST = ['-3.12', '-3.13', '-3.125'];
const SECOND = ['-3.62', '-3.63', '-3.625'];
const spellings = FIRST.flatMap((first) => SECOND.map((second) => [first, second] as const));

test.each(spellings)('%s and %s are two marks, half a dioptre apart', (first, second) => {
  for (const line of [
    `R lines ${first} / ${second} x 053`,
    `R lines ${second} / ${first} x 143`,
    `R lines wide ${second} thin ${first} x 053`,
    `R lines thin ${second} wide ${first} x 143`,
    `R ${first} @ 053 / ${second} @ 143`,
    `R ${second} @ 143 / ${first} @ 053`,
    `R ${first} -0.50 x 053`,
    `R ${second} +0.50 x 143`,
  ])
    expect(deviations([line, 'L -3.00']), line).toEqual([-0.125, -0.125, 0]);
});

test.each(['+0.12', '+0.13', '+0.125'])('a zero of %s is an eighth', (zero) => {
  expect(deviations([`zero ${zero}`, 'R -3.00 -0.50 x 053', 'L -3.00'])).toEqual([-0.125, -0.125, 0]);
});

test.each(['+0.12', '+0.13', '+0.125'])('so is one of %s that the instrument always has', (zero) => {
  const text = pair(ORDER, ['R -3.00 -0.50 x 053', 'L -3.00', ...PLACED], [...HEAD, `  zero ${zero}`]);
  const { measures, verdict } = judged(text.replace('reading 2026-11-24', 'reading 2026-11-24 with FOC-A'));
  expect(verdict).toBe('accept');
  expect(measures.filter(({ quantity }) => quantity === 'power').map(({ deviation }) => deviation)).toEqual([
    -0.125, -0.125, -0.125, -0.125,
  ]);
});
