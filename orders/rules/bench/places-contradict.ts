import type { Eye } from '../../../grammar';
import { minusForm, type PrismVector } from '../../../optics';
import { attempt } from '../../attempt';
import { isLess, tidy } from '../../exact';
import type { Place } from '../../finding';
import { classOfPair } from '../../measures/measure';
import { type Along, acrossAsRead, heightsAsRead, isOfEach } from '../../measures/places';
import { meridianSlots } from '../../measures/power';
import { powerInPlace, prismsOfPlaces } from '../../measures/prism-of-places';
import { writtenPrism } from '../../measures/split-prism';
import { prismRead, unwantedIn } from '../../measures/wanted-prism';
import { EYES, type Order, type PrismPart } from '../../model';
import type { ReadValues } from '../../reduce';
import { prismInWords } from '../../words';
import type { Rule } from '../rule';

export const placesContradict: Rule = {
  code: 'places-contradict',
  family: 'bench',
  level: 'warning',
  bars: true,
  page: {
    checks:
      'The place of a centre and the prism of the same lens were read in one reading, and they do not belong together: by its power the lens would make another prism there than was measured.',
    why: 'Prism is the displacement of the centre in centimetres times the power. Where both were read and disagree, one of them was misread or stands at the wrong lens, and nobody knows which; so the pair is not accepted until they agree.',
    example: {
      wrong: 'optical-centres R 37.5 L 31.5\n    prism R 0 L 0',
      right: 'optical-centres R 31.5 L 31.5\n    prism R 0 L 0',
    },
    source:
      'Prentice’s rule: Jalie, The Indian Optician Nov–Dec 2024, pp. 139–140. That a place is found to 1 mm and prism to 0.25 is common practice, no source.',
  },
  message: ({ eye, made, read }) =>
    `${eye} stands where it makes ${prismInWords(made as PrismVector, eye as Eye)}, and ${prismInWords(read as PrismVector, eye as Eye)} was measured beyond the order. One of the two is wrong: read both again.`,
  check: ({ order, evaluation: { values } }, report) => {
    if (classOfPair(order) === 'progressive') return;
    const across = known(acrossAsRead(order, values));
    const upwards = known(heightsAsRead(order, values));
    const [places] = ((across ?? upwards) && prismsOfPlaces(order, values, across, upwards)) || [];
    if (!places) return;
    const at = (across ?? upwards)?.from;
    const found = EYES.map((eye) => comparedIn(order, values, eye, places[eye], at?.reading ?? -1));
    const [R, L] = found;
    for (const one of found) {
      if (!one || !at) continue;
      const other = one === R ? L : R;
      const apart = (part: PrismPart): number =>
        Math.abs(isOrdered(order, part) && other ? one.off[part] - other.off[part] : one.off[part]);
      const most = one.most + (other && (isOrdered(order, 'right') || isOrdered(order, 'up')) ? other.most : 0);
      if (!isLess(most, Math.max(across ? apart('right') : 0, upwards ? apart('up') : 0))) continue;
      const { eye, made, own, place } = one;
      report(at.place, { eye, made: tidied(made), read: tidied(own) }, { eye, related: [place] });
    }
  },
};

interface Compared {
  readonly eye: Eye;
  /** Prism by the place and prism measured, both beyond the order, and what the second has more. */
  readonly made: PrismVector;
  readonly own: PrismVector;
  readonly off: PrismVector;
  readonly most: number;
  readonly place: Place;
}

function comparedIn(order: Order, values: ReadValues, eye: Eye, made: PrismVector, reading: number): Compared | null {
  const read = prismRead(order, values, eye);
  const power = powerInPlace(order, values, order.lenses[eye]);
  const lens = power && attempt(() => minusForm(power));
  if (!read || !lens || read.reading !== reading) return null;
  const own = unwantedIn(read.value, order, eye);
  const most = PRISM + (PLACE / 10) * Math.abs(meridianSlots(lens)[0].of(lens));
  return { eye, made, own, off: { right: own.right - made.right, up: own.up - made.up }, most, place: read.place };
}

/** Prism that is ordered may be shared otherwise than written, and then only what both lenses do together is compared. */
const isOrdered = (order: Order, part: PrismPart): boolean =>
  EYES.some((eye) => tidy(writtenPrism(order, eye)[part]) !== 0);

/** How far a target and a centre may be misread, prism dioptres and millimetres. */
const PRISM = 0.25;
const PLACE = 1;

const known = (along: Along | null): Along | null => (along && isOfEach(along) ? along : null);

const tidied = ({ right, up }: PrismVector): PrismVector => ({ right: tidy(right), up: tidy(up) });
