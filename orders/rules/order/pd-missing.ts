import { tidy } from '../../exact';
import type { Order, OrderedLens } from '../../model';
import type { Rule } from '../rule';
import { isAttempted } from './attempted';
import { madeLenses } from './lenses';

export const pdMissing: Rule = {
  code: 'pd-missing',
  family: 'order',
  level: 'error',
  page: {
    checks: 'Lenses are to be glazed, and no interpupillary distance says where their centres belong.',
    why: 'Without a PD the lenses cannot be centred, and no reading of their place could fail.',
    example: { wrong: 'frame A 52 B 36 DBL 18', right: 'pd 63' },
    source: 'A missing PD was 23.3 % of office errors in a laboratory survey (Pacific University thesis, 1992).',
  },
  message: ({ only }) =>
    only ? `No PD for ${only}: that lens cannot be centred.` : 'No PD: these lenses cannot be centred.',
  check: (subject, report) => {
    const { order } = subject;
    if (order.supply !== 'glazed') return;
    const powered = madeLenses(order).filter(hasPower);
    const [first, other] = powered.filter((lens) => !isPlaced(order, lens));
    if (!first || isAttempted(subject, 'pd')) return;
    if (other || powered.length === 1) report(order.place);
    else report(order.place, { only: first.eye }, { eye: first.eye });
  },
};

/** A lens without power may stand anywhere. */
const hasPower = ({ written, add }: OrderedLens): boolean =>
  written !== null && (tidy(written.value.sphere) !== 0 || tidy(written.value.cylinder) !== 0 || add !== null);

/** Reading glasses are centred by the near PD alone. */
function isPlaced({ pd, nearPd }: Order, { eye, design }: OrderedLens): boolean {
  if (pd.binocular || pd[eye]) return true;
  const isForNear = design?.value.use === 'near' || design?.value.type === 'office';
  return isForNear && Boolean(nearPd.binocular ?? nearPd[eye]);
}
