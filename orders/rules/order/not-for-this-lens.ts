import type { Place } from '../../finding';
import { hasReadingPart, isProgressive, isSegmented } from '../../lens-kinds';
import type { OrderedLens, Placed } from '../../model';
import type { Rule } from '../rule';
import { madeLenses, tellPerPlace } from './lenses';

export const notForThisLens: Rule = {
  code: 'not-for-this-lens',
  family: 'order',
  level: 'error',
  page: {
    checks:
      'Something is ordered that this kind of lens does not have: prism thinning, a slab-off or an inset on a single-vision lens.',
    why: 'Either the design is another one, or the line belongs to another job. Prism thinning and a slab-off on a lens of one power would be unordered prism before the eye.',
    example: { wrong: 'design single-vision', right: 'design progressive corridor 14' },
    source:
      'Thinning belongs to progressives and full-width segments: lab training page, “neutralizing progressives with prism thinning”. A slab-off levels a reading part: opticaltraining.com, ABO, lens materials and coatings, page 16. The inset is that of a segment.',
  },
  message: ({ what, needs }) =>
    `A single-vision lens has no ${what}; it belongs to ${needs}. Which of the two is right?`,
  check: ({ order }, report) => {
    tellPerPlace(
      report,
      madeLenses(order).flatMap((lens) =>
        PARTS.flatMap(({ what, needs, of, fits }) => {
          const place = fits(lens) ? null : of(lens);
          return place ? [{ lens, place, data: { what, needs } }] : [];
        }),
      ),
    );
  },
};

/** Everything that only some kinds of lenses have; a line of the notation of that sort is added here. */
const PARTS: readonly {
  readonly what: string;
  readonly needs: string;
  readonly of: (lens: OrderedLens) => Place | null;
  readonly fits: (lens: OrderedLens) => boolean;
}[] = [
  {
    what: 'prism thinning',
    needs: 'a progressive or a multifocal',
    of: ({ thinning }) => (thinning && thinning.value !== 0 ? thinning.place : null),
    fits: (lens) => isProgressive(lens) || isSegmented(lens) || isOpen(lens),
  },
  {
    what: 'slab-off',
    needs: 'a lens with a reading part',
    of: ({ slab }) => placeOf(slab),
    fits: (lens) => hasReadingPart(lens) || isOpen(lens),
  },
  {
    what: 'inset',
    needs: 'a lens with a reading part',
    of: ({ inset }) => placeOf(inset),
    fits: (lens) => hasReadingPart(lens) || isProgressive(lens) || isOpen(lens),
  },
];

/** With an add and no design it is a multifocal of which the design is missing, and that is told. */
const isOpen = ({ design, add }: OrderedLens): boolean => design === null && add !== null;

const placeOf = (placed: Placed<unknown> | null): Place | null => placed?.place ?? null;
