/** Instruments as declared, and what their smallest step does to a reading. */
import type { Block } from '../grammar';
import { isSame, roundTo } from './exact';
import type { Place } from './finding';
import type { Instrument, Measurement, Reading } from './model';

/** Reads an `instrument` block. Returns null when it has no name. */
export function instrumentOf(block: Block): Instrument | null {
  const header = block.lines[0]?.parsed(block.kind).node;
  if (header?.kind !== 'instrument' || !header.name) return null;
  const draft: { -readonly [K in keyof Instrument]: Instrument[K] } = {
    name: header.name.text,
    kind: null,
    step: null,
    zero: null,
    zeroPlace: null,
    uncertainty: null,
    calibrated: null,
    calibratedPlace: null,
    due: null,
    testLenses: [],
    impossible: [],
    block,
  };
  const tests: { nominal: number; read: number; place: Place }[] = [];
  const impossible: Impossible[] = [];
  for (const [line, { node }] of block.lines.map((one) => one.parsed(block.kind)).entries()) {
    if (node.kind === 'figure' && node.figure?.value != null) {
      const { value, start, end } = node.figure;
      if (!isPossible(node.which, value)) impossible.push({ what: node.which, value, place: { line, start, end } });
      if (node.which === 'reads-to') draft.step = node.figure.value;
      else if (node.which === 'zero') {
        draft.zero = node.figure.value;
        draft.zeroPlace = { line, start: node.figure.start, end: node.figure.end };
      } else draft.uncertainty = node.figure.value;
    } else if (node.kind === 'dated' && node.which === 'calibrated') {
      draft.calibrated = node.date?.iso ?? null;
      draft.due = node.due?.iso ?? null;
      const { calibrated, due } = draft;
      if (node.date) draft.calibratedPlace = { line, start: node.date.start, end: node.date.end };
      if (node.due && calibrated !== null && due !== null && due <= calibrated)
        impossible.push({ what: 'due', value: due, place: { line, start: node.due.start, end: node.due.end } });
    } else if (node.kind === 'text' && node.which === 'kind') draft.kind = node.text?.text ?? null;
    else if (node.kind === 'test-lens' && node.nominal?.value != null && node.read?.value != null) {
      const place = { line, start: node.nominal.start, end: node.read.end };
      tests.push({ nominal: node.nominal.value, read: node.read.value, place });
    }
  }
  return { ...draft, testLenses: tests, impossible };
}

type Impossible = Instrument['impossible'][number];

/** What the figures of a focimeter can be, dioptres: a step and an uncertainty are more than nothing. The ends are ours. */
const POSSIBLE = {
  'reads-to': { above: 0, most: 0.5 },
  uncertainty: { above: 0, most: 1 },
  zero: { above: -1.0001, most: 1 },
} as const;

/** Whether a focimeter can have such a step, such an uncertainty or such a zero, dioptres. */
export const isPossible = (what: keyof typeof POSSIBLE, value: number): boolean =>
  value > POSSIBLE[what].above && value <= POSSIBLE[what].most;

/** The instrument a line was read on: its own, or that of the whole reading. Null where none is named or declared. */
export const instrumentOfLine = (
  line: Pick<Measurement, 'with'>,
  reading: Pick<Reading, 'with'>,
  instruments: ReadonlyMap<string, Instrument>,
): Instrument | null => instruments.get(line.with ?? reading.with ?? '') ?? null;

/**
 * What the drum shows with nothing on the stop, dioptres, as it comes off an absolute power of this line: the zero of
 * the day where the reading says one, else that of the instrument. The zero of the day is that of the reading’s own
 * instrument, and not of another that a line was read on.
 */
export function zeroOf(
  line: Pick<Measurement, 'with' | 'corrected'>,
  reading: Pick<Reading, 'with' | 'zero'>,
  instrument: Instrument | null,
): number {
  if (line.corrected) return 0;
  const isOther = line.with !== null && reading.with !== null && line.with !== reading.with;
  return (isOther ? null : reading.zero?.value) ?? instrument?.zero ?? 0;
}

/** Whether an instrument reads powers: a focimeter, or one of which nothing is said. */
export const isPowerInstrument = ({ kind }: Instrument): boolean => kind === null || /focimeter|lensmeter/i.test(kind);

/** Whether a person turns a drum and looks for the sharp lines: said, or plain from marks at eighths or quarters. */
export const isManual = (instrument: Instrument): boolean =>
  /manual/i.test(instrument.kind ?? '') || (isCoarse(instrument) && !isDigital(instrument));

export const isDigital = ({ kind }: Instrument): boolean => /digital|auto/i.test(kind ?? '');

/** Steps at which a drum shows eighths, so that a figure cut to two decimals stands for one. */
const COARSE_STEPS = [0.125, 0.25];

/** Two-decimal spellings of the odd eighths: .12 or .13, .37 or .38, .62 or .63, .87 or .88. */
const CUT = 0.0051;

export const isCoarse = (instrument: Instrument | null): boolean =>
  instrument?.step != null && COARSE_STEPS.some((step) => isSame(step, instrument.step as number));

/**
 * A power figure read on a coarse instrument, with the odd eighths taken as eighths: 0.62 is 0.625 there.
 * Any other figure, and every figure of a finer instrument, is returned as typed.
 */
export function asEighth(value: number, instrument: Instrument | null): number {
  if (!isCoarse(instrument)) return value;
  const eighth = Math.round(value * 8) / 8;
  const odd = Math.round(Math.abs(value) * 8) % 2 === 1;
  return odd && Math.abs(roundTo(value - eighth, 4)) < CUT ? eighth : value;
}
