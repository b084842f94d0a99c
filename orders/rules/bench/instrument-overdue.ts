import type { Rule } from '../rule';
import { whileItCounts } from './counting';

export const instrumentOverdue: Rule = {
  code: 'instrument-overdue',
  family: 'bench',
  level: 'warning',
  page: {
    checks: 'A reading was taken after the day on which the instrument was due for calibration.',
    why: 'A focimeter that has drifted passes bad lenses and refuses good ones alike. The figures count, with this reservation, until the instrument has been checked against test lenses.',
    example: { wrong: 'reading 2027-06-01 with FOC-A', right: 'reading 2026-11-24 with FOC-A' },
    source: 'Common practice, no source. The interval is the lab’s own; ISO 8598-1 describes the test lenses.',
  },
  message: ({ name, due, date }) => `${name} was due for calibration on ${due}; this reading is of ${date}.`,
  needs: 'instrument',
  check: ({ order, evaluation, context }, report) => {
    for (const [index, reading] of order.readings.entries()) {
      const { date } = reading;
      const told = new Set<string>();
      for (const { with: name, withPlace, place } of [reading, ...reading.measurements]) {
        const due = name === null ? null : context.instruments.get(name)?.due;
        if (date === null || due == null || name === null || date <= due || told.has(name)) continue;
        told.add(name);
        report(withPlace ?? place, { name, due, date }, { level: whileItCounts(evaluation, index, 'warning') });
      }
    }
  },
};
