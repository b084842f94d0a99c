import { nextSteps, STEPS_CAUTION } from '../../../orders';
import { contentEnd } from '../lines';
import { covers, listed, type Part, type Spot } from './part';

/** On the name of a refused order and anywhere on the head of a reading that fails: what a bench would do next. */
export function aboutNextSteps(spot: Spot): Part[] {
  const { order, evaluation, findings } = spot.analysis;
  if (!order || evaluation?.verdict !== 'reject') return [];
  const span = spanHere(spot);
  const steps = span ? nextSteps(order, evaluation, findings) : [];
  return span && steps.length > 0
    ? [{ ...span, markdown: `${listed('What to do next', steps)}\n\n${STEPS_CAUTION}` }]
    : [];
}

function spanHere({
  analysis: { order, evaluation },
  line,
  character,
  text,
  node,
}: Spot): Omit<Part, 'markdown'> | null {
  if (order?.place.line === line) return covers(order.place, character) ? order.place : null;
  const at = order?.readings.findIndex(({ place }) => place.line === line) ?? -1;
  const fails = evaluation?.measures.some(({ reading, outcome }) => reading === at && outcome === 'fail');
  return at >= 0 && fails ? { start: node.head?.start ?? 0, end: contentEnd(text) } : null;
}
