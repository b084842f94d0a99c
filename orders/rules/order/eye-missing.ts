import type { Eye } from '../../../grammar';
import type { Place } from '../../finding';
import { EYES, type Order, otherEye } from '../../model';
import type { Rule } from '../rule';
import { lineBelow } from './line-below';

export const eyeMissing: Rule = {
  code: 'eye-missing',
  family: 'order',
  level: 'error',
  page: {
    checks:
      'Only one lens is ordered, and no line says that this is meant; or the lens that alone is to be made has no power.',
    why: 'A lost line and an order for one lens look the same. The laboratory stops the job, or makes half of it.',
    example: { wrong: 'R -4.50 -0.75 x 022', right: 'make R' },
    fix: 'Says that only this lens is to be made. A lens that stays in the frame is written with `kept`, a lens without a power of its own with `balance`.',
    source: 'Common practice, no source.',
  },
  message: ({ missing, asked }) =>
    asked
      ? `Only the ${NAMES[missing as Eye]} lens is to be made, and it has no power.`
      : `The ${NAMES[missing as Eye]} lens is missing. If only the other one is to be made, say so.`,
  fixes: (site) => {
    const { asked, missing } = site.finding.data;
    const present = otherEye(missing as Eye);
    return asked ? [] : [lineBelow(site, `Only the ${NAMES[present]} lens is to be made`, `make ${present}`)];
  },
  check: ({ order }, report) => {
    const present = EYES.filter((eye) => placeOf(order, eye) !== null);
    const asked = EYES.filter((eye) => order.make[eye]);
    for (const eye of asked) {
      const place = order.make[eye];
      if (place && !present.includes(eye)) report(place, { missing: eye, asked: true }, { eye });
    }
    const [only] = present;
    const place = only && placeOf(order, only);
    if (only && place && present.length === 1 && asked.length === 0)
      report(place, { missing: otherEye(only) }, { eye: otherEye(only) });
  },
};

const NAMES: Readonly<Record<Eye, string>> = { R: 'right', L: 'left' };

/** Where an order speaks of the lens before an eye; null where it does not. */
function placeOf({ lenses, place }: Order, eye: Eye): Place | null {
  const { named, written, role, kept, balance } = lenses[eye];
  const other = role === 'kept' || role === 'balance' ? (kept?.power?.place ?? balance?.power?.place ?? place) : null;
  return named ?? written?.place ?? other;
}
