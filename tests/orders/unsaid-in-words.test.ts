/** Words that look like a statement and state nothing: a decision, a direction. Common practice, no source. */
import { expect, test } from 'vitest';
import { analyse } from '../../orders';
import { judged, pair } from '../support/judged';

const ORDER = ['R -1.00', 'L -1.25', 'pd 62', 'design single-vision', 'frame A 50 B 36 DBL 18'];
const READ = ['R -1.00', 'L -1.25', 'pd 62', 'prism R 0 L 0', 'impact passed'];

const levels = (source: string): readonly string[] =>
  analyse(source).blocks.flatMap(({ findings }) =>
    findings
      .filter(({ level }) => level === 'error' || level === 'warning')
      .map(({ level, code }) => `${level} ${code}`),
  );

test.each([
  ['decided ok', ['error unknown-choice']],
  ['decided fine by MT', ['error unknown-choice']],
  ['decided accept reject', ['error unexpected-text']],
  ['decided by MT "the wearer asked for it"', ['warning value-missing']],
])('%s decides nothing, and is told', (line, told) => {
  expect(levels(pair(ORDER, [...READ, line]))).toEqual(told);
  const { verdict, reservations } = judged(pair(ORDER, [...READ, line]));
  expect(verdict === 'accept' && reservations.length === 0).toBe(false);
});

test.each(['decided accept', 'decided accept by MT "fine"', 'decided accept "rejected at first"'])('%s', (line) => {
  expect(levels(pair(ORDER, [...READ, line]))).toEqual([]);
});

test.each(['tint brown polarised 80%', 'tint brown polarised 80 %', 'tint polarised 80 percent'])('%s', (line) => {
  expect(levels(pair([...ORDER, line], READ))).toEqual(['warning polarised-share']);
});

test.each(['tint brown absorbs 80% polarised 180', 'tint polarised 180°', 'tint brown polarised 80 absorbs 80 %'])(
  '%s is a direction',
  (line) => {
    expect(levels(pair([...ORDER, line], READ))).toEqual([]);
  },
);

test('figures behind a comment mark leave no plain accept', () => {
  const read = READ.map((line) => (line.startsWith('prism') ? `${line} #3 BU` : line));
  expect(judged(pair(ORDER, read))).toMatchObject({ verdict: 'accept', reservations: ['figures-in-remark'] });
  expect(
    judged(
      pair(
        ORDER,
        READ.map((line) => `${line}  # expect ${line}`),
      ),
    ),
  ).toMatchObject({ reservations: [] });
});
