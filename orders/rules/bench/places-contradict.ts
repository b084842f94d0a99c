import type { Eye } from '../../../grammar';
import { minusForm, type PrismVector } from '../../../optics';
import { attempt } from '../../attempt';
import { isLess, tidy } from '../../exact';
import { classOfPair } from '../../measures/measure';
import { type Along, acrossAsRead, heightsAsRead, isOfEach } from '../../measures/places';
import { meridianSlots } from '../../measures/power';
import { powerInPlace, prismsOfPlaces } from '../../measures/prism-of-places';
import { prismRead, unwantedIn } from '../../measures/wanted-prism';
import { EYES } from '../../model';
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
    for (const eye of EYES) {
      const read = prismRead(order, values, eye);
      const at = (across ?? upwards)?.from;
      const power = powerInPlace(order, values, order.lenses[eye]);
      const lens = power && attempt(() => minusForm(power));
      if (!read || !at || !lens || read.reading !== at.reading) continue;
      const own = unwantedIn(read.value, order, eye);
      const made = places[eye];
      const most = PRISM + (PLACE / 10) * Math.abs(meridianSlots(lens)[0].of(lens));
      const right = across ? own.right - made.right : 0;
      const up = upwards ? own.up - made.up : 0;
      if (!isLess(most, Math.max(Math.abs(right), Math.abs(up)))) continue;
      report(at.place, { eye, made: tidied(made), read: tidied(own) }, { eye, related: [read.place] });
    }
  },
};

/** How far a target and a centre may be misread, prism dioptres and millimetres. */
const PRISM = 0.25;
const PLACE = 1;

const known = (along: Along | null): Along | null => (along && isOfEach(along) ? along : null);

const tidied = ({ right, up }: PrismVector): PrismVector => ({ right: tidy(right), up: tidy(up) });
