import { nearPower, type Power, type PrismVector } from '../../../optics';
import { attempt } from '../../attempt';
import { isLess, isSame } from '../../exact';
import type { Order, OrderedLens } from '../../model';
import { powerInWords, signed } from '../../words';
import { type Report, type Rule, replace } from '../rule';
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
      'The prescription stands beside the order, and the order is another lens: in its power, its add, or the prism between the eyes. The cylinder form does not matter, nor how prism is shared, nor a power that is said to be converted.',
    why: 'An axis of 153 became 53 on a printed form. The finished pair was read against the slip and passed twice; only the prescription would have shown it.',
    example: { wrong: 'rx R -4.50 -0.75 x 122', right: 'rx R -4.50 -0.75 x 022' },
    fix: 'Writes the prescribed power into the order.',
    source: 'A wearer’s weblog on a retest of spectacles, 2009.',
  },
  message: ({ what, ordered, prescribed }) =>
    what === 'prism'
      ? 'The prism between the eyes is not the prescribed one.'
      : `Prescribed was ${what === 'add' ? `an add of ${prescribed}` : prescribed}; ordered is ${ordered}.`,
  fixes: (site) => {
    const { what, prescribed } = site.finding.data;
    return what === 'prism' ? [] : [replace(site, `Write ${prescribed}`, String(prescribed), false)];
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

function comparePower({ compensation }: Order, { eye, written, add, rx }: OrderedLens, report: Report): void {
  if (!rx?.power || !written || compensation?.value === 'done' || compensation?.value === 'by-maker') return;
  const prescribed = rx.power.value;
  // A pair for reading may be ordered by its near power, without an add.
  const forNear = rx.add && !add ? attempt(() => nearPower(prescribed, rx.add?.value ?? 0)) : null;
  if (!differ(prescribed, written.value) || (forNear && !differ(forNear, written.value))) return;
  const data = { what: 'power', ordered: powerInWords(written.value), prescribed: powerInWords(prescribed) };
  report(written.place, data, { eye, related: [rx.power.place] });
}

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
