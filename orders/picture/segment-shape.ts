/** The outline of a segment as a path about the middle of its top, in units of the drawing. */
import { segmentCentreOf } from '../computed/places';
import type { OrderedLens } from '../model';
import { SCALE } from './drawing';
import { coordinate as at } from './markup';

/** How far the top of a curve-top segment falls off towards its ends, millimetres; drawn, since orders do not say it. */
const CURVE = 1.5;
/** Wider than any lens; the outline of the lens cuts it. */
const BEYOND = 80;

/** One path for each part; a part whose shape the order does not say is left out. */
export function segmentPaths(lens: OrderedLens): readonly string[] {
  const design = lens.design?.value;
  if (!design) return [];
  const { shape, type, width, depth, gap } = design;
  if (shape === 'full-width') return [`M${at(-BEYOND * SCALE)} 0H${at(BEYOND * SCALE)}`];
  if (width === null) return [];
  if (type === 'trifocal') return [band(width, depth)];
  const below = segmentCentreOf({ lens })?.value ?? null;
  const lower = below === null ? topLine(width) : body(width, below, shape === 'curve-top' ? CURVE : 0);
  if (type !== 'double') return [lower];
  return [lower, upperOf(width, below, gap)].filter(Boolean);
}

/** A circle whose top is cut off `below` its middle; nothing is cut off a round segment. */
function body(width: number, below: number, curve: number): string {
  const radius = width / 2;
  if (below >= radius) {
    const r = at(radius * SCALE);
    return `M0 0A${r} ${r} 0 1 1 0 ${at(width * SCALE)}A${r} ${r} 0 1 1 0 0Z`;
  }
  const half = Math.sqrt(radius * radius - below * below) * SCALE;
  const r = at(radius * SCALE);
  const fall = curve * SCALE;
  const top = curve > 0 ? `Q0 ${at(-fall)} ${at(half)} ${at(fall)}` : `H${at(half)}`;
  return `M${at(-half)} ${at(fall)}${top}A${r} ${r} 0 1 1 ${at(-half)} ${at(fall)}Z`;
}

const topLine = (width: number): string => `M${at((-width / 2) * SCALE)} 0H${at((width / 2) * SCALE)}`;

/** Of a trifocal the band between its lines is known, and not what lies below it. */
function band(width: number, depth: number | null): string {
  const [wide, deep] = depth === null ? [width, null] : [Math.max(width, depth), Math.min(width, depth)];
  if (deep === null) return topLine(wide);
  const half = (wide / 2) * SCALE;
  return `M${at(-half)} 0H${at(half)}V${at(deep * SCALE)}H${at(-half)}Z`;
}

/** The upper segment of a double one stands the gap above the lower, the other way up. */
function upperOf(width: number, below: number | null, gap: number | null): string {
  if (below === null || gap === null) return '';
  const radius = width / 2;
  const half = Math.sqrt(Math.max(0, radius * radius - below * below)) * SCALE;
  const r = at(radius * SCALE);
  return `M${at(-half)} ${at(-gap * SCALE)}H${at(half)}A${r} ${r} 0 1 0 ${at(-half)} ${at(-gap * SCALE)}Z`;
}
