/** Which words may follow where inside a line; choices and keys come from the vocabulary itself. */
import { REPEATABLE_LINES } from '../../../grammar';
import type { Room } from './cursor';

export interface Clause {
  readonly words: readonly string[];
  /** Heads of the lines they may stand in. */
  readonly lines: readonly string[] | 'any';
  /** What stands right before: `start` is the head or an eye, `figure` a value, others are words; `any` is not the head. */
  readonly after: readonly string[] | 'any';
  /** One of these must have been said before. */
  readonly needs?: readonly string[];
  readonly room?: Room;
  /** One of them is wanted here; others only may follow. */
  readonly closed?: boolean;
  /** May be said more than once in a line. */
  readonly again?: boolean;
}

const POWERS = ['R', 'L', 'both', 'rx', 'kept', 'balance', 'previous', 'verification'];
const EYES = ['R', 'L', 'both'];
const MEASURED = [...REPEATABLE_LINES];

/** Lines that may end with what a measurement was taken with, and where. */
export const TAKEN_LINES: ReadonlySet<string> = new Set([...EYES, ...MEASURED]);

/** Lines whose values may be said for each eye. */
export const EYE_LINES: ReadonlySet<string> = new Set([
  ...MEASURED,
  'again',
  'rx',
  'kept',
  'balance',
  'previous',
  'verification',
  'design',
  'lens',
  'inset',
  'decentre',
  'make',
  'replaced',
  'decided',
  'impact',
  'cosmetic',
  'marking',
  'slab-off',
  'reverse-slab',
]);

export const CLAUSES: readonly Clause[] = [
  // Powers
  { words: ['lines'], lines: EYES, after: ['start'], room: 'reading' },
  { words: ['wide', 'thin'], lines: EYES, after: ['lines', 'figure'], needs: ['lines'] },
  { words: ['x'], lines: POWERS, after: ['figure'], again: true },
  { words: ['plano'], lines: POWERS, after: ['start'], again: true },
  { words: ['DS'], lines: POWERS, after: ['figure'], again: true },
  { words: ['add', 'prism'], lines: POWERS, after: ['figure'], again: true },
  { words: ['base-curve', 'thickness'], lines: ['kept'], after: ['figure'] },
  { words: [...MEASURED], lines: ['again'], after: ['start'] },
  // Prism
  { words: ['BI', 'BO', 'BU', 'BD'], lines: ['prism'], after: ['figure'], again: true },
  { words: ['BI', 'BO', 'BU', 'BD'], lines: POWERS, after: ['figure'], needs: ['prism'], again: true },
  { words: ['base'], lines: ['prism', ...POWERS], after: ['figure'], needs: ['prism'], again: true },
  { words: ['total'], lines: ['prism'], after: ['start'] },
  { words: ['BU', 'BD'], lines: ['thinning'], after: ['figure'], closed: true },
  { words: ['in', 'out', 'up', 'down'], lines: ['decentre'], after: ['figure'], again: true },
  // Adds and distances
  { words: ['intermediate'], lines: ['add'], after: ['figure'] },
  { words: ['front-vertex', 'back-vertex', 'engraved'], lines: ['add'], after: ['figure'], room: 'reading' },
  { words: ['near'], lines: ['pd'], after: ['figure'] },
  { words: ['below'], lines: ['height'], after: ['figure'] },
  { words: ['datum'], lines: ['height'], after: ['below'], closed: true },
  // Designs and materials
  {
    words: ['single-vision', 'bifocal', 'progressive', 'trifocal', 'office', 'double'],
    lines: ['design'],
    after: ['start'],
    closed: true,
    again: true,
  },
  {
    words: ['flat-top', 'round', 'curve-top', 'full-width'],
    lines: ['design'],
    after: ['bifocal', 'trifocal', 'double'],
    closed: true,
    again: true,
  },
  {
    words: ['distance', 'near', 'intermediate'],
    lines: ['design'],
    after: ['single-vision'],
    closed: true,
    again: true,
  },
  { words: ['gap'], lines: ['design'], after: ['figure'], needs: ['double'] },
  { words: ['corridor'], lines: ['design'], after: 'any', needs: ['progressive', 'pal', 'varifocal'] },
  { words: ['degression', 'working'], lines: ['design'], after: 'any', needs: ['office', 'degressive'] },
  { words: ['index', 'abbe', 'density'], lines: ['lens'], after: 'any' },
  // Segments, dates, limits
  { words: ['tilt'], lines: ['segment'], after: ['figure'] },
  { words: ['nasal-up', 'nasal-down'], lines: ['segment'], after: ['figure'], needs: ['tilt'] },
  { words: ['due'], lines: ['calibrated'], after: ['figure'] },
  { words: ['read'], lines: ['test-lens'], after: ['figure'] },
  {
    words: ['to', 'above'],
    lines: ['power', 'cylinder', 'axis', 'add', 'prism', 'pd', 'near-pd', 'height'],
    after: ['start'],
    room: 'tolerance',
  },
  { words: ['from'], lines: ['tolerance'], after: 'any', closed: true },
  // Who, with what and where
  { words: ['by', 'with', 'stage'], lines: ['reading'], after: 'any' },
  { words: ['by'], lines: ['confirmed', 'decided'], after: 'any' },
  { words: ['at', 'with', 'corrected'], lines: [...TAKEN_LINES], after: ['figure'], room: 'reading' },
];
