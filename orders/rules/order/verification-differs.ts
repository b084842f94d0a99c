import type { Power } from '../../../optics';
import { isLess } from '../../exact';
import { EYES, type Order, type OrderedLens, otherEye } from '../../model';
import { usePower } from '../../power-to-make';
import { powerInWords, signed } from '../../words';
import type { Report, Rule } from '../rule';
import { isCompensable } from './compensable';
import { powersApart } from './difference';

/** By how much the other eye has to fit better before the two lines are taken to be exchanged, dioptres. Ours. */
const BETTER = 0.25;
/** What the add may be changed by: half of it over an eighth would be another add. Ours. */
const ADD = { least: 0.25, share: 0.15 } as const;

export const verificationDiffers: Rule = {
  code: 'verification-differs',
  family: 'order',
  level: 'error',
  page: {
    checks:
      'What a focimeter should read is another lens than the ordered one: further away than conversion for vertex distance, tilt and wrap can take it, of the other sign, or nearer to the lens of the other eye.',
    why: 'The readings are held against the verification power. Where it is of another tray or has lost a sign, any such lens passes, and the order is never looked at again.',
    example: {
      wrong: 'verification R +4.37 -0.75 x 022 L -4.12 -1.00 x 168',
      right: 'verification R -4.37 -0.75 x 022 L -4.12 -1.00 x 168',
    },
    source:
      'Martin’s tilt formula (Durham Technical Community College, OPH 142, lens tilt) and the vergence formula, with 12° of tilt and of wrap and 4 mm where none is said; the rest of the bound is ours.',
  },
  message: ({ what, eye, ordered, verified }) =>
    what === 'eyes'
      ? 'The verification powers fit the lenses the other way round. Are the eyes exchanged?'
      : what === 'add'
        ? `${eye}: an add of ${ordered} is ordered and one of ${verified} is to be read. Conversion does not change it that far.`
        : `${eye}: ${ordered} is ordered and ${verified} is to be read. Conversion does not change a lens that far.`,
  needs: 'verification',
  check: ({ order }, report) => {
    if (areExchanged(order)) {
      const place = order.lenses.R.verification?.power.place;
      if (place) report(place, { what: 'eyes' });
      return;
    }
    for (const eye of EYES) compare(order, order.lenses[eye], report);
  },
};

function compare(order: Order, lens: OrderedLens, report: Report): void {
  const { eye, verification, written, add } = lens;
  if (!verification || !written) return;
  const ordered = usePower(lens)?.power ?? written.value;
  const verified = verification.power.value;
  if (!isCompensable(order, ordered, verified)) {
    const data = { what: 'power', eye, ordered: powerInWords(ordered), verified: powerInWords(verified) };
    report(verification.power.place, data, { eye, related: [written.place] });
  }
  if (!verification.add || !add) return;
  const most = Math.max(ADD.least, ADD.share * Math.abs(add.value));
  if (!isLess(most, Math.abs(verification.add.value - add.value))) return;
  const data = { what: 'add', eye, ordered: signed(add.value), verified: signed(verification.add.value) };
  report(verification.add.place, data, { eye, related: [add.place] });
}

/** Whether each verification power is much nearer to the order of the other eye than to its own. */
function areExchanged({ lenses }: Order): boolean {
  const [own, crossed] = [apart(lenses, (eye) => eye), apart(lenses, otherEye)];
  return own !== null && crossed !== null && isLess(crossed + BETTER, own) && isLess(crossed, own / 2);
}

function apart(lenses: Order['lenses'], of: (eye: 'R' | 'L') => 'R' | 'L'): number | null {
  let sum = 0;
  for (const eye of EYES) {
    const verified = lenses[eye].verification?.power.value;
    const ordered: Power | undefined = usePower(lenses[of(eye)])?.power;
    const one = verified && ordered ? powersApart(verified, ordered) : null;
    if (one === null) return null;
    sum += one;
  }
  return sum;
}
