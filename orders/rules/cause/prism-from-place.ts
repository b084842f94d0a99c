import type { Eye } from '../../../grammar';
import { type Displacement, type PrismVector, prentice } from '../../../optics';
import { attempt } from '../../attempt';
import { madeUp } from '../../causes/explanation';
import { type Scene, wantedPower } from '../../causes/scene';
import { isWithin } from '../../exact';
import type { Quantity } from '../../measures/measure';
import { type Along, acrossAsRead, heightsAsRead, isOfEach } from '../../measures/places';
import { inFrame } from '../../measures/prism-of-places';
import { unwantedIn } from '../../measures/wanted-prism';
import { EYES, type PerEye } from '../../model';
import { prismInWords } from '../../words';
import { cause } from './cause';

export const prismFromPlace = cause(
  'prism-from-place',
  {
    checks:
      'The prism read beyond the ordered one is what the displaced centres make by Prentice’s rule: one fault in two figures. Level: info.',
    why: 'A centre off its place makes prism of its displacement in centimetres times the power. When both were read and agree, nothing was ground wrong: common practice is to set or edge the lens anew at the right place, and a lens is not made again for prism that is not in it.',
    example: { wrong: 'pd 68.7 near 60\nprism R 1.32 BI L 1.24 BI', right: 'pd 63 near 60\nprism R 0 L 0' },
    source:
      'Prentice’s rule: Jalie, The Indian Optician Nov–Dec 2024, pp. 139–140. One fault in two figures: exam-study page on troubleshooting complaints (open-exam-prep.com).',
  },
  ({ lenses }) => {
    const each = (lenses as readonly { eye: Eye; read: PrismVector; made: PrismVector }[]).map(
      ({ eye, read, made }) => `${eye} reads ${prismInWords(read, eye)}, its place makes ${prismInWords(made, eye)}`,
    );
    return `The prism comes of displaced centres: ${each.join('; ')}.`;
  },
  (scene) => {
    const explains = scene.failed.filter(({ quantity }) => OF_PLACE.includes(quantity));
    const places = explains.length > 0 ? displacements(scene) : null;
    const made = places && madeByPlace(scene, places);
    if (!made) return [];
    const lenses = EYES.map((eye) => ({ eye, read: unwanted(scene, eye), made: made[eye] }));
    // A place that failed by itself is better told by how the two centres stand.
    const isPrism = explains.some(({ place }) => EYES.some((eye) => scene.values.prism[eye]?.place === place));
    return [madeUp(null, explains, { lenses }, !isPrism)];
  },
);

const OF_PLACE: readonly Quantity[] = ['pd', 'prism', 'prism-horizontal', 'prism-vertical', 'height-difference'];

/** Prism dioptres: less is no cause of anything, and a target is read to this or to a share of a larger prism. Common practice, no source. */
const LEAST = 0.5;
const AS_READ = 0.25;
const SHARE = 0.15;

/** Where each centre stands from its place, as the examiner sees it; null where neither distance nor heights say it. */
function displacements({ order, values }: Scene): PerEye<Displacement> | null {
  const out = eachOrHalf(acrossAsRead(order, values));
  const up = eachOnly(heightsAsRead(order, values));
  if (!out && !up) return null;
  return { R: inFrame('R', out?.R ?? 0, up?.R ?? 0), L: inFrame('L', out?.L ?? 0, up?.L ?? 0) };
}

/** How far each centre stands out, millimetres; of a sum each lens has half. */
function eachOrHalf(across: Along | null): PerEye<number> | null {
  if (!across || across.ofCentres) return null;
  return eachOnly(across) ?? { R: across.error / 2, L: across.error / 2 };
}

const eachOnly = (along: Along | null): PerEye<number> | null =>
  along && isOfEach(along) ? (along.ways[0] ?? null) : null;

/** The prism that the places make, where that is what was read in both lenses. */
function madeByPlace(scene: Scene, places: PerEye<Displacement>): PerEye<PrismVector> | null {
  const made = { R: prismAt('R'), L: prismAt('L') };
  function prismAt(eye: Eye): PrismVector | null {
    const power = wantedPower(scene, eye);
    return power && attempt(() => prentice(power, places[eye]));
  }
  if (!made.R || !made.L || !EYES.some((eye) => sizeOf(made[eye] as PrismVector) >= LEAST)) return null;
  const agrees = EYES.every((eye) => {
    const [read, expected] = [unwanted(scene, eye), made[eye] as PrismVector];
    const rest = read && sizeOf({ right: read.right - expected.right, up: read.up - expected.up });
    return rest !== null && isWithin(rest, AS_READ + SHARE * sizeOf(expected));
  });
  return agrees ? (made as PerEye<PrismVector>) : null;
}

const sizeOf = ({ right, up }: PrismVector): number => Math.hypot(right, up);

function unwanted({ order, values }: Scene, eye: Eye): PrismVector | null {
  const read = values.prism[eye];
  return read ? unwantedIn(read.value, order, eye) : null;
}
