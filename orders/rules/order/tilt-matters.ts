import type { Eye } from '../../../grammar';
import { difference, type Power, principalMeridians, transpose, wornPower } from '../../../optics';
import { attempt } from '../../attempt';
import { isLess, roundTo } from '../../exact';
import type { Order, OrderedLens } from '../../model';
import { usePower } from '../../power-to-make';
import { powerInWords } from '../../words';
import type { Rule } from '../rule';
import { madeLenses } from './lenses';
import { lineBelow } from './line-below';

/** What 10 degrees do to 6 dioptres, dioptres. */
const MATTERS = 0.25;
/** Where no material is said. From 1.5 to 1.9 the result changes by a few hundredths of a dioptre at most. */
const USUAL_INDEX = 1.5;

interface Worn {
  readonly eye: Eye;
  readonly written: Power;
  readonly worn: Power;
}

export const tiltMatters: Rule = {
  code: 'tilt-matters',
  family: 'order',
  level: 'warning',
  page: {
    checks:
      'Tilt and wrap, as ordered, change a power by a quarter dioptre or more in some meridian, and nothing says whether that is taken care of.',
    why: 'Such a lens reads right on the focimeter and acts as another one before the eye: +15.00 tilted by 10 degrees acts as +15.15 with a cylinder of +0.47. Either the power is compensated, or the optical centre is lowered by 1 mm for every 2 degrees of tilt.',
    example: { wrong: 'as-worn panto 12', right: 'compensation done' },
    fix: 'Says that the power is converted already, or that it is meant as written.',
    source:
      'Durham Technical Community College, OPH 142, lens tilt. From 6.00 D at 10 degrees on it is told: the bound is ours.',
  },
  message: ({ powers }) =>
    `As it sits, ${(powers as readonly Worn[])
      .map(({ eye, written, worn }) => `${eye} ${powerInWords(written)} acts as ${powerInWords(worn)}`)
      .join(' and ')}. Is the power compensated, or the centre lowered for the tilt?`,
  fixes: (site) => [
    lineBelow(site, 'The power is converted already', 'compensation done'),
    lineBelow(site, 'It is meant as written', 'compensation none'),
  ],
  needs: 'tilt',
  check: ({ order }, report) => {
    const { panto, wrap } = order.asWorn;
    const place = (panto ?? wrap)?.place;
    if (!place || order.compensation) return;
    const powers = madeLenses(order).flatMap((lens) => wornAs(order, lens) ?? []);
    if (powers.length > 0) report(place, { powers }, panto && wrap ? { related: [wrap.place] } : {});
  },
};

/** What the lens acts as, where that differs by what matters. */
function wornAs({ asWorn: { panto, wrap } }: Order, lens: OrderedLens): Worn | null {
  const written = lens.verification ? null : usePower(lens)?.power;
  if (!written) return null;
  const position = { eye: lens.eye, pantoscopic: panto?.value ?? 0, wrap: wrap?.value ?? 0 };
  return attempt(() => {
    const worn = wornPower(written, position, lens.material?.value.index ?? USUAL_INDEX);
    const change = Math.max(...principalMeridians(difference(worn, written)).map(({ power }) => Math.abs(power)));
    return isLess(roundTo(change, 2), MATTERS) ? null : { eye: lens.eye, written, worn: alike(worn, written) };
  });
}

/** In the cylinder form of the written power; a plus sphere gains a plus cylinder. */
function alike(worn: Power, { sphere, cylinder }: Power): Power {
  const isPlus = cylinder > 0 || (cylinder === 0 && sphere > 0);
  const { sphere: s, cylinder: c, axis } = isPlus ? transpose(worn) : worn;
  return { sphere: roundTo(s, 2), cylinder: roundTo(c, 2), axis: roundTo(axis, 0) || 180 };
}
