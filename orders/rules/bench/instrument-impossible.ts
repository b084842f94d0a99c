import type { Place } from '../../finding';
import { isPossible } from '../../instrument';
import type { Instrument } from '../../model';
import { signed } from '../../words';
import type { Rule } from '../rule';
import { whileItCounts } from './counting';
import { instrumentsUsed } from './instruments-used';

export const instrumentImpossible: Rule = {
  code: 'instrument-impossible',
  family: 'bench',
  level: 'error',
  page: {
    checks:
      'An instrument is declared with figures that none can have: a step or an uncertainty of nothing or less, a zero beyond 1.00 D, a step beyond 0.50 D, a calibration in the future or due before it was made. It is told at the figure, and at every reading taken on that instrument.',
    why: 'Step, zero and uncertainty decide what a reading is worth, and with which certainty it is accepted. With a figure that cannot be, nothing read on the instrument is understood.',
    example: { wrong: '  uncertainty -5', right: '  uncertainty 0.06' },
    source:
      'ISO 8598:1996 in the wording of TCVN 8290:2009 allows a focimeter to be 0.06 to 0.25 D off; bounds four times as wide are ours.',
  },
  message: ({ name, what, value }) => {
    if (what === 'due') return `${name}: the next calibration, ${value}, is not after the last one.`;
    if (what === 'calibrated') return `${name}: the calibration of ${value} lies in the future.`;
    return `${name ?? 'The drum'}: ${WORDS[String(what)] ?? what} of ${signed(Number(value))} D cannot be. Which figure is meant?`;
  },
  check: ({ order, evaluation, context }, report) => {
    for (const [index, { zero }] of order.readings.entries())
      if (zero && !isPossible('zero', zero.value)) {
        const level = whileItCounts(evaluation, index, 'error');
        report(zero.place, { name: null, what: 'zero', value: zero.value }, { level });
      }
    for (const [index, reading] of order.readings.entries()) {
      for (const { instrument, place } of instrumentsUsed(reading, context)) {
        const [first] = impossibleIn(instrument, context.today);
        if (!first) continue;
        const { what, value } = first;
        report(place, { name: instrument.name, what, value }, { level: whileItCounts(evaluation, index, 'error') });
      }
    }
  },
};

const WORDS: Readonly<Record<string, string>> = {
  'reads-to': 'a step',
  uncertainty: 'an uncertainty',
  zero: 'a zero',
};

export interface ImpossibleFigure {
  readonly what: string;
  readonly value: number | string;
  readonly place: Place;
}

/** What of an instrument cannot be; with the day of checking, a calibration that is still to come as well. */
export function impossibleIn(instrument: Instrument, today: string | null): readonly ImpossibleFigure[] {
  const { impossible, calibrated, calibratedPlace } = instrument;
  if (today === null || calibrated === null || calibratedPlace === null || calibrated <= today) return impossible;
  return [...impossible, { what: 'calibrated', value: calibrated, place: calibratedPlace }];
}
