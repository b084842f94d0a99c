import type { Power } from '../../../optics';
import { minusForm } from '../../../optics';
import { attempt, attemptOf } from '../../attempt';
import { isLess, tidy } from '../../exact';
import { powerAtReference } from '../../measures/power';
import type { TypedPower } from '../../model';
import { asPower } from '../../values';
import { axisFigures, powerInWords, signed } from '../../words';
import { type Rule, replace } from '../rule';
import { whileItCounts } from './counting';

export const linesOrCylinder: Rule = {
  code: 'lines-or-cylinder',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'A power of a reading fits the order if its second figure is taken the other way: as the position of the wide lines where a cylinder is written, or as a cylinder behind `lines`. As it stands it does not.',
    why: 'A drum shows two positions and an order has a sphere and a cylinder; both are two figures and an axis. Taken the wrong way the lens comes out wrong by dioptres, and the reading is to blame.',
    example: { wrong: 'R -4.50 -5.25 x 022', right: 'R lines -4.50 / -5.25 x 022' },
    fix: 'Writes the figures as drum positions, or as sphere and cylinder.',
    source: 'Common practice, no source.',
  },
  message: ({ asLines, other }) =>
    asLines
      ? `Are these two positions of the drum? Taken so the lens is ${powerInWords(other as Power)}, as it was ordered.`
      : `Is the second figure a cylinder? Taken so the lens is ${powerInWords(other as Power)}, as it was ordered.`,
  fixes: (site) => {
    const { asLines, first, second, axis } = site.finding.data;
    const figures = [signed(Number(first)), signed(Number(second))];
    const text = `${asLines ? `lines ${figures.join(' / ')}` : figures.join(' ')} x ${axisFigures(Number(axis))}`;
    return [replace(site, `Write ${text}`, text, false)];
  },
  check: ({ order, evaluation }, report) => {
    for (const [index, { measurements }] of order.readings.entries()) {
      for (const one of measurements) {
        if (one.quantity !== 'power' || one.eye === null || one.at === 'near-point' || one.at === 'top') continue;
        const ordered = powerAtReference(order, order.lenses[one.eye]);
        const found = ordered && ordered !== 'unstated' ? takenOtherwise(one.value, ordered) : null;
        if (!found) continue;
        report(one.place, { ...found }, { eye: one.eye, level: whileItCounts(evaluation, index, 'warning') });
      }
    }
  },
};

/** How well the other way has to fit and how badly the written one, dioptres of sphere or cylinder. */
const FITS = 0.25;
const MISSES = 0.75;

interface Otherwise {
  readonly asLines: boolean;
  readonly first: number;
  readonly second: number;
  readonly axis: number;
  readonly other: Power;
}

function takenOtherwise(typed: TypedPower, ordered: Power): Otherwise | null {
  const { sphere, cylinder, axis, form } = typed;
  if (axis === null || cylinder === 0 || form === 'meridians' || form === 'sphere') return null;
  const asLines = form !== 'lines';
  // Behind `lines` the cylinder was taken as the way between two positions; its second figure is the wide one.
  const second = asLines ? cylinder : tidy(sphere + cylinder);
  const now = attemptOf(minusForm, asPower(typed));
  if (!now || isLess(apart(now, ordered), MISSES)) return null;
  const other = attempt(() => minusForm(asPower({ ...typed, cylinder: tidy(asLines ? second - sphere : second) })));
  if (!other || isLess(FITS, apart(other, ordered))) return null;
  return { asLines, first: sphere, second, axis, other };
}

const apart = (a: Power, b: Power): number =>
  Math.max(Math.abs(a.sphere - b.sphere), Math.abs(a.cylinder - b.cylinder));
