/** Figures that ended up behind a comment mark are told; what people write as a remark is not. */
import { expect, test } from 'vitest';
import { parseLine } from '../../grammar';

const isTold = (line: string): boolean => parseLine(line).problems.some(({ code }) => code === 'figures-in-remark');

test.each([
  'R -4.50 x 022 # -0.75',
  'R -4.50 # -0.75 x 022',
  'R -4.50 # x 022',
  'R -4.50 # add +2.00',
  'prism R 0 L 0 #3 BU',
  'prism R 0 # L 3 BU',
  'prism R 2 BI # 0.50 BU as ordered',
  'pd 63 # near 60',
  'pd 63 # 60',
  'height R 17 # L 16.5',
  'height 17 ## 18',
  'add +2.00 # -2.00, as the clinic says',
  'frame A 52 # 36',
  'FT28 # 35',
])('%s', (line) => {
  expect(isTold(line)).toBe(true);
});

test.each([
  'R -4.50 # remade 2026',
  'R -4.50 # box 12',
  'R -4.50 # expect -4.50 -0.75 x 022',
  'R lines -4.50 / -5.25 x 022 # expect thin lines -4.50, wide lines -5.25, wheel 022',
  'add R -4.50 -> -2.50 front-vertex # front surface on the stop; expect -4.50 -> -2.50 on the thin lines',
  'pd 63 # expect 63, near 60',
  'R -4.50 # 2 of 3 trays',
  'R -4.50 # second try',
  'R -4.50 # 2026-11-24',
  'pd 63 # 14:30',
  'R -4.50 # L was 0.12 weaker',
  'R -4.50 # right first',
  'height 17 # 3rd attempt',
  'pd 63 # R',
  '# R -4.50 -0.75 x 022',
  'note two of them # 3 BU',
  'impact passed # 2',
  'order QL-1 # 12',
])('%s is quiet', (line) => {
  expect(isTold(line)).toBe(false);
});

test('a long remark costs no time', () => {
  const before = performance.now();
  parseLine(`R -4.50 # ${'1.5 '.repeat(5000)}!`);
  parseLine(`R -4.50 # ${'1'.repeat(20000)}!`);
  expect(performance.now() - before).toBeLessThan(1000);
});
