import { centresOf } from '../../causes/centres';
import { madeUp } from '../../causes/explanation';
import { isLess } from '../../exact';
import { amountInWords } from '../../words';
import { cause } from './cause';

export const bothCentresOff = cause(
  'both-centres-off',
  {
    checks: 'Both centres are off by the same amount: both outwards or inwards, or both to the same side. Level: info.',
    why: 'When both lenses miss by the same, it is not a lens that slipped but a figure: another PD was used, or the middle of the bridge was taken wrong. Common practice is to look for that figure before both lenses are set anew, or the next pair comes out alike.',
    example: { wrong: 'pd R 34 L 34 near 60', right: 'pd R 31.5 L 31.5 near 60' },
    source:
      'Common practice, no source. Centres too wide by the same in both eyes: Semin Ophthalmol 2015, on 1002 worn pairs.',
  },
  ({ R, L, way }) =>
    `Both centres are off alike: R by ${amountInWords(Number(R), 'mm')}, L by ${amountInWords(Number(L), 'mm')}, ${WAYS[way as Way]}.`,
  (scene) => {
    const centres = centresOf(scene);
    if (!centres) return [];
    const { R, L, failed } = centres;
    const apart = Math.abs(Math.abs(R) - Math.abs(L));
    if (isLess(Math.min(Math.abs(R), Math.abs(L)), LEAST) || isLess(Math.min(ALIKE, SHARE * Math.abs(R)), apart))
      return [];
    const way: Way = R * L < 0 ? 'aside' : R > 0 ? 'out' : 'in';
    return [madeUp(null, failed, { R, L, way })];
  },
);

type Way = 'out' | 'in' | 'aside';

const WAYS: Readonly<Record<Way, string>> = {
  out: 'both outwards, as if a wider PD had been used',
  in: 'both inwards, as if a narrower PD had been used',
  aside: 'both to the same side, so the distance between them is right and the middle is not',
};

/** Millimetres, and a share of smaller errors: a ruler is read to half a millimetre. Common practice, no source. */
const LEAST = 1;
const ALIKE = 0.5;
const SHARE = 0.25;
