import type { Rule } from '../rule';
import { axisMissing } from './axis-missing';
import { axisOrMeridian } from './axis-or-meridian';
import { axisRange } from './axis-range';
import { axisShort } from './axis-short';
import { axisUnmarked } from './axis-unmarked';
import { axisUnreadable } from './axis-unreadable';
import { axisZero } from './axis-zero';
import { barePoint } from './bare-point';
import { cylinderMissing } from './cylinder-missing';
import { dateImpossible } from './date-impossible';
import { dateOrder } from './date-order';
import { decimalComma } from './decimal-comma';
import { eyeUnsaid } from './eye-unsaid';
import { figuresTouch } from './figures-touch';
import { fraction } from './fraction';
import { lengthNegative } from './length-negative';
import { lineUnfinished } from './line-unfinished';
import { loneMark } from './lone-mark';
import { lookAlike } from './look-alike';
import { looseForm } from './loose-form';
import { meridianMissing } from './meridian-missing';
import { meridiansNotSquare } from './meridians-not-square';
import { pairUnclear } from './pair-unclear';
import { pointAmbiguous } from './point-ambiguous';
import { pointMissing } from './point-missing';
import { powerImplausible } from './power-implausible';
import { prismMark } from './prism-mark';
import { quoteOpen } from './quote-open';
import { signApart } from './sign-apart';
import { signMissing } from './sign-missing';
import { slashPair } from './slash-pair';
import { textCut } from './text-cut';
import { thirdFigure } from './third-figure';
import { typographicSign } from './typographic-sign';
import { unexpectedText } from './unexpected-text';
import { unknownLine } from './unknown-line';
import { valueMissing } from './value-missing';
import { wholeDioptres } from './whole-dioptres';
import { wideCharacters } from './wide-characters';

/** What could be misread by the next person: the rules of how a line is written. */
export const WRITING: readonly Rule[] = [
  axisMissing,
  axisOrMeridian,
  axisRange,
  axisShort,
  axisUnmarked,
  axisUnreadable,
  axisZero,
  barePoint,
  cylinderMissing,
  dateImpossible,
  dateOrder,
  decimalComma,
  eyeUnsaid,
  figuresTouch,
  fraction,
  lengthNegative,
  lineUnfinished,
  loneMark,
  lookAlike,
  looseForm,
  meridianMissing,
  meridiansNotSquare,
  pairUnclear,
  pointAmbiguous,
  pointMissing,
  powerImplausible,
  prismMark,
  quoteOpen,
  signApart,
  signMissing,
  slashPair,
  textCut,
  thirdFigure,
  typographicSign,
  unexpectedText,
  unknownLine,
  valueMissing,
  wholeDioptres,
  wideCharacters,
];
