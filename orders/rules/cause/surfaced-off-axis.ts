import { madeUp } from '../../causes/explanation';
import { loneTurn } from '../../causes/lone-turn';
import { amountInWords } from '../../words';
import { cause } from './cause';

export const surfacedOffAxis = cause(
  'surfaced-off-axis',
  {
    checks:
      'The axis of one lens is outside while its segment or its marks are level, or tilted to the other side. Level: info.',
    why: 'A lens that has turned in the rim takes its segment along. When the segment stands level, or leans the other way, the cylinder was ground at another axis, and turning the lens back would tilt the segment: common practice is to make that lens again.',
    example: { wrong: 'segment R 28.0 tilt 0 nasal-up\nR -4.50 -0.75 x 034', right: 'R -4.50 -0.75 x 022' },
    source: 'Opticians’ forum on axis tolerance: level engravings speak for surfacing.',
  },
  ({ lens, turn, tilt, against }) =>
    `The axis of ${lens} is turned by ${amountInWords(Number(turn), 'deg')} while its marks are ${marksInWords(Number(tilt), against === true)}: it was surfaced off axis, and did not turn in the rim.`,
  (scene) => {
    const found = loneTurn(scene);
    if (found?.marks !== 'level' && found?.marks !== 'against') return [];
    const { eye, turn, tilt, marks, explains } = found;
    return [madeUp(eye, explains, { lens: eye, turn, tilt, against: marks === 'against' })];
  },
);

function marksInWords(tilt: number, isAgainst: boolean): string {
  if (tilt === 0) return 'level';
  return `tilted by ${amountInWords(tilt, 'deg')} ${isAgainst ? 'the other way' : 'only'}`;
}
