import { materials, type ToleranceSet } from '../../../tables';
import { standardOf } from '../../context';
import { isLess } from '../../exact';
import { leastForSafety } from '../../measures/safety';
import type { Order, OrderedLens } from '../../model';
import { amountInWords } from '../../words';
import type { Rule } from '../rule';
import { type AboutLens, lensesOf, tellPerPlace } from './lenses';

export const safetyLens: Rule = {
  code: 'safety-lens',
  family: 'order',
  level: 'warning',
  page: {
    checks:
      'A lens for protection or for a child is ordered of glass or with a slab-off, or one for protection thinner than any rating allows: less than 2.0 mm under a set of the United States.',
    levels: 'A warning; an error where the ordered thickness itself is too thin.',
    why: 'Eyes are lost behind lenses that break. Glass is tested lens by lens and is not sampled, and is not impact-rated; a slab-off is among the lenses that are left out of the drop test, so nothing proves it. A thickness below the least of every rating cannot be made safe by any test. Say another lens, or note who has agreed to this one.',
    example: { wrong: 'purpose safety\nlens glass-1.52', right: 'lens polycarbonate' },
    source:
      'Glass lens by lens, and slab-off left out of the test: FDA guidance of 2010 on 21 CFR 801.410. Thickness: ANSI Z87.1 as retold in a laboratory manual. That glass is not impact-rated: from memory of ANSI Z87.1.',
  },
  message: ({ what, purpose, thickness, least }) => {
    const use = purpose === 'child' ? 'a child' : 'protection';
    if (what === 'thin')
      return `${amountInWords(Number(thickness), 'mm')} is too thin for protection: no rating allows less than ${amountInWords(Number(least), 'mm')}.`;
    return what === 'glass'
      ? `Glass is ordered for ${use}. It is not impact-rated, and every lens of it has to be tested by itself. Is it meant?`
      : `A slab-off is ordered for ${use}. Such a lens is left out of the drop test, so nothing shows that it holds. Is it meant?`;
  },
  check: ({ order, context }, report) => {
    const purpose = order.purpose?.value;
    if (purpose !== 'safety' && purpose !== 'child') return;
    const { set } = standardOf(order, context);
    const made = lensesOf(order).filter(({ role }) => role === 'made' || role === 'balance');
    tellPerPlace(report, [
      ...made.flatMap((lens) => glass(lens, purpose)),
      ...made.flatMap((lens) => slab(lens, purpose)),
    ]);
    if (set)
      tellPerPlace(
        report,
        made.flatMap((lens) => thin(order, lens, set)),
      );
  },
};

export const isGlass = ({ material }: OrderedLens): boolean =>
  materials.find(({ id }) => id === material?.value.known)?.family === 'glass';

const glass = (lens: OrderedLens, purpose: string): AboutLens[] =>
  lens.material && isGlass(lens) ? [{ lens, place: lens.material.place, data: { what: 'glass', purpose } }] : [];

const slab = (lens: OrderedLens, purpose: string): AboutLens[] =>
  lens.slab ? [{ lens, place: lens.slab.place, data: { what: 'slab', purpose } }] : [];

function thin(order: Order, lens: OrderedLens, set: ToleranceSet): AboutLens[] {
  const least = leastForSafety(order, set);
  if (least === null) return [];
  const { centre, edge, min } = lens.thickness;
  return [centre, edge, min].flatMap((one) =>
    one && isLess(one.value, least)
      ? [{ lens, place: one.place, data: { what: 'thin', thickness: one.value, least }, level: 'error' as const }]
      : [],
  );
}
