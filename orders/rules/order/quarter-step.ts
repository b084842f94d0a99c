import type { Place } from '../../finding';
import { signed } from '../../words';
import type { Rule } from '../rule';
import { type AboutLens, lensesOf, tellPerPlace } from './lenses';

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
        const odd: AboutLens[] = [];
        const look = (value: number | undefined, place: Place | undefined): void => {
          if (value !== undefined && place && !isOnEighth(value)) odd.push({ lens, place, data: { value } });
        };
        look(written?.value.sphere, written?.place);
        look(written?.value.cylinder, written?.place);
        look(add?.value, add?.place);
        look(intermediate?.value, intermediate?.place);
        return odd;
      }),
    );
  },
};

const isOnEighth = (value: number): boolean => Math.abs(value - Math.round(value * 8) / 8) <= CUT;
