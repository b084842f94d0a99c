/** The shapes of `check --format json`. Within `"lentil": 1` fields are only added; `schema/check.schema.json` says the same. */
import type {
  Evidence,
  Eye,
  GuardBand,
  Level,
  Origin,
  Outcome,
  Quantity,
  Range,
  Step,
  Unit,
  Verdict,
  WorkedCode,
  WorkedRefusal,
  WorkedUnit,
} from '../../orders';

/** A change of the text that mends a finding. */
export interface FixJson {
  readonly title: string;
  /** Safe fixes keep the meaning of the line. */
  readonly safe: boolean;
  readonly edits: readonly { readonly range: Range; readonly text: string }[];
}

/** One finding; lines and columns count from zero, columns in UTF-16 units. */
export interface FindingJson {
  readonly code: string;
  readonly level: Level;
  readonly message: string;
  /** Name of the order, or null where the finding belongs to none or the order has no name. */
  readonly order: string | null;
  readonly eye: Eye | null;
  readonly range: Range;
  readonly related?: readonly Range[];
  readonly fixes: readonly FixJson[];
}

/** A power in dioptres; the axis of a sphere is null. */
export interface PowerJson {
  readonly sphere: number;
  readonly cylinder: number;
  readonly axis: number | null;
}

/** A number; a power; a power along a meridian; a prism or a displacement, positive inwards and upwards. */
export interface AmountJson {
  readonly value:
    | number
    | PowerJson
    | { readonly meridian: number; readonly power: number }
    | { readonly in: number; readonly up: number };
  readonly unit: WorkedUnit;
}

/** A figure that another was worked out from, and where it came from. */
export interface InputJson extends AmountJson {
  readonly from: Origin;
}

/** A figure worked out from the order, with the way it is made and everything it rests on. */
export interface WorkedJson {
  readonly what: WorkedCode;
  readonly eye: Eye | null;
  /** By name; empty where the figure is refused. */
  readonly values: Readonly<Record<string, AmountJson>>;
  /** Why nothing came out, although the order says enough. */
  readonly refused?: WorkedRefusal;
  readonly formula: string;
  readonly inputs: Readonly<Record<string, InputJson>>;
  readonly source: string;
  /** What the order does not say and was taken as usual. */
  readonly assumed: readonly string[];
}

/** One lens of an order with the figures an order writer looks for; dioptres and millimetres. */
export interface LensJson {
  readonly role: 'made' | 'balance' | 'kept';
  /** As written, in one cylinder form; null where the order gives this lens no power. */
  readonly ordered: (PowerJson & { readonly add?: number }) | null;
  readonly made: PowerJson | null;
  readonly minus: PowerJson | null;
  readonly plus: PowerJson | null;
  readonly meridians: readonly { readonly meridian: number; readonly power: number }[];
  readonly sphericalEquivalent: number | null;
  readonly near: PowerJson | null;
  /** Ordered prism before this eye, base in and base up positive. */
  readonly prism: { readonly in: number; readonly up: number } | null;
  readonly decentration: { readonly in: number; readonly up?: number } | null;
  readonly segment: { readonly drop: number | null; readonly inset: number | null } | null;
  readonly blank: number | null;
  /** Everything that the order says enough for; empty where brief output was asked for. */
  readonly worked: readonly WorkedJson[];
}

/** One thing held against its limit, in the unit that `unit` names. */
export interface MeasureJson {
  readonly quantity: Quantity;
  readonly meridian?: 1 | 2;
  readonly eye: Eye | null;
  readonly ordered: number | null;
  readonly read: number | null;
  readonly deviation: number | null;
  /** Index of the reading it was taken from. */
  readonly reading: number | null;
  readonly limit: number | null;
  /** Lower end of a one-sided limit. */
  readonly low?: number;
  readonly unit: Unit | null;
  readonly outcome: Outcome;
  readonly standard: string | null;
  readonly evidence: Evidence | null;
  /** Id of the source of the limit, and the row of its table in words. */
  readonly source: string | null;
  readonly row: string | null;
  readonly range: Range | null;
  /** From the typed figure to the judged one, in the order it was done. */
  readonly steps: readonly Step[];
  readonly tooCoarse?: true;
  readonly because?: string;
  /** Largest less smallest of repeated readings. */
  readonly spread?: number;
  /** The repeated readings themselves. */
  readonly repeats?: readonly number[];
  /** How far the instrument alone may be off. */
  readonly uncertainty?: number;
  /** What the house asks beyond the published set. */
  readonly house?: { readonly set: string; readonly limit: number; readonly breached: boolean };
  /** The same error in the other unit: millimetres beside prism, prism beside millimetres. */
  readonly beside?: { readonly amount: number; readonly unit: Unit };
}

/** One sitting at the bench. */
export interface ReadingJson {
  readonly date: string | null;
  readonly time: string | null;
  readonly by: string | null;
  readonly with: string | null;
  readonly stage: 'uncut' | 'edged' | 'final';
  readonly range: Range;
  /** What this reading said and a later one replaced. */
  readonly measures?: readonly MeasureJson[];
}

/** An order with its verdict and everything the verdict rests on. */
export interface OrderJson {
  readonly name: string | null;
  readonly range: Range;
  readonly verdict: Verdict;
  readonly reservations: readonly string[];
  /** Codes of findings that keep the order from being accepted. */
  readonly unresolved: readonly string[];
  /** The standard as named, the decision rule, and the weakest evidence among the limits that decided. */
  readonly standard: string | null;
  readonly guard: GuardBand;
  readonly evidence: Evidence | null;
  readonly lenses: { readonly R: LensJson | null; readonly L: LensJson | null };
  /** What is worked out for the pair; empty where brief output was asked for. */
  readonly worked: readonly WorkedJson[];
  readonly readings: readonly ReadingJson[];
  readonly measures: readonly MeasureJson[];
  readonly decided: {
    readonly verdict: 'accept' | 'reject' | 'remake';
    readonly by: string | null;
    readonly why: string | null;
  } | null;
}

/** Everything told about one file. */
export interface FileJson {
  readonly path: string;
  /** Why the file could not be read; absent when it could. */
  readonly error?: string;
  readonly orders: readonly OrderJson[];
  readonly findings: readonly FindingJson[];
}

/** How many of each over all files. */
export interface TotalsJson {
  readonly files: number;
  readonly orders: number;
  readonly accept: number;
  readonly reject: number;
  readonly incomplete: number;
  readonly unread: number;
  readonly errors: number;
  readonly warnings: number;
}

/** The whole document of `check --format json`. */
export interface CheckJson {
  readonly lentil: 1;
  readonly files: readonly FileJson[];
  readonly totals: TotalsJson;
}

/** One line of `check --format jsonl`: an order, or what was found outside every order. */
export interface LineJson {
  readonly lentil: 1;
  readonly path: string;
  readonly error?: string;
  readonly order: OrderJson | null;
  readonly findings: readonly FindingJson[];
}
