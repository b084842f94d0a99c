import type { Placed } from '../../model';
import { signed } from '../../words';
import type { Rule } from '../rule';
import { lensesOf, tellPerPlace } from './lenses';

/** Two decimals of an eighth: .12 and .13 both stand for .125. */
const CUT = 0.0051;

export const quarterStep: Rule = {
  code: 'quarter-step',
  family: 'order',
  level: 'hint',
  page: {
    checks: 'An ordered power or add lies on no quarter and no eighth of a dioptre.',
    why: 'Prescriptions go by quarters, now and then by eighths. Another figure is a misread digit or a power converted for the position of wear; in that case the order says so.',
    example: { wrong: 'R -4.20 -0.75 x 022', right: 'R -4.25 -0.75 x 022' },
    source: 'Common practice, no source.',
  },
  message: ({ value }) => `Ordered is ${signed(Number(value))}, which is no quarter or eighth of a dioptre.`,
  check: ({ order }, report) => {
    if (order.compensation?.value === 'done' || order.compensation?.value === 'by-maker') return;
    tellPerPlace(
      report,
      lensesOf(order).flatMap((lens) => {
        const { written, add, intermediate } = lens;
        const power: readonly (Placed<number> | null)[] = written
          ? [written.value.sphere, written.value.cylinder].map((value) => ({ value, place: written.place }))
          : [];
        return [...power, add, intermediate].flatMap((one) =>
          one && !isOnEighth(one.value) ? [{ lens, place: one.place, data: { value: one.value } }] : [],
        );
      }),
    );
  },
};

const isOnEighth = (value: number): boolean => Math.abs(value - Math.round(value * 8) / 8) <= CUT;
