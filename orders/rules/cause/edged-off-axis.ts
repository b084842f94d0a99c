import { normalAxis, type Power } from '../../../optics';
import { setRight } from '../../causes/explanation';
import { mapped } from '../../causes/lenses';
import { readPower } from '../../causes/scene';
import { isLess, isWithin, tidy } from '../../exact';
import { EYES } from '../../model';
import { amountInWords } from '../../words';
import { cause } from './cause';

export const edgedOffAxis = cause(
  'edged-off-axis',
  {
    checks:
      'The axes of both lenses are off by the same turn in the same direction, and the powers are right. Level: info.',
    why: 'One turn in both lenses speaks for the machine or the marking and not for the lenses: the block, the chuck or the protractor is off by that much. Common practice is to check the edger or the instrument with a lens of known axis before the pair is edged anew, or the next pair turns as well.',
    example: { wrong: 'R -4.50 -0.75 x 032\nL -4.25 -1.00 x 178', right: 'R -4.50 -0.75 x 022\nL -4.25 -1.00 x 168' },
    source: 'Common practice, no source.',
  },
  ({ turn }) =>
    `Both axes are turned by ${amountInWords(Number(turn), 'deg')} ${Number(turn) > 0 ? 'counter-clockwise' : 'clockwise'} as seen facing the wearer; the powers are right.`,
  (scene) => {
    const axes = scene.evaluation.measures.filter(({ quantity }) => quantity === 'axis');
    const [R, L] = EYES.map((eye) => axes.find((one) => one.eye === eye)?.deviation ?? 0) as [number, number];
    const turn = tidy((R + L) / 2);
    if (R * L <= 0 || isLess(Math.abs(turn), LEAST_TURN) || !isWithin(R - L, ALIKE)) return [];
    const power = { ...scene.values.power };
    for (const eye of EYES) {
      const read = readPower(scene, eye);
      const undone = read && mapped(read, (lens: Power) => ({ ...lens, axis: normalAxis(lens.axis - turn) }));
      if (undone && read === power[eye]) power[eye] = undone;
    }
    const right = setRight(scene, { values: { ...scene.values, power } }, { of: ['axis'] });
    return right ? [{ ...right, eye: null, data: { turn } }] : [];
  },
);

/** Degrees: smaller turns are the scatter of any bench, and equal ones are equal to a degree. Common practice, no source. */
const LEAST_TURN = 3;
const ALIKE = 1;
