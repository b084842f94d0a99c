import type { Eye } from '../../../grammar';
import { madeUp } from '../../causes/explanation';
import type { Failed, Scene } from '../../causes/scene';
import { isWithin } from '../../exact';
import type { Design } from '../../model';
import { amountInWords } from '../../words';
import { cause } from './cause';

export const otherSegment = cause(
  'other-segment',
  {
    checks: 'The width read is that of another usual segment of the same shape. Level: info.',
    why: 'Segments come in a few widths, and nothing in making a lens changes one into another: the blank was taken from the wrong box. Common practice is to look at both lenses and at the next jobs from that box, since another lens has to be made in any case.',
    example: { wrong: 'segment R 35.0', right: 'segment R 28.0' },
    source: 'Usual widths from memory; common practice, no source.',
  },
  ({ lenses }) =>
    (lenses as readonly { eye: Eye; read: number; usual: number; ordered: number; shape: string }[])
      .map(
        ({ eye, read, usual, ordered, shape }) =>
          `${eye} looks like a ${shape} ${usual}: ${amountInWords(read, 'mm')} wide, and ${ordered} is ordered`,
      )
      .join('; ')
      .concat('. The blank may be another one.'),
  (scene) => {
    const found = scene.failed.flatMap((one) => {
      const other = otherWidth(scene, one);
      return other === null ? [] : [{ failed: one, other }];
    });
    if (found.length === 0) return [];
    const eye = found.length === 1 ? (found[0]?.failed.eye ?? null) : null;
    return [
      madeUp(eye, [...found.map(({ failed }) => failed), ...differences(scene)], {
        lenses: found.map(({ other }) => other),
      }),
    ];
  },
);

/** Widths in millimetres, from memory. */
const USUAL: Readonly<Record<Exclude<NonNullable<Design['shape']>, 'full-width'>, readonly number[]>> = {
  'flat-top': [22, 25, 28, 35, 40, 45],
  'curve-top': [22, 25, 28, 40],
  round: [22, 24, 25, 28, 38, 40, 45],
};

/** Millimetres: what a width is read to with a ruler. Common practice, no source. */
const AS_READ = 0.5;

function otherWidth({ order }: Scene, { quantity, eye, read, ordered }: Failed) {
  const shape = eye && order.lenses[eye].design?.value.shape;
  if (quantity !== 'segment-width' || !eye || !shape || shape === 'full-width' || read === null) return null;
  const near = USUAL[shape].filter((width) => width !== ordered && isWithin(width - read, AS_READ));
  const usual = near.sort((a, b) => Math.abs(a - read) - Math.abs(b - read))[0];
  return usual === undefined ? null : { eye, read, usual, ordered, shape };
}

/** One wrong width makes the pair unlike as well. */
const differences = ({ failed }: Scene): readonly Failed[] =>
  failed.filter(({ quantity }) => quantity === 'segment-width-difference');
