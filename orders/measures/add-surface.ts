/** The surface that stood on the stop when an add was read by difference, and what it does to the figure. */
import { addErrorFromBack } from '../computed';
import { isWithin, tidy } from '../exact';
import type { Order } from '../model';
import type { Read } from '../reduce';
import type { Measure } from './measure';

/** As said with the reading: `unsaid` for drum positions without it, null for an add that was not taken off a drum. */
export function surfaceOf({ steps }: Pick<Read<number>, 'steps'>): 'front-vertex' | 'back-vertex' | 'unsaid' | null {
  const taken = steps.flatMap((step) => (step.step === 'difference' ? [step.surface ?? 'unsaid'] : []));
  if (taken.includes('back-vertex')) return 'back-vertex';
  if (taken.includes('unsaid')) return 'unsaid';
  return taken.length > 0 ? 'front-vertex' : null;
}

/** Whether a measure would come out otherwise without what the back surface on the stop adds to it. */
export function surfaceDecides(order: Order, { eye, deviation, limit }: Measure): boolean {
  const error = eye && addErrorFromBack(order, eye);
  const most = limit?.amount ?? null;
  if (!error || deviation === null || most === null) return false;
  return isWithin(deviation, most) !== isWithin(tidy(deviation - error.value), most);
}
