import type { Eye } from '../../../grammar';
import { centresOf } from '../../causes/centres';
import { madeUp } from '../../causes/explanation';
import { isLess } from '../../exact';
import { EYES, otherEye } from '../../model';
import { amountInWords } from '../../words';
import { cause } from './cause';

export const oneCentreOff = cause(
  'one-centre-off',
  {
    checks:
      'The centres are too wide or too narrow, and all of it lies in one lens while the other stands where it was ordered. It is told when nothing else is outside. Level: info.',
    why: 'One centre alone off its place is a slip in blocking or glazing that lens; the figure for the PD was right. So that the right thing is remade: common practice is to set this lens anew and to leave its partner.',
    example: { wrong: 'pd R 35 L 31.5 near 60', right: 'pd R 31.5 L 31.5 near 60' },
    source: 'Common practice, no source.',
  },
  ({ lens, by, other, otherBy }) => {
    const elsewhere =
      Number(otherBy) === 0 ? 'stands where it should' : `is off by ${amountInWords(Number(otherBy), 'mm')}`;
    return `Only the ${lens} lens stands off its place: ${amountInWords(Number(by), 'mm')} too far ${Number(by) > 0 ? 'out' : 'in'}. ${other} ${elsewhere}.`;
  },
  (scene) => {
    const centres = centresOf(scene);
    if (!centres || centres.failed.length < scene.failed.length) return [];
    return EYES.flatMap((eye: Eye) => {
      const [by, otherBy] = [centres[eye], centres[otherEye(eye)]];
      if (isLess(Math.abs(by), LEAST) || isLess(NOTHING, Math.abs(otherBy))) return [];
      return [madeUp(eye, centres.failed, { lens: eye, by, other: otherEye(eye), otherBy }, true)];
    });
  },
);

/** A displacement and what counts as none, millimetres: a ruler is read to half a millimetre. Common practice, no source. */
const LEAST = 1;
const NOTHING = 0.5;
