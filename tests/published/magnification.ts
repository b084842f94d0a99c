import type { PublishedAnswer } from './answer';

export const imageSize: PublishedAnswer<{ backVertex: number; distance: number }> = {
  id: '9-01',
  input: { backVertex: 8, distance: 12 },
  printed: { percent: 10 },
  tolerance: 1,
  source: 'OPENX-3.2',
  note: 'Printed as "about 10 percent"; the power factor alone gives 10.6, the shape factor is left out.',
};
