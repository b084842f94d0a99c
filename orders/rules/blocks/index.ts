import type { Rule } from '../rule';
import { blockUnclear } from './block-unclear';
import { blockUnnamed } from './block-unnamed';
import { confirmationIdle } from './confirmation-idle';
import { dateImplausible } from './date-implausible';
import { definedTwice } from './defined-twice';
import { lineMisplaced } from './line-misplaced';
import { lineOutside } from './line-outside';
import { nameMissing } from './name-missing';
import { orderElsewhere } from './order-elsewhere';
import { orderLineBelowReading } from './order-line-below-reading';
import { orderTwice } from './order-twice';
import { readingMissing } from './reading-missing';
import { restsOnUnclear } from './rests-on-unclear';
import { saidTwice } from './said-twice';

/** What only shows when the lines of a block are put together, and not in any line by itself. */
export const BLOCKS: readonly Rule[] = [
  blockUnclear,
  blockUnnamed,
  confirmationIdle,
  dateImplausible,
  definedTwice,
  lineMisplaced,
  lineOutside,
  nameMissing,
  orderElsewhere,
  orderLineBelowReading,
  orderTwice,
  readingMissing,
  restsOnUnclear,
  saidTwice,
];
