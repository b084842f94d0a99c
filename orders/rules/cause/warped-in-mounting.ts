import type { Eye } from '../../../grammar';
import { madeUp } from '../../causes/explanation';
import { type Failed, isRefraction, type Scene } from '../../causes/scene';
import { isLess } from '../../exact';
import { amountInWords } from '../../words';
import { cause } from './cause';

export const warpedInMounting = cause(
  'warped-in-mounting',
  {
    checks:
      'The front of a lens has two curves while its power, cylinder and axis are right, and nothing else is outside; or the same lens was less warped before it was mounted. Level: info.',
    why: 'A rim that is too tight bends both surfaces together: the curves change and the power hardly does. A front that was ground with two curves would show in the cylinder. Common practice is to open the rim, let the lens settle and clock it again, and to edge it smaller if the warp stays.',
    example: { wrong: 'clock L +4.00 @ 090 / +5.12 @ 180', right: 'clock L +4.00 @ 090 / +4.12 @ 180' },
    source: 'Common practice, no source. The limit is that of the tolerance set that the order names.',
  },
  ({ lens, warp, before }) =>
    `The front of ${lens} is warped by ${amountInWords(Number(warp), 'D')}${before === null ? ' while its power, cylinder and axis are right' : `, and was by ${amountInWords(Number(before), 'D')} before it was mounted`}: the rim may be too tight.`,
  (scene) => {
    const warped = scene.failed.filter(({ quantity }) => quantity === 'warp');
    return warped.flatMap((one) => {
      const before = warpBefore(scene, one);
      const isAlone = warped.length === scene.failed.length && isRefractionRead(scene, one.eye);
      if (before === null && !isAlone) return [];
      return [madeUp(one.eye, [one], { lens: one.eye, warp: one.deviation, before }, before === null)];
    });
  },
);

/** Dioptres: as far as two readings of a lens measure may part. Common practice, no source. */
const LESS = 0.25;

/** What an earlier reading of the lens, not yet mounted, clocked; null where there is none or it was warped as much. */
function warpBefore({ order }: Scene, { eye, deviation }: Failed): number | null {
  const early = order.readings.filter(({ stage }) => stage !== 'final').flatMap(({ measurements }) => measurements);
  const warp = early.findLast((one) => one.quantity === 'warp' && one.eye === eye);
  return warp?.quantity === 'warp' && isLess(warp.value + LESS, deviation) ? warp.value : null;
}

const isRefractionRead = ({ evaluation }: Scene, eye: Eye | null): boolean =>
  evaluation.measures.some((one) => one.eye === eye && isRefraction(one) && one.outcome === 'pass');
