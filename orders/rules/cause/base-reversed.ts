import type { Eye } from '../../../grammar';
import type { PrismVector } from '../../../optics';
import { inLenses, mapped } from '../../causes/lenses';
import type { Scene } from '../../causes/scene';
import { isLess } from '../../exact';
import type { Quantity } from '../../measures/measure';
import { orderedPrism } from '../../measures/wanted-prism';
import type { ReadValues } from '../../reduce';
import { prismInWords } from '../../words';
import { cause } from './cause';
import { eyesInWords } from './in-words';

export const baseReversed = cause(
  'base-reversed',
  {
    checks: 'The prism read fits the ordered one when its base is turned: in for out, or up for down. Level: info.',
    why: 'The target moves to the base side, but plus and minus lenses have to be moved to opposite sides for it, so a base is easily turned at the layout, and as easily in the reading. Common practice is to look once more to which side the target stands, with the lens the right way up.',
    example: { wrong: 'prism R 2.00 BO L 0', right: 'prism R 2.00 BI L 0' },
    source: 'Opticians’ forum, “prism confusion”; exam-study page “how to read prism on a lensmeter” (opterio.com).',
  },
  (data) => {
    const each = (data.lenses as readonly { eye: Eye; read: PrismVector; wanted: PrismVector }[]).map(
      ({ eye, read, wanted }) => `${eye} reads ${prismInWords(read, eye)}, ordered ${prismInWords(wanted, eye)}`,
    );
    return `The base of ${eyesInWords(data)} looks turned: ${each.join('; ')}.`;
  },
  (scene) =>
    (['right', 'up'] as const).flatMap((part) =>
      inLenses(
        scene,
        (eyes) => withBasesTurned(scene, eyes, part),
        (eyes) => ({
          lenses: eyes.map((eye) => ({
            eye,
            read: scene.values.prism[eye]?.value,
            wanted: orderedPrism(scene.order, eye),
          })),
        }),
        // Failures of prism mostly belong to the pair, so none is asked of each eye.
        { of: PLACING, eyes: [] },
      ),
    ),
);

/** What is told of prism, or of the place where that comes out worse. */
const PLACING: readonly Quantity[] = ['prism', 'prism-horizontal', 'prism-vertical', 'pd', 'height-difference'];

/** A smaller prism (prism dioptres), turned, is hardly outside anything. Common practice, no source. */
const LEAST = 0.5;

function withBasesTurned({ order, values }: Scene, eyes: readonly Eye[], part: 'right' | 'up'): ReadValues | null {
  const prism = { ...values.prism };
  for (const eye of eyes) {
    const read = prism[eye];
    if (!read || isLess(Math.abs(orderedPrism(order, eye)[part]), LEAST)) return null;
    prism[eye] = mapped(read, (one) => ({ ...one, [part]: -one[part] })) ?? read;
  }
  return { ...values, prism };
}
