/** Phrases that the messages of several causes share. */
import type { ReadAndWanted } from '../../causes/lenses';
import type { FindingData } from '../../finding';
import { powerInWords } from '../../words';

/** `R reads -4.50 -0.75 x 112, ordered -4.50 -0.75 x 022; L …`. */
export const lensesInWords = ({ lenses }: FindingData): string =>
  (lenses as readonly ReadAndWanted[])
    .map(({ eye, read, wanted }) => `${eye} reads ${powerInWords(read)}, ordered ${powerInWords(wanted)}`)
    .join('; ');

/** `R`, `R and L`. */
export const eyesInWords = ({ eyes }: FindingData): string => (eyes as readonly string[]).join(' and ');
