import { nextSteps, STEPS_CAUTION } from '../../../orders';
import { covers, listed, type Part, type Spot } from './part';

/** On the name of a refused order and on the head of a reading that fails: what a bench would do next. */
export function aboutNextSteps({ analysis, line, character }: Spot): Part[] {
  const { order, evaluation, findings } = analysis;
  if (!order || evaluation?.verdict !== 'reject') return [];
  const fails = order.readings.filter((_, at) =>
    evaluation.measures.some(({ reading, outcome }) => reading === at && outcome === 'fail'),
  );
  const here = [order, ...fails].map(({ place }) => place).find((one) => one.line === line && covers(one, character));
  const steps = here ? nextSteps(order, evaluation, findings) : [];
  return here && steps.length > 0
    ? [{ start: here.start, end: here.end, markdown: `${listed('What to do next', steps)}\n\n${STEPS_CAUTION}` }]
    : [];
}
