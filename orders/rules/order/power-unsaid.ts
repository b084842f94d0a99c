import type { Rule } from '../rule';
import { hasPowerWithoutEye } from './attempted';
import { lensesOf } from './lenses';

export const powerUnsaid: Rule = {
  code: 'power-unsaid',
  family: 'order',
  level: 'error',
  page: {
    checks: 'The order has no power at all.',
    why: 'Everything else hangs on it. Plano is a power and has to be written.',
    example: { wrong: 'pd 63', right: 'both plano' },
    source: 'Common practice, no source.',
  },
  message: () => 'This order has no power. Plano is written too.',
  check: (subject, report) => {
    const { order } = subject;
    const isSilent = lensesOf(order).every(
      ({ named, written, role }) => !named && !written && role !== 'kept' && role !== 'balance',
    );
    const isAskedFor = order.make.R !== null || order.make.L !== null;
    if (isSilent && !isAskedFor && !hasPowerWithoutEye(subject)) report(order.place);
  },
};
