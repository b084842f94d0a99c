import { madeUp } from '../../causes/explanation';
import type { Failed } from '../../causes/scene';
import { amountInWords } from '../../words';
import { cause } from './cause';
import { eyesInWords } from './in-words';

export const otherAddBlank = cause(
  'other-add-blank',
  {
    checks: 'The add that a lens says of itself, engraved, is not the ordered one. Level: info.',
    why: 'The mark is made with the front surface and nobody misreads one figure for another by the lines of a drum: a lens that says +2.50 was made as +2.50, or from a blank of that add. To read it again changes nothing. Look at the blank that was taken and at the next jobs from that box, and make the lens again.',
    example: {
      wrong: 'add R +2.50 engraved L +2.00 engraved',
      right: 'add R +2.00 engraved L +2.00 engraved',
    },
    source: 'Common practice, no source.',
  },
  (data) => {
    const lenses = data.lenses as readonly { eye: string; read: number; ordered: number }[];
    const said = lenses.map(
      ({ eye, read, ordered }) =>
        `${eye} is marked ${amountInWords(read, 'D')}, ordered ${amountInWords(ordered, 'D')}`,
    );
    return `The mark of ${eyesInWords(data)} names another add: ${said.join('; ')}. Another blank was taken; no reading is at fault.`;
  },
  (scene) => {
    const found = scene.failed.filter(isMarked);
    if (found.length === 0) return [];
    const eyes = found.flatMap(({ eye }) => eye ?? []);
    const lenses = found.map(({ eye, read, ordered }) => ({ eye, read, ordered }));
    return [madeUp(eyes.length === 1 ? (eyes[0] ?? null) : null, found, { eyes, lenses })];
  },
);

/** Judged by the mark, since nothing was measured. */
const isMarked = ({ quantity, steps }: Failed): boolean =>
  quantity === 'add' && steps.some(({ step }) => step === 'engraved');
