import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';

export const axisOrMeridian: Rule = {
  code: 'axis-or-meridian',
  family: 'writing',
  level: 'error',
  page: {
    checks:
      'An @ stands behind a cylinder, though it names the meridian in which a power acts and only x names an axis.',
    why: 'The cylinder acts across its axis. The two readings lie 90 degrees apart, and the wrong one leaves twice the cylinder.',
    example: { wrong: 'R -4.50 -0.75 @ 022', right: 'R -4.50 -0.75 x 022' },
    fix: 'Two fixes: the figure is the axis, or it is the meridian of the cylinder and the axis lies across.',
    source: 'Common practice, no source.',
  },
  message: () => 'Is this the axis (x) or the meridian in which the cylinder acts (@)? Nothing was taken.',
  fixes: bothReadings,
};

function bothReadings(site: FixSite): readonly Fix[] {
  const figure = /^@\s*(\d{1,3})$/.exec(typed(site))?.[1];
  const degrees = Number(figure);
  if (figure === undefined || degrees > 180) return [];
  const axis = degrees === 0 ? 180 : degrees;
  const across = axis > 90 ? axis - 90 : axis + 90;
  return [
    replace(site, `It is the axis: write ${asAxis(axis)}`, asAxis(axis), false),
    replace(site, `It is the meridian of the cylinder: write ${asAxis(across)}`, asAxis(across), false),
  ];
}

const asAxis = (degrees: number): string => `x ${String(degrees).padStart(3, '0')}`;
