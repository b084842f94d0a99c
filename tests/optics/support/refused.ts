import { expect } from 'vitest';
import { OutOfRange, type PermittedRange } from '../../../optics/range';

/** Checks that a call throws OutOfRange and names the quantity and the value that was wrong. */
export function refused(call: () => unknown, quantity: string, value?: number, permitted?: PermittedRange): void {
  let thrown: unknown;
  try {
    call();
  } catch (error) {
    thrown = error;
  }
  expect(thrown).toBeInstanceOf(OutOfRange);
  expect((thrown as OutOfRange).quantity).toBe(quantity);
  if (permitted !== undefined) expect((thrown as OutOfRange).permitted).toEqual(permitted);
  if (value !== undefined) expect((thrown as OutOfRange).value).toBe(value);
}
