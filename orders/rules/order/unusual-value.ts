import { roundTo } from '../../exact';
import type { Rule } from '../rule';
import { lensesOf, tellPerPlace } from './lenses';
import { type Found, type UsualRange, unusualOfLens, unusualOfOrder } from './usual-ranges';

export const unusualValue: Rule = {
  code: 'unusual-value',
  family: 'order',
  level: 'warning',
  page: {
    checks:
      'A figure lies outside what is usual: a sphere beyond 20.00, a cylinder beyond 8.00, an add outside 0.50 to 4.00, prism beyond 12.00 in one lens, a base curve outside 0 to 12, a centre thickness outside 0.8 to 15 mm, an edge outside 0.5 to 15 mm, a blank outside 45 to 90 mm, an inset outside -1 to 6 mm, an index outside 1.45 to 1.95, a segment outside 12 to 50 mm wide, a corridor outside 6 to 22 mm, A outside 25 to 75, B outside 14 to 70, DBL outside 8 to 30 mm, a vertex distance outside 5 to 25 mm, a tilt outside -5° to 25°, a wrap outside -5° to 30°.',
    why: 'Such figures exist, and a slip makes them far more often: a lost point, a figure in the wrong box, the near power in place of the add.',
    example: { wrong: 'add +5.50', right: 'add +2.00' },
    source: 'The bounds are common practice, no source.',
  },
  message: (data) => {
    const { what, unit, least, most, reason, value } = data as unknown as UsualRange & { readonly value: number };
    return `${what.charAt(0).toUpperCase() + what.slice(1)} ${inUnit(value, unit)} is unusual: mostly ${bounds(least, most, unit)}; ${reason}.`;
  },
  check: ({ order }, report) => {
    const ofLenses = lensesOf(order)
      .filter(({ role }) => role !== 'absent')
      .flatMap((lens) => unusualOfLens(lens).map((one) => ({ lens, what: one.what, ...told(one) })));
    // A sphere and a cylinder stand at one place, and are two figures.
    for (const what of new Set(ofLenses.map((one) => one.what)))
      tellPerPlace(
        report,
        ofLenses.filter((one) => one.what === what),
      );
    for (const one of unusualOfOrder(order)) {
      const { place, data } = told(one);
      report(place, data);
    }
  },
};

const told = ({ value: { value, place }, ...range }: Found) => ({ place, data: { ...range, value } });

const SYMBOLS = { D: ' D', mm: ' mm', deg: '°', prism: ' Δ', '': '' } as const;

const inUnit = (value: number, unit: UsualRange['unit']): string =>
  `${unit === 'D' ? value.toFixed(2) : roundTo(value, 2)}${SYMBOLS[unit]}`;

const bounds = (least: number, most: number, unit: UsualRange['unit']): string =>
  least === -most ? `up to ${inUnit(most, unit)} either way` : `${least} to ${inUnit(most, unit)}`;
