import { normalAxis, type Power } from '../../../optics';
import type { Explanation } from '../../causes/explanation';
import { inPowers } from '../../causes/lenses';
import { readPower, type Scene, typedForm, wantedPower } from '../../causes/scene';
import { cause } from './cause';
import { eyesInWords, lensesInWords } from './in-words';

export const formMisread = cause(
  'form-misread',
  {
    checks:
      'The figures of one cylinder form were taken for those of the other: the sphere of the other focus with cylinder and axis right, or a form changed without turning the axis. Level: info.',
    why: 'Plus and minus form of one lens share nothing but the size of the cylinder. Whoever reads the wide lines first, or changes the form in the head, may keep one figure of the old form, and a good lens reads wrong by its whole cylinder. Common practice is to read it again, thin lines first, before the lens is refused. Where the axis is 90 degrees off, a lens ground across reads the same, and both are told.',
    example: { wrong: 'R -5.25 -0.75 x 022', right: 'R -4.50 -0.75 x 022' },
    source:
      '20/20, “quality assurance with your lensometer” (2005): wide lines first as a usual slip. The figures follow from transposition.',
  },
  (data) =>
    `The forms look mixed up in the reading of ${eyesInWords(data)}: ${lensesInWords(data)}. ${data.part === 'sphere' ? 'With the sphere of the other focus' : 'With the axis of the other form'} it fits.`,
  (scene) => [...sphereOfOtherFocus(scene), ...axisNotTurned(scene)],
);

/** Below this cylinder (dioptres) a sphere that is off by it is as likely to be off by itself. Common practice, no source. */
const LEAST_CYLINDER = 0.75;

function sphereOfOtherFocus(scene: Scene): Explanation[] {
  const shifted =
    (sign: 1 | -1) =>
    (read: Power, eye: 'R' | 'L'): Power | null => {
      const cylinder = wantedPower(scene, eye)?.cylinder ?? 0;
      return Math.abs(cylinder) < LEAST_CYLINDER ? null : { ...read, sphere: read.sphere + sign * cylinder };
    };
  return [...inPowers(scene, shifted(1), { part: 'sphere' }), ...inPowers(scene, shifted(-1), { part: 'sphere' })];
}

/** Two drum positions in the wrong order are told as that, and an instrument that reads by itself mixes up no forms. */
const axisNotTurned = (scene: Scene): Explanation[] =>
  inPowers(scene, (read, eye) => (isReadByHand(scene, eye) ? { ...read, axis: normalAxis(read.axis + 90) } : null), {
    part: 'axis',
  });

const isReadByHand = (scene: Scene, eye: 'R' | 'L'): boolean =>
  typedForm(scene, eye) !== 'lines' && !/\bauto/i.test(readPower(scene, eye)?.instrument?.kind ?? '');
