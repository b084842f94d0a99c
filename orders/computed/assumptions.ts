/** What is taken as usual where an order is silent. Each is said beside the figure that rests on it. */

/** Where one reads, millimetres before the lens. */
export const WORKING_DISTANCE = 400;
/** From the lens to the eye’s centre of rotation, millimetres. */
export const TO_ROTATION_CENTRE = 27;
/** Added to the smallest blank for chipped edges, millimetres. */
export const CHIPPING_MARGIN = 2;
/** Where one reads below the distance centres, millimetres, when no segment says so. */
export const READING_LEVEL = 10;
/** Where one reads below the top of a segment, millimetres. */
export const INTO_SEGMENT = 5;
/** Centre thickness of a minus lens, and edge thickness of a plus lens, millimetres. */
export const USUAL_CENTRE = 2;
export const USUAL_EDGE = 1;
/** Index of the common resin, and half the diameter of a usual lens in millimetres. */
export const USUAL_INDEX = 1.498;
export const USUAL_RADIUS = 25;
/** Depth of the optical centre of a flat-top or curve-top segment below its top, millimetres, and the widths it holds for. */
export const FLAT_TOP_CENTRE = 5;
export const FLAT_TOP_WIDTHS = { least: 22, most: 28 };
/** From the cornea to the entrance pupil, millimetres. */
export const TO_ENTRANCE_PUPIL = 3;
/** Up to here wearers mostly cope with vertical imbalance, prism dioptres. */
export const BORNE_IMBALANCE = 1.5;

export const ASSUMED = {
  chippingMargin: `margin of ${CHIPPING_MARGIN} mm for chipped edges (from memory of Brooks & Borish)`,
  workingDistance: `working distance ${WORKING_DISTANCE / 10} cm (common practice, no source)`,
  rotationCentre: `the eye turns about a point ${TO_ROTATION_CENTRE} mm behind the lens (from memory of Fannin & Grosvenor)`,
  readingLevel: `reading level ${READING_LEVEL} mm below the distance centres (20/20 magazine, measuring reading level)`,
  intoSegment: `reading level ${INTO_SEGMENT} mm below the top of the segment (as in Durham, OPH 142, module 09 E)`,
  centreOnDatum: 'distance centres on the boxed centre line',
  usualCentre: `centre thickness ${USUAL_CENTRE.toFixed(1)} mm, the usual one of minus lenses (common practice, no source)`,
  usualEdge: `edge thickness ${USUAL_EDGE.toFixed(1)} mm, the usual one of plus lenses (common practice, no source)`,
  index: `index ${USUAL_INDEX}, the common resin (common practice, no source)`,
  baseCurve: 'base curve by Vogel’s rule, which is no more than usual',
  usualDiameter: `edge ${USUAL_RADIUS} mm from the centre (common practice, no source)`,
  segmentCentre: `centre of the segment ${FLAT_TOP_CENTRE} mm below its top (as in Bhootra, p. 124, for a 28 x 19 segment)`,
  baseCurveIndex: 'base curve marked for index 1.530',
  segmentInFront: 'segment on the front surface',
  segmentThickness: 'as thick in the segment as beside it',
  withoutSegment: 'the segment is left out',
  outline: 'outline: the box cut by the circle of the effective diameter',
  sphericalFront: 'spherical front surface',
  entrancePupil: `entrance pupil ${TO_ENTRANCE_PUPIL} mm behind the cornea (from memory of Fannin & Grosvenor)`,
  pupilHeight: 'the ordered height is that of the pupil',
  noTilt: 'no pantoscopic tilt',
  noWrap: 'no wrap',
  halvesEqual: 'half of the PD before each eye',
  addsLeftOut: 'prism of the unlike segments left out',
} as const;
