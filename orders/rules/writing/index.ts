import type { Rule } from '../rule';
import { addForBoth } from './add-for-both';
import { axisMissing } from './axis-missing';
import { axisOrMeridian } from './axis-or-meridian';
import { axisRange } from './axis-range';
import { axisShort } from './axis-short';
import { axisUnmarked } from './axis-unmarked';
import { axisUnreadable } from './axis-unreadable';
import { axisZero } from './axis-zero';
import { barePoint } from './bare-point';
import { baseRange } from './base-range';
import { cylinderMissing } from './cylinder-missing';
import { dateImpossible } from './date-impossible';
import { dateOrder } from './date-order';
import { decimalComma } from './decimal-comma';
import { eyeTwice } from './eye-twice';
import { eyeUnsaid } from './eye-unsaid';
import { figuresInRemark } from './figures-in-remark';
import { figuresTouch } from './figures-touch';
import { fraction } from './fraction';
import { lengthNegative } from './length-negative';
import { loneMark } from './lone-mark';
import { lookAlike } from './look-alike';
import { looseForm } from './loose-form';
import { meridianMissing } from './meridian-missing';
import { meridiansNotSquare } from './meridians-not-square';
import { otherSpelling } from './other-spelling';
import { pairUnclear } from './pair-unclear';
import { pointAmbiguous } from './point-ambiguous';
import { pointMissing } from './point-missing';
import { polarisedShare } from './polarised-share';
import { powerImplausible } from './power-implausible';
import { prismEyeUnsaid } from './prism-eye-unsaid';
import { prismMark } from './prism-mark';
import { quoteOpen } from './quote-open';
import { roundOrRight } from './round-or-right';
import { signApart } from './sign-apart';
import { signMissing } from './sign-missing';
import { slashPair } from './slash-pair';
import { textCut } from './text-cut';
import { thirdFigure } from './third-figure';
import { timeImpossible } from './time-impossible';
import { tintUnclear } from './tint-unclear';
import { twoEyes } from './two-eyes';
import { typographicSign } from './typographic-sign';
import { unexpectedText } from './unexpected-text';
import { unknownChoice } from './unknown-choice';
import { unknownLine } from './unknown-line';
import { valueMissing } from './value-missing';
import { wholeDioptres } from './whole-dioptres';
import { wideCharacters } from './wide-characters';

/** What could be misread by the next person: the rules of how a line is written. */
export const WRITING: readonly Rule[] = [
  addForBoth,
  axisMissing,
  axisOrMeridian,
  axisRange,
  axisShort,
  axisUnmarked,
  axisUnreadable,
  axisZero,
  barePoint,
  baseRange,
  cylinderMissing,
  dateImpossible,
  dateOrder,
  decimalComma,
  eyeTwice,
  eyeUnsaid,
  figuresInRemark,
  figuresTouch,
  fraction,
  lengthNegative,
  loneMark,
  lookAlike,
  looseForm,
  meridianMissing,
  meridiansNotSquare,
  otherSpelling,
  pairUnclear,
  pointAmbiguous,
  pointMissing,
  polarisedShare,
  powerImplausible,
  prismEyeUnsaid,
  prismMark,
  quoteOpen,
  roundOrRight,
  signApart,
  signMissing,
  slashPair,
  textCut,
  thirdFigure,
  timeImpossible,
  tintUnclear,
  twoEyes,
  typographicSign,
  unexpectedText,
  unknownChoice,
  unknownLine,
  valueMissing,
  wholeDioptres,
  wideCharacters,
];
