/** A measure as a bar of its limit, and the sign of its outcome, each told apart by shape. */
import type { Measure, Outcome } from '../measures/measure';
import { type Drawing, line } from './drawing';
import { element, type Markup, together } from './markup';

const WIDTH = 240;
const HEIGHT = 26;
const MIDDLE = WIDTH / 2;
const LEVEL = HEIGHT / 2;
/** From no deviation to the limit, units; and as far as a mark goes, where an arrow says that it lies beyond. */
const TO_LIMIT = 64;
const FARTHEST = 108;

/** The band that is inside, with the deviation as a mark on it; null for what has no limit to be drawn. */
export function limitBar({ limit, deviation, outcome, house }: Measure): Drawing | null {
  if (!limit?.amount) return null;
  const share = deviation === null ? null : deviation / limit.amount;
  const content = together(
    line(4, LEVEL, WIDTH - 4, LEVEL, 'scale'),
    element('rect', { class: 'inside', x: MIDDLE - TO_LIMIT, y: LEVEL - 6, width: 2 * TO_LIMIT, height: 12 }),
    [-1, 1].map((side) => ends(side * TO_LIMIT, 'limit')),
    house ? [-1, 1].map((side) => ends((side * TO_LIMIT * house.amount) / (limit.amount as number), 'house')) : null,
    line(MIDDLE, LEVEL - 4, MIDDLE, LEVEL + 4, 'nought'),
    share === null ? null : deviationMark(share, outcome),
  );
  return { width: WIDTH, height: HEIGHT, content };
}

const ends = (from: number, className: string): Markup | null =>
  Math.abs(from) > FARTHEST ? null : line(MIDDLE + from, LEVEL - 10, MIDDLE + from, LEVEL + 10, className);

/** Inside a disc, outside a square with a cross, undecided a ring; beyond the bar an arrow. */
function deviationMark(share: number, outcome: Outcome): Markup {
  const far = share * TO_LIMIT;
  const x = MIDDLE + Math.max(-FARTHEST, Math.min(FARTHEST, far));
  const isBeyond = Math.abs(far) > FARTHEST;
  const tip = Math.sign(far) * 9;
  return element(
    'g',
    { class: `deviation ${outcome}` },
    line(MIDDLE, LEVEL, x, LEVEL, 'reach'),
    isBeyond
      ? element('path', { class: 'beyond', d: `M${x} ${LEVEL - 9}L${x + tip} ${LEVEL}L${x} ${LEVEL + 9}Z` })
      : null,
    isBeyond ? null : signOf(outcome, x, LEVEL),
  );
}

/** The sign of an outcome: a ticked disc, a crossed square, a broken ring, a ring. */
export function signOf(outcome: Outcome, x: number, y: number): Markup {
  const place = { class: `sign ${outcome}`, transform: `translate(${x.toFixed(2)} ${y.toFixed(2)})` };
  switch (outcome) {
    case 'pass':
      return element(
        'g',
        place,
        element('circle', { r: 7, class: 'ground' }),
        element('path', { d: 'M-3.4 0.2L-0.9 2.9L3.6 -2.6', class: 'stroke' }),
      );
    case 'fail':
      return element(
        'g',
        place,
        element('rect', { x: -7.5, y: -7.5, width: 15, height: 15, class: 'ground' }),
        element('path', { d: 'M-3.6 -3.6L3.6 3.6M3.6 -3.6L-3.6 3.6', class: 'stroke' }),
      );
    case 'not-read':
    case 'not-judged':
      return element('g', place, element('circle', { r: 6.5, class: 'ring' }));
  }
}

export const OUTCOMES: Readonly<Record<Outcome, string>> = {
  pass: 'pass',
  fail: 'fail',
  'not-read': 'not read',
  'not-judged': 'not judged',
};
