import { addAsRead } from '../../measures/add-as-read';
import type { AddReading } from '../../model';
import { signed } from '../../words';
import { type Rule, replace, typed } from '../rule';

export const negativeAdd: Rule = {
  code: 'negative-add',
  family: 'bench',
  level: 'error',
  page: {
    checks: 'The add of a reading comes out below zero.',
    why: 'The near portion is always the more plus one. Either the two positions were written down in the wrong order, or the lens stood upside down.',
    example: { wrong: 'add R -2.50 -> -4.50', right: 'add R -4.50 -> -2.50' },
    fix: 'Exchanges the two positions.',
    source: 'Exam-study page “add power on the lensmeter” (opterio.com).',
  },
  message: ({ add }) => `This add is ${signed(Number(add))}. Were the distance and the near position exchanged?`,
  fixes: (site) => {
    const pair = TWO_POSITIONS.exec(typed(site));
    return pair ? [replace(site, 'Exchange the positions', typed(site).replace(TWO_POSITIONS, '$3$2$1'), false)] : [];
  },
  check: ({ order, evaluation }, report) => {
    for (const { measurements } of order.readings) {
      for (const one of measurements) {
        if (one.quantity !== 'add' || one.eye === null) continue;
        const add = addOf(one.value);
        if (add >= 0) continue;
        const counts = addAsRead(evaluation.values, one.eye)?.place.line === one.place.line;
        report(one.place, { add }, { eye: one.eye, ...(counts ? {} : { level: 'info' }) });
      }
    }
  },
};

const TWO_POSITIONS = /([+-]?\d[\d.,]*)(\s*->\s*)([+-]?\d[\d.,]*)/;

const addOf = (value: AddReading): number => (value.kind === 'value' ? value.value : value.to - value.from);
