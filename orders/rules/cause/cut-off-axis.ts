import { madeUp } from '../../causes/explanation';
import { loneTurn } from '../../causes/lone-turn';
import { canTurn } from '../../causes/rim';
import { amountInWords } from '../../words';
import { cause } from './cause';

export const cutOffAxis = cause(
  'cut-off-axis',
  {
    checks:
      'The axis of one lens alone is outside by more than its shape can turn in the rim, and its segment or its marks are not seen to be level. Level: info.',
    why: 'A round lens turns in its rim; one that is much lower than wide stands against it after a few degrees. Such a lens was blocked and edged, or surfaced, at another axis, and nobody can turn it back: it is made again.',
    example: { wrong: 'R -4.50 -0.75 x 034', right: 'R -4.50 -0.75 x 022' },
    source:
      'That a shape much lower than wide does not turn follows from its geometry; that a bevel gives 0.75 mm is common practice, no source.',
  },
  ({ lens, turn, tilt, a, b }) => {
    const story =
      tilt === null
        ? 'it was edged or surfaced off axis. Look whether a segment or the marks are tilted with it.'
        : `it was edged off axis, and the tilt of ${amountInWords(Number(tilt), 'deg')} goes with it.`;
    return `${lens} is turned by ${amountInWords(Number(turn), 'deg')} and all else is right. A shape of A ${a} and B ${b} cannot turn that far in its rim: ${story}`;
  },
  (scene) => {
    const found = loneTurn(scene);
    const { frame } = scene.order;
    if (!found || found.marks === 'level' || canTurn(frame, found.turn)) return [];
    const { eye, turn, tilt, explains } = found;
    const data = { lens: eye, turn, tilt, a: frame.a?.value ?? null, b: frame.b?.value ?? null };
    return [madeUp(eye, explains, data, tilt === null)];
  },
);
