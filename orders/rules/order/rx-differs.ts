import { nearPower, type Power, type PrismVector, transpose } from '../../../optics';
import { attempt } from '../../attempt';
import { isLess, isSame } from '../../exact';
import type { Order, OrderedLens } from '../../model';
import { powerInWords, signed } from '../../words';
import { type Report, type Rule, replace } from '../rule';
import { isCompensable } from './compensable';
import { pairsApart, powersApart } from './difference';
import { lensesOf } from './lenses';

/** More than the rounding of an axis to whole degrees in a weak cylinder. */
const SAME = 0.01;

export const rxDiffers: Rule = {
  code: 'rx-differs',
  family: 'order',
  level: 'error',
  page: {
    checks:
      'The prescription stands beside the order, and the order is another lens: in its power, its add, or the prism between the eyes. The cylinder form does not matter, nor how prism is shared, nor what conversion for vertex distance, tilt and wrap can do to a power that is said to be converted. A change of the form that was done by halves is named.',
    why: 'An axis of 153 became 53 on a printed form. The finished pair was read against the slip and passed twice; only the prescription would have shown it. A transposition has three steps: the cylinder goes into the sphere, its sign turns, the axis turns by 90. Leave one out and it is another lens that looks like the same one.',
    example: { wrong: 'rx R -4.50 -0.75 x 122', right: 'rx R -4.50 -0.75 x 022' },
    fix: 'Writes the prescribed power into the order.',
    source:
      'A wearer’s weblog on a retest of spectacles, 2009. The three steps: National Federation of Opticianry Schools, transposition.',
  },
  message: ({ what, ordered, prescribed, half, whole }) => {
    if (what === 'prism') return 'The prism between the eyes is not the prescribed one.';
    const wanted = what === 'add' ? `an add of ${prescribed}` : prescribed;
    const said = `Prescribed was ${wanted}; ordered is ${ordered}`;
    return half ? `${said}: ${HALVES[half as Half]}. Transposed it is ${whole}.` : `${said}.`;
  },
  fixes: (site) => {
    const { what, prescribed, whole } = site.finding.data;
    if (what === 'prism') return [];
    const written = replace(site, `Write ${prescribed}`, String(prescribed), false);
    return whole ? [replace(site, `Write ${whole}`, String(whole), false), written] : [written];
  },
  needs: 'other-power',
  check: ({ order }, report) => {
    for (const lens of lensesOf(order)) {
      comparePower(order, lens, report);
      compareAdd(lens, report);
    }
    comparePrism(order, report);
  },
};

function comparePower(order: Order, { eye, written, add, rx }: OrderedLens, report: Report): void {
  if (!rx?.power || !written) return;
  const prescribed = rx.power.value;
  // A power that is said to be converted may differ by what conversion can do, and by no more.
  const how = order.compensation?.value;
  if ((how === 'done' || how === 'by-maker') && isCompensable(order, prescribed, written.value)) return;
  // A pair for reading may be ordered by its near power, without an add.
  const forNear = rx.add && !add ? attempt(() => nearPower(prescribed, rx.add?.value ?? 0)) : null;
  if (!differ(prescribed, written.value) || (forNear && !differ(forNear, written.value))) return;
  const data = {
    what: 'power',
    ordered: powerInWords(written.value),
    prescribed: powerInWords(prescribed),
    ...halfDone(prescribed, written.value),
  };
  report(written.place, data, { eye, related: [rx.power.place] });
}

/** Which step of a change of the form was done or left out. */
type Half = keyof typeof HALVES;

const HALVES = {
  'sign-only': 'only the sign of the cylinder was turned',
  'sphere-left': 'the sign and the axis were turned, and the sphere was left',
  'axis-left': 'the sphere and the sign were turned, and the axis was left',
  'sign-left': 'the sphere and the axis were turned, and the sign of the cylinder was left',
  'axis-only': 'only the axis was turned by 90°',
} as const;

/** A transposition by halves, with the whole one; nothing where the order is another lens in another way. */
function halfDone(from: Power, to: Power): { readonly half: Half; readonly whole: string } | null {
  if (from.cylinder === 0 || to.cylinder === 0) return null;
  const whole = attempt(() => transpose(from));
  if (!whole) return null;
  const sphere = isSame(to.sphere, whole.sphere);
  const sign = isSame(to.cylinder, whole.cylinder);
  const axis = isSame(to.axis, whole.axis);
  // What was not done stands as it was; anything else is no transposition.
  if (!sphere && !isSame(to.sphere, from.sphere)) return null;
  if (!sign && !isSame(to.cylinder, from.cylinder)) return null;
  if (!axis && !isSame(to.axis, from.axis)) return null;
  const half = STEPS[`${sphere ? 'S' : ''}${sign ? 'C' : ''}${axis ? 'A' : ''}`];
  return half ? { half, whole: powerInWords(whole) } : null;
}

/** By the steps that were done: sphere, sign of the cylinder, axis. */
const STEPS: Readonly<Record<string, Half>> = {
  C: 'sign-only',
  CA: 'sphere-left',
  SC: 'axis-left',
  SA: 'sign-left',
  A: 'axis-only',
};

const differ = (first: Power, second: Power): boolean => isLess(SAME, powersApart(first, second) ?? 0);

function compareAdd({ eye, add, rx }: OrderedLens, report: Report): void {
  if (!rx?.add || !add || isSame(rx.add.value, add.value)) return;
  const data = { what: 'add', ordered: signed(add.value), prescribed: signed(rx.add.value) };
  report(add.place, data, { eye, related: [rx.add.place] });
}

const NONE: PrismVector = { right: 0, up: 0 };

function comparePrism({ lenses: { R, L } }: Order, report: Report): void {
  const prescribed = [R, L].flatMap(({ rx }) => (rx?.prism ? [rx.prism] : []));
  const [first] = prescribed;
  if (!first || [R, L].some(({ prismUnclear, rx }) => prismUnclear || !rx)) return;
  const ordered = { R: R.prism?.value ?? NONE, L: L.prism?.value ?? NONE };
  const wanted = { R: R.rx?.prism?.value ?? NONE, L: L.rx?.prism?.value ?? NONE };
  if (isLess(SAME, pairsApart(ordered, wanted) ?? 0)) {
    const place = R.prism?.place ?? L.prism?.place ?? first.place;
    report(
      place,
      { what: 'prism' },
      { related: prescribed.map((one) => one.place).filter(({ line }) => line !== place.line) },
    );
  }
}
