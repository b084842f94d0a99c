/** An add that is ordered is called for, whatever the design says or fails to say. */
import { expect, test } from 'vitest';
import { analyse } from '../../orders';
import { judged, pair } from '../support/judged';

const ORDER = [
  'R -2.50 -0.75 x 022',
  'L -2.25 -1.00 x 168',
  'add +2.00',
  'pd 63 near 60',
  'height 17',
  'lens resin-1.50',
  'frame A 52 B 36 DBL 18',
];
const ADDS = ['add R -2.50 -> -0.50 front-vertex', 'add L -2.25 -> -0.25 front-vertex'];
const REST = ['R -2.50 -0.75 x 022', 'L -2.25 -1.00 x 168', 'pd 63 near 60', 'height 17', 'prism R 0 L 0'];

const codes = (text: string): readonly string[] =>
  analyse(text).blocks.flatMap(({ findings }) =>
    findings.filter(({ level }) => level === 'error' || level === 'warning').map(({ code }) => code),
  );

test.each([
  'design FT28',
  'design D 28',
  'design ST-28',
  'design round 22',
  'FT28',
  'D 28',
  'R22',
  'CT28',
  'executive',
])('%s is a bifocal: accepted with its add, waiting without it', (design) => {
  const whole = pair([...ORDER, design], [...REST, ...ADDS]);
  expect(judged(whole)).toMatchObject({ verdict: 'accept', reservations: [] });
  const lacking = judged(pair([...ORDER, design], REST));
  expect(lacking.verdict).toBe('incomplete');
  expect(lacking.measures.filter(({ outcome }) => outcome === 'not-read').map(({ quantity }) => quantity)).toEqual([
    'add',
    'add',
  ]);
  const strong = pair([...ORDER, design], [...REST, 'add R -2.50 -> +0.50 front-vertex', ADDS[1] as string]);
  expect(judged(strong).verdict).toBe('reject');
});

test('without a design the add is read all the same, and the order is not accepted', () => {
  expect(judged(pair(ORDER, [...REST, ...ADDS]))).toMatchObject({
    verdict: 'incomplete',
    unresolved: ['design-missing'],
  });
  expect(judged(pair(ORDER, REST)).measures.filter(({ quantity }) => quantity === 'add')).toHaveLength(2);
});

test('a single-vision lens has no add to be read; which power is meant has to be said', () => {
  const near = pair(
    [...ORDER.slice(0, 4), 'design single-vision near', 'frame A 52 B 36 DBL 18'],
    ['R -0.50 -0.75 x 022', 'L -0.25 -1.00 x 168', 'pd near 60', 'prism R 0 L 0'],
  );
  expect(judged(near).measures.some(({ quantity }) => quantity === 'add')).toBe(false);
  expect(judged(pair([...ORDER, 'design single-vision'], REST)).unresolved).toContain('use-missing');
});

test('a progressive by its short name calls for its add', () => {
  const order = [...ORDER.slice(0, 3), 'pd R 31.5 L 31.5', ...ORDER.slice(4), 'PAL'];
  const measured = judged(pair(order, REST)).measures.filter(({ quantity }) => quantity === 'add');
  expect(measured.map(({ outcome }) => outcome)).toEqual(['not-read', 'not-read']);
});

test('a round segment or a power: nothing is taken in silence', () => {
  expect(codes(pair([...ORDER, 'R-22'], [...REST, ...ADDS]))).toContain('round-or-right');
  expect(codes(pair([...ORDER, 'R 22'], [...REST, ...ADDS]))).toContain('sign-missing');
});
