import type { Eye } from '../../../grammar';
import { dialReading, surfacePower } from '../../../optics';
import { attempt } from '../../attempt';
import { inLenses, withFigures } from '../../causes/lenses';
import type { Scene } from '../../causes/scene';
import { isWithin } from '../../exact';
import { EYES } from '../../model';
import { figure } from '../../words';
import { cause } from './cause';
import { eyesInWords } from './in-words';

export const baseCurveIndex = cause(
  'base-curve-index',
  {
    checks:
      'The base curve read fits the ordered one once it is converted between the index of the lens measure, 1.530, and that of the lens. Level: info.',
    why: 'A lens measure shows curves for one index. On a lens of another index the dial and the true power part by several tenths of a dioptre, and a good front looks wrong when one figure is held against the other. Common practice is to compare clock with clock, and to say which index a base curve is quoted for.',
    example: { wrong: 'base-curve R 4.73 L 4.73', right: 'base-curve R 6.00 L 6.00' },
    source: 'Exam-study page “lens clock conversion” (opterio.com). Conversion: (n - 1) / 0.530.',
  },
  (data) => {
    const each = (data.lenses as readonly { eye: Eye; read: number; wanted: number }[]).map(
      ({ eye, read, wanted }) => `${eye} reads ${figure(read)}, ordered ${figure(wanted)}`,
    );
    return `The base curve of ${eyesInWords(data)} looks taken at another index: ${each.join('; ')}. Converted between 1.530 and ${figure(Number(data.index), 3)} it fits.`;
  },
  (scene) =>
    [surfacePower, dialReading].flatMap((convert) =>
      inLenses(
        scene,
        (eyes) => {
          const index = indexOf(scene, eyes);
          // One lens measure reads both lenses, so both have to fit where both were read.
          if (index === null || eyes.length < curvesRead(scene)) return null;
          return withFigures(scene.values, 'base-curve', eyes, (read) => attempt(() => convert(read, index)) ?? read);
        },
        (eyes) => ({
          index: indexOf(scene, eyes),
          lenses: eyes.map((eye) => ({
            eye,
            read: scene.values.figures['base-curve']?.[eye]?.value,
            wanted: scene.order.lenses[eye].baseCurve?.value,
          })),
        }),
        { of: ['base-curve'], most: AS_READ },
      ),
    ),
);

/** What a lens measure is read to, dioptres. */
const AS_READ = 0.125;

const curvesRead = ({ values }: Scene): number => EYES.filter((eye) => values.figures['base-curve']?.[eye]).length;

/** The index of the lenses, where it is one and not that of the lens measure itself. */
function indexOf({ order }: Scene, eyes: readonly Eye[]): number | null {
  const [first, ...others] = EYES.filter((eye) => eyes.includes(eye)).map(
    (eye) => order.lenses[eye].material?.value.index,
  );
  return first == null || others.some((one) => one !== first) || isWithin(first - 1.53, 0.01) ? null : first;
}
