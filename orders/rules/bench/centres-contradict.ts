import { isWithin, tidy } from '../../exact';
import { isProgressive } from '../../lens-kinds';
import { EYES, type Order } from '../../model';
import { placingPd } from '../../placing-pd';
import type { Read } from '../../reduce';
import type { Rule } from '../rule';

/** Two distances, each read to half a millimetre. */
const ALLOWED = 1;

export const centresContradict: Rule = {
  code: 'centres-contradict',
  family: 'bench',
  level: 'error',
  page: {
    checks:
      'One reading says the PD and the distance of the optical centres, no horizontal prism is ordered, and the two differ by more than a millimetre.',
    why: 'Without ordered prism the PD is measured between the optical centres, so the two are one distance. Where they differ, one of them is wrong, and the verdict would hang on which is judged.',
    example: { wrong: 'optical-centres 67', right: 'optical-centres 63' },
    source: 'Common practice, no source. Each figure is read to half a millimetre.',
  },
  message: ({ whose, centres, pd }) =>
    `${whose ? `${whose}: the optical centre stands` : 'The optical centres stand'} at ${centres} mm and the PD was measured as ${pd} mm. No prism is ordered, so both are one distance. Measure again.`,
  check: ({ order, evaluation: { values } }, report) => {
    const [centres, pd] = [values.figures['optical-centres'], values.figures.pd];
    if (!centres || !pd || !isOneDistance(order)) return;
    const pairs = [
      [null, whole(centres), whole(pd)] as const,
      ...EYES.map((eye) => [eye, one(centres[eye]), one(pd[eye])] as const),
    ];
    for (const [whose, spotted, measured] of pairs) {
      if (!spotted || !measured || spotted.from.reading !== measured.from.reading) continue;
      if (isWithin(spotted.value - measured.value, ALLOWED)) continue;
      const data = { whose, centres: tidy(spotted.value), pd: tidy(measured.value) };
      report(spotted.from.place, data, { ...(whose ? { eye: whose } : {}), related: [measured.from.place] });
      return;
    }
  },
};

/** Prism moves the reference point off the centre, a corridor has no centre, and a pair for near is read by its near PD. */
function isOneDistance(order: Order): boolean {
  if (placingPd(order).isNear) return false;
  return EYES.every((eye) => {
    const lens = order.lenses[eye];
    return !isProgressive(lens) && !lens.prismUnclear && (lens.prism?.value.right ?? 0) === 0;
  });
}

type Sides = Partial<Record<'R' | 'L' | 'pair', Read<number>>>;

interface Length {
  readonly value: number;
  readonly from: Read<number>;
}

const one = (from: Read<number> | undefined): Length | null => (from ? { value: from.value, from } : null);

const whole = ({ pair, R, L }: Sides): Length | null =>
  pair ? one(pair) : R && L && R.reading === L.reading ? { value: R.value + L.value, from: R } : null;
