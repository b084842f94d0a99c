import type { Eye } from '../../../grammar';
import { sphericalEquivalent } from '../../../optics';
import { attempt } from '../../attempt';
import { inLenses, mapped } from '../../causes/lenses';
import { readPower, type Scene, wantedPower } from '../../causes/scene';
import { tidy } from '../../exact';
import { EYES, otherEye } from '../../model';
import type { ReadValues } from '../../reduce';
import { signed } from '../../words';
import { cause } from './cause';
import { eyesInWords } from './in-words';

export const addMisread = cause(
  'add-misread',
  {
    checks:
      'The add read differs from the ordered one by a figure of the distance power: the cylinder, half of it, the sphere, or the difference to the other lens. Level: info.',
    why: 'The add is the near power less the distance power of the same lines of the same lens. Near wide lines less distance thin lines add the cylinder; less the spherical equivalent, half of it; a near power written down as it stands, the whole distance power. Common practice is to read both positions with one set of lines, and nothing is remade for an add that was only taken off the wrong figure.',
    example: { wrong: 'add R +2.75 L +2.00', right: 'add R +2.00 L +2.00' },
    source: 'How-to page “measuring spectacles on a lensometer” (86m.net): the near lines less the wrong figure.',
  },
  (data) => {
    const { from, by } = data as { from: From; by: readonly { eye: Eye; shift: number; add: number }[] };
    const each = by.map(
      ({ eye, add, shift }) => `${eye} ${signed(add)} is ${signed(tidy(add - shift))} and ${signed(shift)}`,
    );
    return `The add of ${eyesInWords(data)} looks taken from ${FROM[from]}: ${each.join('; ')}.`;
  },
  (scene) =>
    SHIFTS.flatMap(([from, shiftOf]) =>
      inLenses(
        scene,
        (eyes) => withAdds(scene, eyes, shiftOf),
        (eyes) => ({
          from,
          by: eyes.map((eye) => ({ eye, add: scene.values.add[eye]?.value, shift: shiftOf(scene, eye) })),
        }),
        { of: ['add'], most: MOST },
      ),
    ),
);

type From = 'other-line' | 'mean' | 'nothing' | 'other-lens';
type ShiftOf = (scene: Scene, eye: Eye) => number | null;

const FROM: Readonly<Record<From, string>> = {
  'other-line': 'the other set of lines, so that the cylinder is in it',
  mean: 'the spherical equivalent, so that half the cylinder is in it',
  nothing: 'nothing: the distance power is still in it',
  'other-lens': 'the distance power of the other lens',
};

/** Smaller figures (dioptres) are met by chance too often, and looser fits as well. Common practice, no source. */
const LEAST_SHIFT = 0.7;
const MOST = 0.06;

const distance = (scene: Scene, eye: Eye) => readPower(scene, eye)?.value ?? wantedPower(scene, eye);

const part =
  (of: (scene: Scene, eye: Eye) => number | null | undefined, sign: 1 | -1 = 1): ShiftOf =>
  (scene, eye) => {
    const shift = of(scene, eye);
    return shift == null || Math.abs(shift) < LEAST_SHIFT ? null : tidy(sign * shift);
  };

const cylinderOf = (scene: Scene, eye: Eye) => distance(scene, eye)?.cylinder;

function fromOther(scene: Scene, eye: Eye): number | null {
  const [own, other] = [distance(scene, eye), distance(scene, otherEye(eye))];
  return own && other ? own.sphere - other.sphere : null;
}

const SHIFTS: readonly (readonly [from: From, shiftOf: ShiftOf])[] = [
  ['other-line', part(cylinderOf)],
  ['other-line', part(cylinderOf, -1)],
  ['mean', part((scene, eye) => halfCylinder(scene, eye))],
  ['mean', part((scene, eye) => halfCylinder(scene, eye), -1)],
  ['nothing', part((scene, eye) => distance(scene, eye)?.sphere)],
  ['nothing', part((scene, eye) => sum(scene, eye))],
  ['other-lens', part(fromOther)],
];

function halfCylinder(scene: Scene, eye: Eye): number | null {
  const lens = distance(scene, eye);
  const mean = lens && attempt(() => sphericalEquivalent(lens));
  return lens && mean !== null ? mean - lens.sphere : null;
}

function sum(scene: Scene, eye: Eye): number | null {
  const lens = distance(scene, eye);
  return lens ? lens.sphere + lens.cylinder : null;
}

function withAdds(scene: Scene, eyes: readonly Eye[], shiftOf: ShiftOf): ReadValues | null {
  const add = { ...scene.values.add };
  for (const eye of EYES.filter((one) => eyes.includes(one))) {
    const shift = shiftOf(scene, eye);
    const undone = shift !== null && add[eye] && mapped(add[eye], (value) => tidy(value - shift));
    if (!undone) return null;
    add[eye] = undone;
  }
  return { ...scene.values, add };
}
