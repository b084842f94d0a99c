import type { Block } from '../../../grammar';
import type { Place } from '../../finding';
import { axisFigures } from '../../words';
import type { Rule } from '../rule';
import { lensesOf, tellPerPlace } from './lenses';

/** What instruments print beside a cylinder of nothing. */
const PRINTED = 180;

export const axisWithoutCylinder: Rule = {
  code: 'axis-without-cylinder',
  family: 'order',
  level: ({ axis }) => (axis === PRINTED ? 'hint' : 'error'),
  page: {
    checks: 'A lens is ordered with an axis and a cylinder of 0.00.',
    levels: 'An error; a hint for axis 180, which instruments print beside every sphere.',
    why: 'An axis says that there is a cylinder. One may have slipped into the column of the sphere: a left lens of +0.25 x 153 was ordered as sphere +0.25, cylinder 0.00, axis 53, and passed two checks.',
    example: { wrong: 'R -4.50 0.00 x 053', right: 'R -4.50 -0.75 x 053' },
    source:
      'A wearer’s weblog about a retest at an optician (2009). Instruments that print 180: common practice, no source.',
  },
  message: ({ axis }) => `Axis ${axisFigures(Number(axis))}, and a cylinder of 0.00: in which column is the cylinder?`,
  needs: 'sphere',
  check: ({ order, block }, report) => {
    tellPerPlace(
      report,
      lensesOf(order).flatMap((lens) => {
        const found = lens.written && axisBesideNothing(block, lens.written.place);
        return found ? [{ lens, ...found }] : [];
      }),
    );
  },
};

/** The axis of the power at a place, when its cylinder is nothing. */
function axisBesideNothing(block: Block, { line, start }: Place): { place: Place; data: { axis: number } } | null {
  const node = block.lines[line]?.parsed(block.kind).node;
  const power = node?.kind === 'power' ? node.entries.find((one) => one.power?.start === start)?.power : null;
  if (power?.form !== 'sphero-cylinder' || power.cylinder?.value !== 0 || power.axis?.value == null) return null;
  const { axis } = power;
  return { place: { line, start: axis.start, end: axis.end }, data: { axis: axis.value as number } };
}
