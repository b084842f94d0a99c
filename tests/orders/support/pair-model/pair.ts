/** One physical pair: what was ordered and what was made, as things and not as words. Dioptres, millimetres, degrees. */
import type { Both, Toric, Vector } from './lens';

/** A pair for near is of one power too, with its add in it. */
export type Kind = 'single vision' | 'near' | 'segment' | 'progressive';

export interface OrderedLens {
  /** To be made, where a focimeter looks at it: of a pair for near the distance power with the add in it. */
  readonly power: Toric;
  readonly prism: Vector;
  /** Place of the point with the ordered prism: from the middle of the nose, and above the lower tangent. */
  readonly out: number;
  readonly height: number;
  readonly add: number;
  /** Place of the segment, from the middle of the nose. */
  readonly near: number;
  readonly width: number;
  /** Front curve as a lens measure shows it. */
  readonly base: number;
}

export interface MadeLens {
  /** In the frame, so an axis that was turned is the one it has there. */
  readonly power: Toric;
  /** How far its reference point stands from its place: outwards, upwards. */
  readonly out: number;
  readonly up: number;
  /** Prism beyond the ordered one that the lens has at its own mark, wherever that stands. */
  readonly prism: Vector;
  readonly add: number;
  /** Of the segment, or of the fitting point. */
  readonly height: number;
  readonly near: number;
  readonly width: number;
  readonly tilt: number;
  readonly base: number;
}

export interface Focimeter {
  readonly step: 0.01 | 0.125;
  /** What it shows with nothing on the stop. */
  readonly zero: number;
  /** Whether that is said of the instrument or of the day. */
  readonly zeroOf: 'instrument' | 'day';
}

export interface Pair {
  readonly set: string;
  readonly kind: Kind;
  readonly supply: 'glazed' | 'edged' | 'uncut';
  readonly ordered: Both<OrderedLens>;
  readonly made: Both<MadeLens>;
  /** Whether heights are ordered; a single-vision pair may go without. */
  readonly hasHeights: boolean;
  /** Whether thinning is said to be none; else prism up or down common to both progressives is thinning. */
  readonly noThinning: boolean;
  readonly focimeter: Focimeter;
}

/** What a way of writing tells of the places of the lenses. */
export interface Known {
  /** `each` also where prism was read, which tells the same. */
  readonly across: 'each' | 'total' | 'none';
  readonly up: 'each' | 'difference' | 'none';
  readonly near: 'each' | 'total';
  /** The surface that stood on the stop for the add. */
  readonly surface: 'front' | 'back';
}

/** Looked at through their optical centres, unlike progressives, which have a mark of their own. */
export const isPlacedByCentres = ({ kind }: Pair): boolean => kind !== 'progressive';
export const isMounted = ({ supply }: Pair): boolean => supply === 'glazed';
export const hasPoint = ({ kind }: Pair): boolean => kind === 'segment' || kind === 'progressive';
