import type { PrismVector } from '../../../optics';
import type { Explanation } from '../../causes/explanation';
import { mayHold, setRight } from '../../causes/explanation';
import { mapped, type ReadAndWanted, readAndWanted } from '../../causes/lenses';
import { REFRACTION, readPower, type Scene, wantedPower } from '../../causes/scene';
import type { Quantity } from '../../measures/measure';
import { EYES, otherEye } from '../../model';
import type { FigureQuantity, Read, ReadValues } from '../../reduce';
import { powerInWords } from '../../words';
import { cause } from './cause';

export const eyesSwapped = cause(
  'eyes-swapped',
  {
    checks:
      'Each lens is outside before its own eye and inside before the other one. Both have to fit; one lens alone is no exchange. Level: info; what is outside is the error.',
    why: 'Right and left are exchanged at blocking, at glazing, or only in the rows of the reading. Pairs like that have been worn for a year. Common practice is to see first which lens is in the right rim: if the reading is right, the pair is glazed anew, or made anew where the shapes do not allow that. Lenses that are nearly alike cannot be told apart, and nothing is told of them.',
    example: { wrong: 'R -4.25 -1.00 x 168\nL -4.50 -0.75 x 022', right: 'R -4.50 -0.75 x 022\nL -4.25 -1.00 x 168' },
    source: 'Two wearers’ weblogs; the figures are worked out.',
  },
  ({ lenses }) => {
    const each = (lenses as readonly ReadAndWanted[]).map(
      ({ eye, read, wanted }) =>
        `${eye} reads ${powerInWords(read)}, and ${powerInWords(wanted)} is ordered for ${otherEye(eye)}`,
    );
    return `The two lenses look exchanged: ${each.join('; ')}. In the frame, or only in the rows of the reading.`;
  },
  (scene) => {
    const found = [
      exchanged(scene, LENS, OF_LENS),
      exchanged(scene, [...LENS, ...PLACE], [...OF_LENS, ...OF_PLACE]),
    ].filter((one) => one !== null);
    return found.filter(({ explains }) => found.every((other) => other.explains.length <= explains.length)).slice(0, 1);
  },
);

/** What goes with the lens, and what goes with its place before the eye. */
const LENS: readonly FigureQuantity[] = ['base-curve', 'centre-thickness', 'segment-width'];
const PLACE: readonly FigureQuantity[] = ['height', 'pd', 'optical-centres', 'near-pd', 'segment-tilt'];

const OF_LENS: readonly Quantity[] = [
  ...REFRACTION,
  'add',
  'intermediate',
  'degression',
  'base-curve',
  'centre-thickness',
  'segment-width',
  'segment-width-difference',
];
const OF_PLACE: readonly Quantity[] = [
  'height',
  'height-difference',
  'pd',
  'near-pd',
  'segment-tilt',
  'prism',
  'prism-horizontal',
  'prism-vertical',
];

function exchanged(scene: Scene, quantities: readonly FigureQuantity[], of: readonly Quantity[]): Explanation | null {
  const demand = { of, eyes: EYES };
  if (!mayHold(scene, demand) || !EYES.every((eye) => readPower(scene, eye) && wantedPower(scene, eye))) return null;
  const right = setRight(scene, { values: withEyesExchanged(scene.values, quantities) }, demand);
  if (!right) return null;
  const lenses = EYES.map((eye) => ({
    ...readAndWanted(scene, eye),
    wanted: readAndWanted(scene, otherEye(eye)).wanted,
  }));
  return { ...right, eye: null, data: { lenses } };
}

function withEyesExchanged(values: ReadValues, quantities: readonly FigureQuantity[]): ReadValues {
  const figures = quantities.map((quantity) => [quantity, crossed(values.figures[quantity] ?? {})]);
  const both = {
    ...values,
    power: crossed(values.power),
    nearPower: crossed(values.nearPower),
    topPower: crossed(values.topPower),
    add: crossed(values.add),
    clockAdd: crossed(values.clockAdd),
    engravedAdd: crossed(values.engravedAdd),
    figures: { ...values.figures, ...Object.fromEntries(figures) },
  };
  return quantities.includes('height') ? { ...both, prism: withPrismsExchanged(values) } : both;
}

type Sides<V> = Partial<Record<'R' | 'L' | 'pair', Read<V>>>;

const crossed = <V>({ pair, R, L }: Sides<V>): Sides<V> => ({
  ...(pair && { pair }),
  ...(R && { L: R }),
  ...(L && { R: L }),
});

/** In exchanged rows base in stays base in, so the vector is mirrored. */
function withPrismsExchanged({ prism }: ReadValues): ReadValues['prism'] {
  const { R, L } = crossed(prism);
  const mirrored = ({ right, up }: PrismVector): PrismVector => ({ right: -right, up });
  const [right, left] = [R && mapped(R, mirrored), L && mapped(L, mirrored)];
  return { ...(right && { R: right }), ...(left && { L: left }) };
}
