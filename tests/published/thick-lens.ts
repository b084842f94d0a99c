import type { ThickLens } from '../../optics/thick-lens';
import type { PublishedAnswer } from './answer';

export const vertexPowers: readonly PublishedAnswer<ThickLens>[] = [
  {
    id: '5-01',
    input: { front: 3, back: -8.5, thickness: 2.2, index: 1.498 },
    printed: { nominal: -5.5, frontVertex: -5.4, backVertex: -5.49 },
    tolerance: 0.005,
    source: 'NFOS-11A',
  },
  {
    id: '5-02',
    input: { front: 9.5, back: -3.25, thickness: 5.7, index: 1.498 },
    printed: { nominal: 6.25, frontVertex: 6.29, backVertex: 6.61 },
    tolerance: 0.005,
    source: 'NFOS-11A',
  },
  {
    id: '5-03',
    input: { front: 9.5, back: -3.25, thickness: 3.3, index: 1.66 },
    printed: { nominal: 6.25, frontVertex: 6.27, backVertex: 6.43 },
    tolerance: 0.005,
    source: 'NFOS-11A',
  },
  {
    id: '5-04',
    input: { front: 10.25, back: -3, thickness: 4, index: 1.586 },
    printed: { backVertex: 7.52 },
    tolerance: 0.005,
    source: 'OED-BVP',
  },
  {
    id: '5-05',
    input: { front: 15, back: -6, thickness: 6.5, index: 1.523 },
    printed: { backVertex: 10.03 },
    tolerance: 0.005,
    source: 'OED-BVP',
  },
];
