/** The shape of `report --format json`. Within `"lentil": 1` fields are only added; `schema/report.schema.json` says the same. */
import { CAUTION } from '../findings/text';
import type { DeviationJson } from './parts/deviations';
import type { FailuresJson } from './parts/failures';
import type { InstrumentJson } from './parts/instruments';
import type { OpenJson } from './parts/open-orders';
import type { OperatorJson } from './parts/operators';
import type { RemakesJson } from './parts/remakes';
import type { RepeatsJson } from './parts/repeats';
import type { FirstPassJson } from './parts/verdicts';

export interface ScopeJson {
  readonly files: number;
  readonly filesUnreadable: number;
  readonly orders: number;
  readonly readings: number;
  /** Oldest and newest day of a reading. */
  readonly from: string | null;
  readonly to: string | null;
  /** The day that ages are counted to, and whether it was given or is the newest in the files. */
  readonly date: string | null;
  readonly dateGiven: boolean;
  /** Orders by the standard they were judged by; null for those that were not judged. */
  readonly standards: readonly { readonly name: string | null; readonly orders: number }[];
  /** Orders by the weakest evidence among the limits that decided. */
  readonly evidence: readonly { readonly evidence: string; readonly orders: number }[];
}

/** The quality report as an object. */
export interface ReportJson {
  readonly lentil: 1;
  readonly scope: ScopeJson;
  readonly firstPass: FirstPassJson;
  readonly failures: FailuresJson;
  readonly deviations: readonly DeviationJson[];
  readonly instruments: readonly InstrumentJson[];
  readonly repeatability: readonly RepeatsJson[];
  readonly operators: readonly OperatorJson[];
  readonly open: OpenJson;
  readonly remakes: RemakesJson;
  readonly unreadable: readonly { readonly path: string; readonly error: string }[];
  readonly cautions: readonly string[];
}

export const CAUTIONS: readonly string[] = [
  CAUTION,
  'Rates and spreads are those of the orders in these files, as they were written down. What was not written down, such as a lens broken before it was read, is not in them.',
  'Differences between instruments and between operators may come from the work they were given. They are a reason to look, and no judgement of anybody.',
];
