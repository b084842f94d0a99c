/** One fact from a value and the place where it was written. */
import { type Block, type Eye, type Place, type PrismVector, prismBeforeEye, tidy } from '../../orders';
import { isWritten, writtenDigits } from '../../orders/write/said';
import { LEAST_DECIMALS, PART_UNITS, type Part, type PartCode } from './part';

export function figurePart(
  block: Block,
  code: PartCode,
  eye: Eye | null,
  value: number,
  place: Place,
  at: string | null = null,
): Part {
  const isPrism = PART_UNITS[code] === 'prism';
  const workedOut = !isWritten(block, place, value) && !isUnderstood(block, code, value, place);
  // Components of an angle go on for ever; a hundredth brings back every prism in steps of a quarter.
  const shown = workedOut && isPrism ? tidy(Math.round(value * 100) / 100) : value;
  const text = writtenDigits(block, place, shown, LEAST_DECIMALS[PART_UNITS[code]]);
  return { code, eye, text, at, workedOut, place };
}

/** A prism as base in and base up before the eye; for the pair as base to the right and up in front of the examiner. */
export function prismParts(
  block: Block,
  eye: Eye,
  prism: PrismVector,
  place: Place,
  at: string | null = null,
): readonly Part[] {
  const { in: inwards, up } = prismBeforeEye(prism, eye);
  return [
    figurePart(block, 'prism-in', eye, tidy(inwards), place, at),
    figurePart(block, 'prism-up', eye, tidy(up), place, at),
  ];
}

/** What needs no writing: horizontal is 180 and may be written as 0, and no prism goes where no base is written. */
const isUnderstood = (block: Block, code: PartCode, value: number, place: Place): boolean =>
  (code === 'axis' && isWritten(block, place, value % 180)) || (PART_UNITS[code] === 'prism' && value === 0);
