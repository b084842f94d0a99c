import { OutOfRange } from '../optics';

/**
 * The result of a formula, or null where its inputs lie outside its range. The formulas refuse such inputs; an order
 * file may hold any figure at all, so the refusal becomes “cannot be worked out”.
 */
export function attempt<R>(formula: () => R): R | null {
  try {
    return formula();
  } catch (error) {
    if (error instanceof OutOfRange) return null;
    throw error;
  }
}
