import type { PublishedAnswer } from './answer';

/** Error to expect of an ordinary focimeter, dioptres, for a lens of `power` dioptres. */
export const ordinaryError: PublishedAnswer<readonly number[]> = {
  id: '10-01',
  input: [0, 2.5, 5, -5],
  printed: { error: 0.06 },
  tolerance: 1e-9,
  source: '2020-FOC',
  note: 'A property of instruments, not a formula: it is held against the limits in the tables.',
};
