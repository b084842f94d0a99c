import type { Block, DateNode, LineNode } from '../../../grammar';
import type { Place } from '../../finding';
import type { Rule } from '../rule';

/** No focimeter and no spectacles of a bench are older, and none is due later. */
const [FIRST, LAST] = ['1950-01-01', '2099-12-31'];

export const dateImplausible: Rule = {
  code: 'date-implausible',
  family: 'writing',
  level: 'error',
  page: {
    checks:
      'A date lies before 1950 or after 2099, or something that has been done is of a day that is still to come: a reading or a calibration after the day of checking.',
    why: 'The newest reading decides. A reading dated 2062 outranks every later one for good, and an instrument calibrated then is never overdue.',
    example: { wrong: 'reading 1926-11-24', right: 'reading 2026-11-24' },
    source: 'Common practice, no source. The bounds of the years are ours.',
  },
  message: ({ date, why, today }) =>
    why === 'future'
      ? `${date} is still to come: today is ${today}. Which day is meant?`
      : `${date} is not a day of this bench. Which year is meant?`,
  check: ({ block, context: { today } }, report) => {
    for (const { place, data } of impossibleDates(block, today)) report(place, data);
  },
};

interface ImpossibleDate {
  readonly place: Place;
  readonly data: { readonly date: string; readonly why: 'future' | 'year'; readonly today: string | null };
}

const NONE: readonly ImpossibleDate[] = [];

/**
 * The dates of an order or an instrument that cannot be. Every date that any line may have is looked at, also of lines
 * that the notation has yet to get: only one called `due` may lie ahead.
 * @param today the day of checking, year-month-day, or null to hold no date against it
 */
export function impossibleDates(block: Block, today: string | null): readonly ImpossibleDate[] {
  let found: ImpossibleDate[] | null = null;
  for (const [line, one] of block.lines.entries()) {
    if (!DATED.test(one.text)) continue;
    for (const { date, isDue } of datesIn(one.parsed(block.kind).node)) {
      const { iso, start, end } = date;
      if (iso === null) continue;
      const why = iso < FIRST || iso > LAST ? 'year' : !isDue && today !== null && iso > today ? 'future' : null;
      if (why === null) continue;
      found ??= [];
      found.push({ place: { line, start, end }, data: { date: iso, why, today } });
    }
  }
  return found ?? NONE;
}

/** Cheap test before a look at the tree. */
const DATED = /\d{4}-\d/;

/** The calibration of an instrument in the future is told by `instrument-impossible`, also at its readings. */
function datesIn(node: LineNode): readonly { readonly date: DateNode; readonly isDue: boolean }[] {
  const isCalibration = node.kind === 'dated' && node.which === 'calibrated';
  return Object.entries(node).flatMap(([key, value]: readonly [string, unknown]) =>
    isDate(value)
      ? [{ date: value, isDue: key === 'due' || isCalibration || (node.kind === 'dated' && node.which === 'due') }]
      : [],
  );
}

const isDate = (value: unknown): value is DateNode => typeof value === 'object' && value !== null && 'iso' in value;
