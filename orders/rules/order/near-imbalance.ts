import { slabOff } from '../../../optics';
import { attempt } from '../../attempt';
import { readingImbalance } from '../../computed';
import { BORNE_IMBALANCE } from '../../computed/assumptions';
import { isLess } from '../../exact';
import { hasReadingPart } from '../../lens-kinds';
import type { Order } from '../../model';
import { amountInWords } from '../../words';
import type { Rule } from '../rule';
import { lensesOf, madeLenses } from './lenses';

export const nearImbalance: Rule = {
  code: 'near-imbalance',
  family: 'order',
  level: 'warning',
  page: {
    checks:
      'The two lenses of a multifocal pair differ so much along the vertical that, where one reads, they make more than 1.5 prism dioptres between the eyes, and nothing is ordered against it. One reads 5 mm below the top of the segment, and 10 mm below the centres where no segment height is known.',
    why: 'Every reading of such a pair is right, and the wearer sees double when reading. A slab-off, unlike segments or single-vision lenses for near are the usual ways out; with a balance lens it does not matter.',
    example: { wrong: 'L -1.00 DS', right: 'slab-off R 3.50' },
    source:
      'ABO Masters paper, “assisting the anisometropic patient” (1998); Durham Technical Community College, OPH 142, module 09: slab-off from 1.5 prism dioptres on.',
  },
  message: ({ amount, level, slab, reverse }) =>
    `Reading ${amountInWords(Number(level), 'mm')} down, this pair makes ${amountInWords(Number(amount), 'prism')} of vertical prism. A slab-off would stand on ${slab}, a reverse slab on ${reverse}.`,
  check: ({ order }, report) => {
    if (!madeLenses(order).some(hasReadingPart) || isAnswered(order)) return;
    const slab = slabFor(order);
    if (!slab || !isLess(BORNE_IMBALANCE, slab.amount)) return;
    const [right, left] = lensesOf(order);
    const place = order.lenses[slab.slab].written?.place;
    const other = [right, left].flatMap((lens) =>
      lens && lens.eye !== slab.slab && lens.written ? [lens.written.place] : [],
    );
    if (place) report(place, { ...slab }, { eye: slab.slab, related: other });
  },
};

const isAnswered = (order: Order): boolean =>
  lensesOf(order).some(({ slab, role }) => slab !== null || role === 'balance');

interface SlabWanted {
  readonly slab: 'R' | 'L';
  readonly reverse: 'R' | 'L';
  /** Prism dioptres. */
  readonly amount: number;
  /** Below the distance centres, millimetres. */
  readonly level: number;
}

/** Which lens would take a slab-off, and of how much; null where the pair has no imbalance or lacks a power. */
export function slabFor(order: Order): SlabWanted | null {
  const found = readingImbalance(order);
  const slabs = found && attempt(() => slabOff(found.up));
  if (!found || !slabs) return null;
  const { slab, reverse, amount } = slabs;
  return { slab, reverse, amount, level: found.level };
}
