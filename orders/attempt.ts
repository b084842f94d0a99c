import { OutOfRange } from '../optics';

/**
 * The result of a formula, or null where its inputs lie outside its range. The formulas refuse such inputs; an order
 * file may hold any figure at all, so the refusal becomes “cannot be worked out”.
 */
export function attempt<R>(formula: () => R): R | null {
  try {
    return formula();
  } catch (error) {
    return refused(error);
  }
}

/** The same for a formula of one thing; asked for ten times in every order, it is worth a function that needs no other. */
export function attemptOf<T, R>(formula: (of: T) => R, of: T): R | null {
  try {
    return formula(of);
  } catch (error) {
    return refused(error);
  }
}

function refused(error: unknown): null {
  if (error instanceof OutOfRange) return null;
  throw error;
}
