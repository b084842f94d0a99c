import type { Power } from '../../../optics';
import type { Explanation } from '../../causes/explanation';
import { inPowers } from '../../causes/lenses';
import type { Scene } from '../../causes/scene';
import { isLess } from '../../exact';
import { cause } from './cause';
import { eyesInWords, lensesInWords } from './in-words';

export const nearForDistance = cause(
  'near-for-distance',
  {
    checks:
      'The power read is off by the whole add, with cylinder and axis right: the near power where the distance power belongs, or the other way round. Level: info.',
    why: 'Single vision for reading is ground to the distance power when nobody adds the add, and a multifocal read through its segment shows the near power. Common practice is to see at which point the lens was read; if it was the right one, the lens is made again for the distance it was ordered for.',
    example: { wrong: 'R -2.50 -0.75 x 022', right: 'R -4.50 -0.75 x 022' },
    source: 'Common practice, no source. The near power is the distance power and the add.',
  },
  (data) =>
    `The power of ${eyesInWords(data)} is off by the add: ${lensesInWords(data)}. ${data.reads === 'near' ? 'The near power stands where the distance power belongs.' : 'The distance power stands where the near power belongs.'}`,
  (scene) => [...offBy(scene, 1, 'near'), ...offBy(scene, -1, 'distance')],
);

/** A smaller add (dioptres) is as likely an error of the sphere. Common practice, no source. */
const LEAST_ADD = 0.75;

/** @param sign 1 where the power read has the add in it and should not */
const offBy = (scene: Scene, sign: 1 | -1, reads: 'near' | 'distance'): Explanation[] =>
  inPowers(
    scene,
    (read, eye): Power | null => {
      const add = scene.order.lenses[eye].add?.value ?? 0;
      return isLess(add, LEAST_ADD) ? null : { ...read, sphere: read.sphere - sign * add };
    },
    { reads },
  );
