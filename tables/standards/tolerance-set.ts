import type { Evidence } from '../evidence';
import type { SourceId } from '../sources';

/**
 * The shape of a built-in tolerance set. A set is plain data: it survives JSON, holds the figures exactly as printed
 * (0.13 stays 0.13) and never decides anything. A table that a set does not have is absent, which means "not judged by
 * this set" and never "zero".
 *
 * Conventions for all tables
 * - Powers are dioptres, prism is prism dioptres, lengths are millimetres, angles degrees.
 * - Bands are entered with the absolute value of the ordered figure (or of the verification figure where one is stated).
 * - A limit is an amount either way of the ordered figure. Exactly the limit is inside it (`comparison: 'inclusive'`).
 * - An axis deviation is the smaller angle between the two axes, so 178 against 2 is 4 degrees.
 */
export interface ToleranceSet {
  /** The word a file writes after `standard`. */
  readonly id: string;
  readonly title: string;
  readonly publisher: string;
  readonly edition: string;
  readonly jurisdiction: string;
  /** What the set is written for. Figures for uncut lenses leave out what glazing adds. */
  readonly scope: readonly Supply[];
  readonly comparison: 'inclusive';
  /** What someone relying on the set has to know, in whole sentences. */
  readonly cautions: readonly string[];

  readonly power: readonly PowerTable[];
  readonly axis: readonly AxisTable[];
  readonly add?: readonly AddTable[];
  readonly lensPrism?: readonly LensPrismTable[];
  readonly pairPrism?: readonly PairPrismTable[];

  /** Height of the segment top, each lens, from the ordered height. */
  readonly segmentHeight?: PlainLimit;
  /** Error of one segment height against the error of the other. */
  readonly segmentHeightDifference?: PlainLimit;
  /** Horizontal place of the segments: the near PD, or each inset. */
  readonly segmentHorizontal?: PlainLimit;
  /** Tilt of the segment top from the horizontal. */
  readonly segmentTilt?: PlainLimit;
  /** Width and depth of the segment, from nominal. */
  readonly segmentSize?: PlainLimit;
  /** Size of one segment against the other. */
  readonly segmentSizeDifference?: PlainLimit;
  /** Height of the fitting point of a progressive, each lens, from the ordered height. */
  readonly fittingHeight?: PlainLimit;
  /** Error of one fitting height against the error of the other. */
  readonly fittingHeightDifference?: PlainLimit;
  /** Horizontal place of the fitting point, from the monocular PD. */
  readonly fittingHorizontal?: PlainLimit;
  /** Tilt of the permanent marks of a progressive from the horizontal. */
  readonly markTilt?: PlainLimit;
  readonly baseCurve?: PlainLimit;
  readonly centreThickness?: PlainLimit;
  /** Cylinder that mounting bent into the base curve. One-sided: at most this much. */
  readonly warp?: PlainLimit;
}

export type Supply = 'uncut' | 'edged' | 'glazed';

/** `lens-classes.ts` says which designs belong to which class. */
export type LensClass = 'single-vision-multifocal' | 'progressive';

/** Where a cell comes from and how well it is established. */
export interface Provenance {
  /** An id from `sources.ts`. */
  readonly source: SourceId;
  /** Never firmer than the grade of the source, but weaker where the source speaks of another edition or lens type. */
  readonly evidence: Evidence;
  /** Further sources that give the same figure. */
  readonly alsoIn?: readonly SourceId[];
  readonly note?: string;
}

/**
 * A stretch of values. At the lower end `atLeast` includes the value and `above` leaves it out; at the upper end
 * `atMost` includes it and `below` leaves it out. Each end is given at most once, and an end that is absent is open.
 */
export interface Band {
  readonly atLeast?: number;
  readonly above?: number;
  readonly atMost?: number;
  readonly below?: number;
}

export interface AbsoluteLimit {
  readonly kind: 'absolute';
  readonly amount: number;
  readonly unit: 'D' | 'deg' | 'mm';
}

/** A share of the ordered power of the judged meridian, or of the ordered cylinder. */
export interface PercentLimit {
  readonly kind: 'percent';
  readonly percent: number;
  readonly of: 'meridian' | 'cylinder';
}

/** The set deliberately sets no limit here. */
export interface NotDefined {
  readonly kind: 'not-defined';
}

export type PowerLimit = AbsoluteLimit | PercentLimit | NotDefined;

/**
 * A limit for unwanted prism: an amount of prism, a shift of the point where the ordered prism is found, or an amount
 * plus the prism which a shift makes by Prentice's rule.
 */
export type PrismLimit =
  | { readonly kind: 'prism'; readonly amount: number }
  | { readonly kind: 'shift'; readonly mm: number }
  | { readonly kind: 'prism-plus-shift'; readonly amount: number; readonly mm: number };

/** What a reader of the table should know, such as a conflict between sources. */
export interface Annotated {
  readonly note?: string;
}

export interface PowerTable extends Annotated {
  readonly lenses: readonly LensClass[];
  /**
   * The meridian that `meridian` limits: only the one of highest absolute ordered power, or each principal meridian by
   * itself. The row is chosen by the meridian of highest absolute ordered power either way.
   */
  readonly judged: 'strongest-meridian' | 'each-meridian';
  readonly rows: readonly PowerRow[];
}

export interface PowerRow {
  readonly power: Band;
  readonly meridian: PowerCell;
  /**
   * The limit of the cylinder, chosen by the ordered cylinder. Where the first heading leaves 0.00 out, a sphere falls
   * under none of them: its meridians are still limited, its cylinder is not.
   */
  readonly cylinder: readonly CylinderCell[];
}

export interface PowerCell extends Provenance {
  readonly limit: PowerLimit;
}

export interface CylinderCell extends PowerCell {
  readonly cylinder: Band;
}

/** The limit depends on the ordered cylinder only. */
export interface AxisTable extends Annotated {
  readonly lenses: readonly LensClass[];
  readonly rows: readonly AxisRow[];
}

export interface AxisRow extends Provenance {
  readonly cylinder: Band;
  readonly limit: AbsoluteLimit | NotDefined;
}

export interface AddTable extends Annotated {
  readonly lenses: readonly LensClass[];
  readonly rows: readonly AddRow[];
}

export interface AddRow extends Provenance {
  readonly add: Band;
  readonly limit: AbsoluteLimit;
}

/** Unwanted prism of one lens by itself, at its prism reference point. */
export interface LensPrismTable extends Annotated {
  readonly lenses: readonly LensClass[];
  /** For which supply the table is called: a mounted pair may have pair tables instead. */
  readonly supply: readonly Supply[];
  /** How several limits in one row work together: meeting any one is enough, or all have to be met. */
  readonly combine: 'any' | 'all';
  /** Which power turns a shift into prism and back. */
  readonly powerOf: 'along-the-error' | 'strongest-meridian';
  readonly rows: readonly LensPrismRow[];
}

export interface LensPrismRow extends Provenance {
  /** The horizontal part, the vertical part, or both taken together as one vector. */
  readonly component: 'horizontal' | 'vertical' | 'resultant';
  readonly orderedPrism: Band;
  readonly limits: readonly PrismLimit[];
}

/** Unwanted prism of a mounted pair in one direction. Exactly one row applies; the rows are never combined by "or". */
export interface PairPrismTable extends Annotated {
  readonly lenses: readonly LensClass[];
  readonly component: 'horizontal' | 'vertical';
  /** The lens whose ordered power, along the direction of the error, chooses the row. */
  readonly powerOf: 'stronger-lens-along-the-error';
  readonly rows: readonly PairPrismRow[];
}

export interface PairPrismRow extends Provenance {
  /** The larger ordered prism of the two lenses in this direction. Absent: any ordered prism. */
  readonly orderedPrism?: Band;
  readonly power: Band;
  readonly limit: PrismLimit;
  /**
   * What the limit is held against.
   *
   * - `prism-imbalance`: unwanted prism of the right lens minus that of the left in one fixed frame (vertical: equal
   *   bases subtract; horizontal: base in and base in add). A `shift` limit means the prism which that shift makes.
   * - `height-difference`: millimetres between the heights of the two prism reference points.
   * - `distance-pd`: millimetres from the ordered distance PD.
   * - `monocular-pd`: millimetres from the ordered monocular PD, each eye.
   * - `reference-point-height`: millimetres from the ordered height of the reference point, each eye.
   * - `lens-prism`: unwanted prism of each lens by itself.
   */
  readonly judged:
    | 'prism-imbalance'
    | 'height-difference'
    | 'distance-pd'
    | 'monocular-pd'
    | 'reference-point-height'
    | 'lens-prism';
  readonly counted: Counted;
}

/** One limit without bands. */
export interface PlainLimit extends Provenance {
  readonly limit: AbsoluteLimit;
  readonly counted: Counted;
  /** Some items are limited only when the order asks for a value. */
  readonly applies: 'always' | 'when-ordered';
}

/** Whether a limit is for each eye by itself, for the sum over both, or for the difference between the two. */
export type Counted = 'each-eye' | 'pair-total' | 'pair-difference';
