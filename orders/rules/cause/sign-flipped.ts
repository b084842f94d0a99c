import { normalAxis, type Power } from '../../../optics';
import { inPowers } from '../../causes/lenses';
import { cause } from './cause';
import { eyesInWords, lensesInWords } from './in-words';

export const signFlipped = cause(
  'sign-flipped',
  {
    checks:
      'The reading fits the order when a sign is turned: of the whole power, of the sphere, or of the cylinder. Level: info.',
    why: 'A lost or misread minus moves a lens by twice its power. It happens when an order is copied and when a reading is written down, so common practice is to read once more, and then to look for the slip between the order and the lens before a new one is made.',
    example: { wrong: 'R +4.50 -0.75 x 022', right: 'R -4.50 -0.75 x 022' },
    source:
      'Pacific University thesis 1992, communication between optometrist and optical laboratory: 11 % of office errors are signs.',
  },
  (data) => `The sign of ${PARTS[data.part as Part]} of ${eyesInWords(data)} looks turned: ${lensesInWords(data)}.`,
  (scene) => UNDOINGS.flatMap(([part, undo]) => inPowers(scene, undo, { part })),
);

type Part = 'sphere' | 'whole' | 'cylinder';

const PARTS: Readonly<Record<Part, string>> = {
  sphere: 'the sphere',
  whole: 'the whole power',
  cylinder: 'the cylinder',
};

/** Below this sphere (dioptres) a turned sign is as small as an error of making. Common practice, no source. */
const LEAST_SPHERE = 0.5;

const inPlusForm = ({ sphere, cylinder, axis }: Power): Power => ({
  sphere: sphere + cylinder,
  cylinder: -cylinder,
  axis: normalAxis(axis + 90),
});

const sphereTurned = (lens: Power): Power | null =>
  Math.abs(lens.sphere) < LEAST_SPHERE ? null : { ...lens, sphere: -lens.sphere };

const cylinderTurned = (lens: Power): Power | null =>
  Math.abs(lens.cylinder) < LEAST_SPHERE ? null : { ...lens, cylinder: -lens.cylinder };

/** A sphere alone is one of the two forms in which the power may have been written. */
const UNDOINGS: readonly (readonly [part: Part, undo: (read: Power) => Power | null])[] = [
  ['sphere', sphereTurned],
  ['sphere', (read) => sphereTurned(inPlusForm(read))],
  ['whole', (read) => sphereTurned({ ...read, cylinder: -read.cylinder })],
  ['cylinder', cylinderTurned],
  ['cylinder', (read) => cylinderTurned(inPlusForm(read))],
];
