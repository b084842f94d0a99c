/** What kind of lens an ordered one is: by its design, and by whether it is made. */
import type { DesignType } from '../grammar';
import type { OrderedLens } from './model';

const isOf =
  (...types: readonly DesignType[]) =>
  ({ design }: OrderedLens): boolean =>
    design !== null && types.includes(design.value.type);

/** A lens of one power; so is one of which nothing is said but a power. */
export const isSingleVision = (lens: OrderedLens): boolean =>
  lens.design ? lens.design.value.type === 'single-vision' : lens.add === null;
/** A lens for nearer distances, looked through at its reference point. */
export const isForNear = (lens: OrderedLens): boolean =>
  isOffice(lens) ||
  (lens.design?.value.type === 'single-vision' && (lens.design.value.use ?? 'distance') !== 'distance');
/** A lens for the room one works in, made to its near point. */
export const isOffice = isOf('office');
/** A lens with a segment. */
export const isSegmented = isOf('bifocal', 'trifocal', 'double');
/** A segment of one power, whose own optical centre can be known. */
export const hasPlainSegment = isOf('bifocal', 'double');
/** A lens whose power changes along a corridor, and whose surfaces are no spheres. */
export const isProgressive = isOf('progressive', 'office');
/** A lens through which one reads below the distance power. */
export const hasReadingPart = isOf('bifocal', 'trifocal', 'double', 'progressive');
/** A lens that is made, to whatever power. */
export const isMade = ({ role }: OrderedLens): boolean => role === 'made' || role === 'balance';
