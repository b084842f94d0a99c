import { madeUp } from '../../causes/explanation';
import { loneTurn } from '../../causes/lone-turn';
import { canTurn } from '../../causes/rim';
import { amountInWords } from '../../words';
import { cause } from './cause';

export const lensTurned = cause(
  'lens-turned',
  {
    checks:
      'The axis of one lens alone is outside and nothing else is; where the tilt of the segment or of the marks was read, it is the same turn to the same side: counter-clockwise lifts the nasal end of a right lens and lowers that of a left one. Where A and B say that a lens of this shape cannot turn that far, `cut-off-axis` is told instead. Level: info.',
    why: 'A lens that has its powers and its partner right has most likely turned in the rim, and can be turned back. Where marks or a segment line can be seen, their tilt settles it: tilted with the axis, the lens has turned; level, it was surfaced off axis. Common practice is to look at that before a new lens is ordered.',
    example: { wrong: 'R -4.50 -0.75 x 034', right: 'R -4.50 -0.75 x 022' },
    source:
      'Semin Ophthalmol 2015, on 1002 worn pairs: one axis off, powers right. Level or tilted marks: opticians’ forum on axis tolerance.',
  },
  ({ lens, turn, tilt }) => {
    const marks =
      tilt === null
        ? 'Look whether a segment or the marks are tilted with it.'
        : `The tilt of ${amountInWords(Number(tilt), 'deg')} goes with it.`;
    return `${lens} is turned by ${amountInWords(Number(turn), 'deg')} and all else is right: it may have turned in the rim. ${marks}`;
  },
  (scene) => {
    const found = loneTurn(scene);
    if (!found || found.marks === 'level' || found.marks === 'against' || !canTurn(scene.order.frame, found.turn))
      return [];
    const { eye, turn, tilt, explains } = found;
    return [madeUp(eye, explains, { lens: eye, turn, tilt }, tilt === null)];
  },
);
