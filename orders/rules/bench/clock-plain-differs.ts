import { isLess, tidy } from '../../exact';
import { EYES } from '../../model';
import { figure, signed } from '../../words';
import type { Rule } from '../rule';

export const clockPlainDiffers: Rule = {
  code: 'clock-plain-differs',
  family: 'bench',
  level: 'info',
  page: {
    checks:
      'The add by lens measure, converted for the index of the lens, is further from the plain difference on the dial than the add may be off.',
    why: 'A lens measure is divided for an index of 1.530. Bench habit takes the plain difference; on another material that is another add, and here the two would be judged differently. The converted one counts.',
    example: { wrong: 'clock R +4.25 -> +7.00', right: 'clock R +4.25 -> +6.00' },
    source:
      'Surface power (n - 1)/r, National Federation of Opticianry Schools, OPT11, answers 06a; exam-study page “lens clock conversion” (opterio.com).',
  },
  message: ({ plain, result, index }) =>
    `${figure(Number(plain))} on the dial is an add of ${signed(Number(result))} at an index of ${figure(Number(index), 3)}: the plain difference is further off than the add may be. The converted add counts.`,
  needs: 'difference',
  check: ({ evaluation }, report) => {
    for (const eye of EYES) {
      const read = evaluation.values.clockAdd[eye];
      const step = read?.steps.find((one) => one.step === 'clock');
      if (!read || step?.step !== 'clock' || step.index === null) continue;
      const judged = evaluation.measures.find((one) => one.quantity === 'add' && one.eye === eye);
      const limit = judged?.limit?.amount ?? USUAL_LIMIT;
      const { plain, result, index } = step;
      if (isLess(limit, tidy(Math.abs(plain - result)))) report(read.place, { plain, result, index }, { eye });
    }
  },
};

/** Of an add up to 4.00 D in most sets, dioptres; for where nothing is judged. */
const USUAL_LIMIT = 0.12;
