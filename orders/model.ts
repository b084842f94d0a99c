/**
 * What an order file means: orders, the lenses in them, and the readings taken on the finished pair. Every value keeps
 * the place where it was typed. Dioptres, prism dioptres, millimetres and degrees throughout.
 */
import type { Base, Block, DesignType, Eye } from '../grammar';
import type { Power, PrismVector } from '../optics';
import type { Supply } from '../tables';
import type { Place } from './finding';

/** A value with the place where it was typed. */
export interface Placed<V> {
  readonly value: V;
  readonly place: Place;
}

/** One value for each eye. */
export type PerEye<V> = Readonly<Record<Eye, V>>;

export const EYES: readonly Eye[] = ['R', 'L'];
/** The other eye of a pair. */
export const otherEye = (eye: Eye): Eye => (eye === 'R' ? 'L' : 'R');

/** The form a power was written in. */
export type CylinderForm = 'sphere' | 'minus' | 'plus' | 'meridians';

/** A power as written: in one cylinder form, with the form it was written in. */
export interface WrittenPower extends Placed<Power> {
  readonly form: CylinderForm;
}

/** A lens type with what belongs to it, lengths in millimetres; null where nothing is said. */
export interface Design {
  readonly type: DesignType;
  readonly use: 'distance' | 'near' | 'intermediate' | null;
  readonly shape: 'flat-top' | 'round' | 'curve-top' | 'full-width' | null;
  /** Width and depth of the segment in millimetres. */
  readonly width: number | null;
  readonly depth: number | null;
  readonly gap: number | null;
  readonly corridor: number | null;
  /** How much weaker the top of an office lens is than its near power, dioptres, as a size. */
  readonly degression: number | null;
  readonly working: number | null;
  readonly intermediate: number | null;
}

/** A lens material: its name and what is known of it, as typed or from the table of materials. */
export interface LensMaterial {
  /** The name as typed, or null when only an index is given. */
  readonly name: string | null;
  readonly index: number | null;
  readonly abbe: number | null;
  readonly density: number | null;
  /** Id in the table of materials, when the name is a known one. */
  readonly known: string | null;
}

/** A distance between the eyes or between two points of the lenses, millimetres. */
export interface Distances {
  readonly binocular: Placed<number> | null;
  readonly R: Placed<number> | null;
  readonly L: Placed<number> | null;
}

/** Thicknesses asked for, millimetres: at the distance reference point, of the thinnest edge, and anywhere. */
export interface ThicknessWish {
  readonly centre: Placed<number> | null;
  readonly edge: Placed<number> | null;
  readonly min: Placed<number> | null;
}

/** Why an ordered prism cannot be taken: a change of another prism, no base, or one angle said for both eyes. */
export type PrismUnclear = 'relative' | 'base-missing' | 'angle-for-both';

/** A displacement on one lens in millimetres, positive towards the nose and upwards. */
export interface Decentration {
  readonly in: number;
  readonly up: number;
}

/** Slab-off, base up, or a reverse slab, base down, on one lens; the amount in prism dioptres where it is given. */
export interface Slab {
  readonly reverse: boolean;
  readonly amount: number | null;
}

/** A power stated beside the order: as prescribed, of the old pair, or of a lens that stays in the frame. */
export interface Stated {
  readonly power: WrittenPower | null;
  readonly add: Placed<number> | null;
  readonly prism: Placed<PrismVector> | null;
}

/** One lens as ordered. */
export interface OrderedLens {
  readonly eye: Eye;
  /** `made` is ordered; `balance` is made without a power to be judged; `kept` stays in the frame; `absent` is left out by a `make` of the other. A lens whose power is missing or unreadable is still one to be made. */
  readonly role: 'made' | 'balance' | 'kept' | 'absent';
  /** Where the eye is first named with a power, readable or not. */
  readonly named: Place | null;
  readonly written: WrittenPower | null;
  readonly add: Placed<number> | null;
  /** Of the upper one of two segments. */
  readonly upperAdd: Placed<number> | null;
  readonly intermediate: Placed<number> | null;
  /** Ordered prism at the reference point; null means none is ordered. */
  readonly prism: Placed<PrismVector> | null;
  readonly prismUnclear: Placed<PrismUnclear> | null;
  readonly design: Placed<Design> | null;
  readonly material: Placed<LensMaterial> | null;
  /** Above the lower tangent of the boxed lens; worked out where it was given below the datum line. */
  readonly height: Placed<number> | null;
  /** Of the lower edge of the upper one of two segments, above the lower tangent. */
  readonly upperHeight: Placed<number> | null;
  readonly belowDatum: Placed<number> | null;
  readonly inset: Placed<number> | null;
  /** Where the optical centre is to stand from the middle of the uncut lens, millimetres, positive inwards and upwards. */
  readonly decentre: Placed<Decentration> | null;
  readonly blank: Placed<number> | null;
  readonly baseCurve: Placed<number> | null;
  readonly thickness: ThicknessWish;
  /** What a focimeter should read, where the maker states it. */
  readonly verification: Verification | null;
  readonly slab: Placed<Slab> | null;
  /** Equal prism thinning of both lenses, prism dioptres, base up positive; null where nothing is said of it. */
  readonly thinning: Placed<number> | null;
  readonly rx: Stated | null;
  readonly previous: Stated | null;
  readonly kept: Stated | null;
  /** The power of a balance lens, where one is wished. */
  readonly balance: Stated | null;
}

/** What a focimeter should read, stated by the maker: dioptres, and prism dioptres before the eye. */
export interface Verification {
  readonly power: WrittenPower;
  readonly add: Placed<number> | null;
  readonly prism: Placed<PrismVector> | null;
}

/** The boxing dimensions of a frame, millimetres: box width and height, distance between lenses, effective diameter. */
export interface Frame {
  readonly a: Placed<number> | null;
  readonly b: Placed<number> | null;
  readonly dbl: Placed<number> | null;
  readonly ed: Placed<number> | null;
}

/** How the pair sits before the eyes. */
export interface AsWorn {
  /** Millimetres from the back vertex to the eye. */
  readonly vertex: Placed<number> | null;
  /** Degrees. */
  readonly panto: Placed<number> | null;
  readonly wrap: Placed<number> | null;
}

export type { Supply };
/** How the lab may share ordered prism between the lenses. */
export type Split = 'free' | 'equal' | 'as-written';
/** What the pair is for, as far as thickness and impact go. */
export type Purpose = 'general' | 'safety' | 'child';
/** Whether the written powers still have to be converted for the way the pair is worn. */
export type Compensation = 'none' | 'done' | 'vertex' | 'by-maker';

/** One order with its readings, as the file says it; nothing is judged yet. */
export interface Order {
  readonly name: string | null;
  /** The name, or the word `order` where the name is missing. */
  readonly place: Place;
  readonly lenses: PerEye<OrderedLens>;
  readonly pd: Distances;
  readonly nearPd: Distances;
  readonly frame: Frame;
  readonly asWorn: AsWorn;
  readonly tested: Placed<number> | null;
  readonly compensation: Placed<Compensation> | null;
  readonly supply: Supply;
  /** Whether the supply is said, plain from what only glazed lenses have, or assumed because nothing is known. */
  readonly supplyFrom: 'said' | 'frame' | 'assumed';
  /** Which cautions on thickness and impact apply. */
  readonly purpose: Placed<Purpose> | null;
  readonly standard: Placed<string> | null;
  readonly yoked: boolean;
  /** The prism is written as a whole for both lenses. */
  readonly isPrismTotal: boolean;
  /** How the lab may share the ordered prism. */
  readonly split: Placed<Split> | null;
  /** Eyes whose lens alone is to be made. */
  readonly make: PerEye<Place | null>;
  readonly readings: readonly Reading[];
  /** Lines whose codes a person has confirmed. */
  readonly confirmed: readonly Confirmation[];
  readonly decided: Decision | null;
}

/** A finding that a person has looked at and let stand, for as long as the quoted line reads the same. */
export interface Confirmation {
  readonly code: string;
  readonly quote: string;
  /** The reason and who gives it; without both it holds nothing. */
  readonly why: string | null;
  readonly by: string | null;
  readonly place: Place;
}

/** What a person has decided about the pair; it stands beside the computed verdict. */
export interface Decision {
  readonly verdict: 'accept' | 'reject' | 'remake';
  readonly by: string | null;
  readonly why: string | null;
  readonly place: Place;
}

/** The stage of the work at which was read. */
export type Stage = 'uncut' | 'edged' | 'final';

/** One sitting at the bench: who read what when, with which instrument, at which stage of the work. */
export interface Reading {
  readonly date: string | null;
  readonly time: string | null;
  readonly by: string | null;
  readonly with: string | null;
  readonly withPlace: Place | null;
  readonly stage: Stage;
  readonly place: Place;
  /** What the drum shows with nothing on the stop. */
  readonly zero: Placed<number> | null;
  readonly measurements: readonly Measurement[];
  /** Lenses said to be new ones, with the line from which on that holds. */
  readonly replaced: readonly Placed<Eye>[];
}

interface MeasurementBase {
  readonly place: Place;
  readonly eye: Eye | null;
  readonly again: boolean;
  readonly with: string | null;
  readonly withPlace: Place | null;
  readonly at: string | null;
  readonly corrected: boolean;
}

/** Figures of a power as typed: before eighths are read as eighths and before the zero is taken off. */
export interface TypedPower {
  readonly sphere: number;
  readonly cylinder: number;
  readonly axis: number | null;
  readonly form: CylinderForm | 'lines';
}

/** An add as read: as a figure, as two drum positions, or as two figures of a lens measure; dioptres. */
export type AddReading =
  | { readonly kind: 'value'; readonly value: number; readonly engraved: boolean }
  | {
      readonly kind: 'drum';
      readonly from: number;
      readonly to: number;
      readonly surface: 'front-vertex' | 'back-vertex' | null;
    }
  | { readonly kind: 'clock'; readonly from: number; readonly to: number };

/** A slab-off as measured: its prism, base up positive, or two figures of a lens measure beside the line and across it. */
export type SlabReading =
  | { readonly kind: 'value'; readonly value: number }
  | { readonly kind: 'clock'; readonly from: number; readonly to: number; readonly reverse: boolean };

/** Where the target stands: the ring it is on, prism dioptres, and the angle it lies towards, 0 to 360 degrees. */
export interface Ring {
  readonly amount: number;
  readonly degrees: number;
}

/** The horizontal or the vertical part of a prism. */
export type PrismPart = keyof PrismVector;

/** One thing measured. `eye` is null for what belongs to the pair. */
export type Measurement = MeasurementBase &
  (
    | { readonly quantity: 'power'; readonly value: TypedPower }
    | { readonly quantity: 'add'; readonly value: AddReading }
    | {
        readonly quantity: 'prism';
        readonly value: PrismVector;
        readonly ring: Ring | null;
        /** The part that the line does not mention; absent where it speaks of both. */
        readonly unsaid?: PrismPart;
      }
    | { readonly quantity: 'pd' | 'near-pd' | 'optical-centres'; readonly value: number }
    | { readonly quantity: 'intermediate'; readonly value: number }
    | { readonly quantity: 'height' | 'base-curve' | 'segment-width'; readonly value: number }
    | {
        readonly quantity: 'segment-tilt';
        /** Degrees, positive with the nasal end up. */
        readonly value: number;
        /** Which end is the higher one was not said, so the sign means nothing. */
        readonly unsided?: true;
      }
    | { readonly quantity: 'centre-thickness' | 'edge-thickness' | 'min-thickness'; readonly value: number }
    | { readonly quantity: 'warp'; readonly value: number }
    | { readonly quantity: 'slab'; readonly value: SlabReading }
    | { readonly quantity: 'impact' | 'cosmetic' | 'marking'; readonly value: 'passed' | 'failed' }
  );

/** What may be measured. */
export type MeasuredQuantity = Measurement['quantity'];

/** An instrument as declared in a file. */
export interface Instrument {
  readonly name: string;
  readonly kind: string | null;
  /** Smallest step shown, dioptres. */
  readonly step: number | null;
  readonly zero: number | null;
  /** Of the line that states the zero. */
  readonly zeroPlace: Place | null;
  /** Stated uncertainty of a power reading, dioptres. */
  readonly uncertainty: number | null;
  readonly calibrated: string | null;
  readonly calibratedPlace: Place | null;
  readonly due: string | null;
  /** What no instrument can have: a step of nothing, a negative uncertainty, a calibration due before it was made. */
  readonly impossible: readonly {
    readonly what: 'reads-to' | 'uncertainty' | 'zero' | 'due';
    readonly value: number | string;
    readonly place: Place;
  }[];
  readonly testLenses: readonly { readonly nominal: number; readonly read: number; readonly place: Place }[];
  /** The lines that describe it. */
  readonly block: Block;
}

export const BASE_SIGNS: Readonly<Record<Base, { readonly in: number; readonly up: number }>> = {
  in: { in: 1, up: 0 },
  out: { in: -1, up: 0 },
  up: { in: 0, up: 1 },
  down: { in: 0, up: -1 },
};
