import { powerAt } from '../../../optics';
import { attempt } from '../../attempt';
import { isLess, tidy } from '../../exact';
import { isProgressive, isSegmented } from '../../lens-kinds';
import type { OrderedLens } from '../../model';
import { usePower } from '../../power-to-make';
import { amountInWords } from '../../words';
import type { Rule } from '../rule';
import { isAttempted } from './attempted';
import { madeLenses, tellPerPlace } from './lenses';

/** From this power along the vertical on, a single-vision lens is centred in height as well. */
const STRONG = 4;

export const heightMissing: Rule = {
  code: 'height-missing',
  family: 'order',
  level: ({ power }) => (power === undefined ? 'error' : 'warning'),
  page: {
    checks:
      'A segment or a progressive is ordered for glazing without its height. A single-vision lens of 4.00 D or more along the vertical is asked for the height of its centre.',
    levels: 'An error for a segment or a progressive, a warning for a strong single-vision lens.',
    why: 'Without a height the segment cannot be placed. In a strong lens a centre 9 mm too low makes 12 prism dioptres in both eyes alike: the pair is balanced and passes, and the wearer holds up the chin in pain.',
    example: { wrong: 'design bifocal flat-top 28', right: 'height 17' },
    source:
      'ProFile ANZ, “heights matter beyond the multifocal”; a poster on spectacles bought on line, as reported by Healio, 2012.',
  },
  message: ({ power }) =>
    power === undefined
      ? 'The height is missing; this lens cannot be placed.'
      : `No height, and ${amountInWords(Number(power), 'D')} along the vertical: where does the optical centre belong?`,
  check: (subject, report) => {
    const { order } = subject;
    if (order.supply !== 'glazed') return;
    const lacking = madeLenses(order).filter(({ height, belowDatum }) => !height && !belowDatum);
    if (lacking.length === 0 || isAttempted(subject, 'height')) return;
    tellPerPlace(
      report,
      lacking.flatMap((lens) => {
        if (isSegmented(lens) || isProgressive(lens)) return lens.design ? [{ lens, place: lens.design.place }] : [];
        return [];
      }),
    );
    const strong = lacking.filter((lens) => !isSegmented(lens) && !isProgressive(lens) && isStrong(lens));
    const [first, other] = strong;
    if (!first?.written) return;
    const power = Math.max(...strong.map(vertical));
    report(first.written.place, { power }, { ...(other ? {} : { eye: first.eye }), level: 'warning' });
  },
};

const isStrong = (lens: OrderedLens): boolean => !isLess(vertical(lens), STRONG);

/** The size of the power along the vertical, dioptres; 0 where it cannot be worked out. */
function vertical(lens: OrderedLens): number {
  const made = usePower(lens);
  return made ? (attempt(() => tidy(Math.abs(powerAt(made.power, 90)))) ?? 0) : 0;
}
