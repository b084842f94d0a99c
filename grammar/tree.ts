/**
 * The typed tree of one line. Spans are columns of that line, so a line may move for free. Whatever was left out is
 * an explicit null: a half-typed line keeps what it already says.
 */

export interface Span {
  readonly start: number;
  readonly end: number;
}

/**
 * Something that is wrong with the writing. The code names a rule page; `data` holds what its message and its fixes
 * need. Grammar makes no sentences.
 */
export interface Problem extends Span {
  readonly code: string;
  readonly data?: Readonly<Record<string, unknown>>;
}

export type Eye = 'R' | 'L';
export type EyeOrBoth = Eye | 'both';

/** A figure as typed. `value` is null when it cannot be told what was meant; one problem says so. */
export interface Figure extends Span {
  readonly value: number | null;
  readonly sign: '' | '+' | '-';
  /** Digits written after the decimal mark. */
  readonly decimals: number;
}

export interface Name extends Span {
  readonly text: string;
}

/** A word of the notation, by its canonical spelling. */
export interface Word extends Span {
  readonly word: string;
}

export interface EyeWord extends Span {
  readonly eye: EyeOrBoth;
}

/** A value that may be said for one eye, both, or without naming an eye (`eye` null: both). */
export interface ForEye<T> extends Span {
  readonly eye: EyeWord | null;
  readonly value: T;
}

export type PowerNode =
  | {
      readonly form: 'sphero-cylinder';
      readonly start: number;
      readonly end: number;
      readonly sphere: Figure | null;
      readonly cylinder: Figure | null;
      readonly axis: Figure | null;
    }
  | {
      readonly form: 'meridians';
      readonly start: number;
      readonly end: number;
      readonly first: MeridianNode;
      readonly second: MeridianNode | null;
    }
  | {
      readonly form: 'lines';
      readonly start: number;
      readonly end: number;
      /** Drum position at which the thin (sphere) lines are sharp. */
      readonly thin: Figure | null;
      /** Drum position at which the wide (cylinder) lines are sharp. */
      readonly wide: Figure | null;
      readonly wheel: Figure | null;
    };

export interface MeridianNode extends Span {
  readonly power: Figure;
  readonly meridian: Figure | null;
}

/** An add as ordered or reduced (`value`), or as two drum positions read one after the other (`from` and `to`). */
export interface AddNode extends Span {
  readonly value: Figure | null;
  readonly from: Figure | null;
  readonly to: Figure | null;
  readonly intermediate: Figure | null;
  readonly surface: 'front-vertex' | 'back-vertex' | null;
  readonly engraved: boolean;
}

export type Base = 'in' | 'out' | 'up' | 'down';

/** One prism: an amount with a base word, with an angle (0 to 360), or an amount of nothing. */
export interface PrismComponent extends Span {
  readonly amount: Figure;
  readonly base: Base | null;
  readonly degrees: Figure | null;
  /** Written with a sign, as a change of a prism that is already there. */
  readonly relative: boolean;
}

export interface PowerEntry extends Span {
  readonly eye: EyeWord | null;
  readonly power: PowerNode | null;
  readonly add: AddNode | null;
  readonly prism: readonly PrismComponent[];
  readonly baseCurve: Figure | null;
  readonly thickness: Figure | null;
}

/** Where and with what a measurement was taken, once for the whole line. */
export interface Qualifiers {
  readonly at: Word | null;
  readonly with: Name | null;
  readonly corrected: Span | null;
}

export interface PdNode {
  readonly binocular: Figure | null;
  readonly right: Figure | null;
  readonly left: Figure | null;
}

export interface DesignNode extends Span {
  readonly type: DesignType | null;
  readonly use: 'distance' | 'near' | 'intermediate' | null;
  /** Addition of an intermediate use or of a trifocal's middle part. */
  readonly intermediate: Figure | null;
  readonly shape: 'flat-top' | 'round' | 'curve-top' | 'full-width' | null;
  readonly width: Figure | null;
  /** Depth of the intermediate part of a trifocal. */
  readonly depth: Figure | null;
  readonly gap: Figure | null;
  readonly corridor: Figure | null;
  readonly degression: Figure | null;
  readonly working: Figure | null;
}

export type DesignType = 'single-vision' | 'bifocal' | 'trifocal' | 'double' | 'progressive' | 'office';

export interface MaterialNode extends Span {
  readonly name: Name | null;
  readonly index: Figure | null;
  readonly abbe: Figure | null;
  readonly density: Figure | null;
}

/** A figure under a keyword, such as `DBL 18` or `vertex 13`. */
export interface Setting extends Span {
  readonly key: Word;
  readonly figure: Figure | null;
}

export interface DateNode extends Span {
  /** `2026-11-24`, or null when the typed date is none. */
  readonly iso: string | null;
}

/** What every line has. */
export interface LineBase {
  /** The first word with its span; absent on lines without words. */
  readonly head: Word | null;
  readonly qualifiers?: Qualifiers;
}

export type LineNode = LineBase &
  (
    | { readonly kind: 'blank' }
    | { readonly kind: 'unknown' }
    | { readonly kind: 'order'; readonly name: Name | null }
    | { readonly kind: 'instrument'; readonly name: Name | null }
    | { readonly kind: 'defaults' }
    | { readonly kind: 'end' }
    | { readonly kind: 'tolerance'; readonly name: Name | null; readonly from: Name | null }
    | { readonly kind: 'standard'; readonly name: Name | null }
    | {
        readonly kind: 'reading';
        readonly date: DateNode | null;
        readonly time: Name | null;
        readonly by: Name | null;
        readonly with: Name | null;
        readonly stage: Word | null;
      }
    | { readonly kind: 'power'; readonly again: boolean; readonly entries: readonly PowerEntry[] }
    | { readonly kind: 'powers'; readonly which: PowersWord; readonly entries: readonly PowerEntry[] }
    | { readonly kind: 'add'; readonly again: boolean; readonly entries: readonly ForEye<AddNode>[] }
    | {
        readonly kind: 'prism';
        readonly again: boolean;
        readonly total: Span | null;
        readonly entries: readonly ForEye<readonly PrismComponent[]>[];
      }
    | { readonly kind: 'pd'; readonly again: boolean; readonly distance: PdNode; readonly near: PdNode }
    | { readonly kind: 'centres'; readonly again: boolean; readonly distance: PdNode }
    | {
        readonly kind: 'eye-figure';
        readonly which: EyeFigureWord;
        readonly again: boolean;
        readonly entries: readonly EyeFigure[];
        readonly belowDatum: Span | null;
      }
    | {
        readonly kind: 'clock';
        readonly again: boolean;
        readonly entries: readonly ForEye<ClockNode>[];
      }
    | { readonly kind: 'design'; readonly entries: readonly ForEye<DesignNode>[] }
    | { readonly kind: 'lens'; readonly entries: readonly ForEye<MaterialNode>[] }
    | {
        readonly kind: 'settings';
        readonly which: SettingsWord;
        readonly again: boolean;
        readonly entries: readonly ForEye<readonly Setting[]>[];
      }
    | { readonly kind: 'decentre'; readonly entries: readonly ForEye<readonly PrismComponent[]>[] }
    | { readonly kind: 'segment'; readonly again: boolean; readonly entries: readonly ForEye<SegmentNode>[] }
    | {
        readonly kind: 'choice';
        readonly which: ChoiceWord;
        readonly choice: Word | null;
      }
    | {
        readonly kind: 'results';
        readonly which: TestWord;
        readonly results: readonly ResultNode[];
        /** What was written behind the results in free words. */
        readonly detail: Name | null;
      }
    | {
        readonly kind: 'eyes';
        readonly which: 'make' | 'replaced';
        readonly eyes: readonly EyeWord[];
        readonly reason: Name | null;
      }
    | {
        readonly kind: 'slab';
        readonly reverse: boolean;
        readonly again: boolean;
        readonly entries: readonly EyeFigure[];
      }
    | {
        readonly kind: 'decided';
        readonly verdict: Word | null;
        readonly eyes: readonly EyeWord[];
        readonly by: Name | null;
        readonly why: Name | null;
      }
    | {
        readonly kind: 'confirmed';
        readonly code: Name | null;
        readonly quote: Name | null;
        readonly why: Name | null;
        readonly by: Name | null;
      }
    | {
        readonly kind: 'tint';
        readonly colour: Name | null;
        readonly settings: readonly Setting[];
        readonly bare: Figure | null;
      }
    | { readonly kind: 'remake-of'; readonly name: Name | null; readonly why: Name | null }
    | {
        readonly kind: 'dated';
        readonly which: 'due' | 'calibrated';
        readonly date: DateNode | null;
        readonly due: DateNode | null;
      }
    | { readonly kind: 'test-lens'; readonly nominal: Figure | null; readonly read: Figure | null }
    | { readonly kind: 'figure'; readonly which: 'zero' | 'reads-to' | 'uncertainty'; readonly figure: Figure | null }
    | {
        readonly kind: 'limit';
        readonly which: Word;
        readonly band: Word | null;
        readonly bound: Figure | null;
        readonly limit: Figure | null;
      }
    | { readonly kind: 'text'; readonly which: TextWord; readonly text: Name | null }
  );

export type PowersWord = 'rx' | 'kept' | 'balance' | 'previous' | 'verification';
export type EyeFigureWord = 'height' | 'base-curve' | 'inset' | 'blank' | 'thinning';
export type SettingsWord = 'frame' | 'as-worn' | 'tested' | 'thickness';
export type ChoiceWord = 'supply' | 'compensation' | 'split' | 'purpose';
export type TestWord = 'impact' | 'cosmetic' | 'marking';
export type TextWord = 'note' | 'ref' | 'coating' | 'kind';

/** A figure for one eye, with the base or direction that may follow it. */
export interface EyeFigure extends ForEye<Figure | null> {
  readonly base?: Base;
  /** Of a slab-off, what a lens measure showed beside its line and across it. */
  readonly clock?: { readonly from: Figure; readonly to: Figure | null };
}

/** The result of a test, whatever word stands for it, of the lenses named with it; of the pair where none is. */
export interface ResultNode extends Word {
  readonly eyes: readonly EyeWord[];
}

/** A lens measure on the front: on the distance part and then on the segment, or along two meridians. */
export interface ClockNode extends Span {
  readonly distance: Figure | null;
  readonly segment: Figure | null;
  readonly meridians: readonly MeridianNode[];
}

export interface SegmentNode extends Span {
  readonly width: Figure | null;
  readonly tilt: Figure | null;
  readonly tiltTowards: 'nasal-up' | 'nasal-down' | null;
}

export type LineKind = LineNode['kind'];

export type LineOf<K extends LineKind> = Extract<LineNode, { kind: K }>;

export interface ParsedLine {
  readonly node: LineNode;
  readonly problems: readonly Problem[];
}
