import { isLess } from '../../exact';
import type { Place } from '../../finding';
import { isSegmented, isSingleVision } from '../../lens-kinds';
import { addAsRead } from '../../measures/add-as-read';
import { EYES, type OrderedLens } from '../../model';
import type { Read, ReadValues } from '../../reduce';
import { signed } from '../../words';
import type { Rule } from '../rule';

/** An eighth; less than that is what a drum shows between two settings of one power. Common practice, no source. */
const NOTHING = 0.125;

export const readNotOrdered: Rule = {
  code: 'read-not-ordered',
  family: 'bench',
  level: 'error',
  page: {
    checks:
      'A part was measured that the ordered lens does not have: an add, a segment or a near power on a single-vision lens, an intermediate addition on a bifocal.',
    why: 'What was measured is another lens than the ordered one, or the reading belongs to another tray. The distance powers alone may agree and say nothing of it.',
    example: { wrong: 'add +2.00 intermediate +1.00', right: 'add +2.00' },
    source:
      'Another product than the one ordered was delivered in one lens of five: a poster on spectacles bought on line, as reported by mivision and Healio, 2012.',
  },
  message: ({ eye, what, read }) =>
    `${eye} was measured with ${what}${read === null ? '' : ` of ${signed(Number(read))}`}, and none is ordered. Is it the right lens?`,
  check: ({ order: { lenses }, evaluation: { values } }, report) => {
    for (const eye of EYES) {
      const lens = lenses[eye];
      if (lens.role !== 'made' || lens.written === null) continue;
      for (const { what, has, of } of PARTS) {
        if (has(lens)) continue;
        for (const { place, read } of of(values, eye)) report(place, { eye, what, read }, { eye });
      }
    }
  },
};

interface Found {
  readonly place: Place;
  /** Dioptres; null for what is no power. */
  readonly read: number | null;
}

/** What only some lenses have, and what of a reading shows it. A new quantity of that sort is added here. */
const PARTS: readonly {
  readonly what: string;
  readonly has: (lens: OrderedLens) => boolean;
  readonly of: (values: ReadValues, eye: 'R' | 'L') => readonly Found[];
}[] = [
  {
    what: 'an add',
    has: (lens) => lens.add !== null || !isSingleVision(lens),
    of: (values, eye) => [...powered(addAsRead(values, eye) ?? undefined), ...powered(values.engravedAdd[eye])],
  },
  {
    what: 'a segment',
    has: (lens) => isSegmented(lens) || (lens.design === null && lens.add !== null),
    of: ({ figures }, eye) => [...seen(figures['segment-width']?.[eye]), ...seen(figures['segment-tilt']?.[eye])],
  },
  {
    what: 'a power at the near point',
    has: (lens) => !isSingleVision(lens) || lens.add !== null,
    of: ({ nearPower }, eye) => seen(nearPower[eye]),
  },
  {
    what: 'an intermediate addition',
    has: ({ design, intermediate }) =>
      intermediate !== null || design === null || !['single-vision', 'bifocal'].includes(design.value.type),
    of: ({ figures }, eye) => powered(figures.intermediate?.[eye]),
  },
];

const powered = (read: Read<number> | undefined): readonly Found[] =>
  read && !isLess(Math.abs(read.value), NOTHING) ? [{ place: read.place, read: read.value }] : [];

const seen = (read: Read<unknown> | undefined): readonly Found[] => (read ? [{ place: read.place, read: null }] : []);
