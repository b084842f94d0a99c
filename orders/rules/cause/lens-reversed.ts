import { axisDistance, normalAxis } from '../../../optics';
import { inPowers } from '../../causes/lenses';
import { cause } from './cause';
import { eyesInWords, lensesInWords } from './in-words';

export const lensReversed = cause(
  'lens-reversed',
  {
    checks:
      'The axis read is the mirror image of the ordered one, 180 less the axis, and the power is right. Level: info.',
    why: 'A lens that lies on the stop with its front towards it shows the mirrored axis, and so does one that was blocked for the other eye. Common practice is to turn it over and read it again; if the figures stay, the lens was cut for the other side. Near 90 and 180 a mirrored axis is hardly another one, so nothing is told there.',
    example: { wrong: 'R -4.50 -0.75 x 158', right: 'R -4.50 -0.75 x 022' },
    source: 'Axes as seen facing the wearer: ISO 8429. That it happens: common practice, no source.',
  },
  (data) =>
    `The axis of ${eyesInWords(data)} is mirrored: ${lensesInWords(data)}. Turned over on the stop, or blocked for the other eye, it reads like this.`,
  (scene) =>
    inPowers(scene, (read) => {
      const axis = normalAxis(180 - read.axis);
      return axisDistance(axis, read.axis) < LEAST_TURN ? null : { ...read, axis };
    }),
);

/** Below this turn (degrees) a lens that was simply mounted askew is as likely. Common practice, no source. */
const LEAST_TURN = 15;
