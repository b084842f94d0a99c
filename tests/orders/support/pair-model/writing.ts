/** The readings of one pair in every way of writing them: a way is drawn part by part, and says what it leaves unknown. */

import type { Chance } from './chance';
import { dioptres, mm, POWER_FORMS, type PowerForm, powerText } from './figures';
import { EYES, type Eye, exactly, type Toric } from './lens';
import { printedSet } from './limits';
import { BODY, instrumentName, instruments, orderLines } from './order-text';
import type { Known, Pair } from './pair';
import { type AddWay, addLines, addWays } from './writing-adds';
import { type Places, type PlaceWay, placesOf, placeWays } from './writing-places';

export interface Way {
  readonly power: PowerForm;
  readonly place: PlaceWay;
  readonly add: AddWay;
  readonly near: 'each' | 'total';
  /** The zero of the instrument already off the figures. */
  readonly isCorrected: boolean;
  /** How often everything was read; the mean is the thing itself. */
  readonly times: 1 | 2 | 3;
  /** The instrument named on each line that it read, and not for the whole reading. */
  readonly isNamedByLine: boolean;
  /** Powers and what goes with them in one reading, places in a later one. */
  readonly isSplit: boolean;
}

export interface Written {
  readonly name: string;
  readonly lines: readonly string[];
  readonly known: Known;
  readonly way: Way;
  /** How far what was typed may lie from the thing: prism dioptres, millimetres, dioptres. */
  readonly rounding: Readonly<Record<'prism' | 'centres' | 'mm' | 'add' | 'power', number>>;
}

export const wayOf = (pair: Pair, chance: Chance): Way => ({
  power: chance.of(POWER_FORMS),
  place: chance.of(placeWays(pair)),
  add: chance.of(addWays(pair)),
  near: chance.of(['each', 'total'] as const),
  isCorrected: chance.is(0.3),
  times: chance.of([1, 1, 2, 3]),
  isNamedByLine: chance.is(0.15),
  isSplit: chance.is(0.2),
});

/** How the repeats of a reading lie around it; a drum that shows eighths shows the same one again. */
const SPREADS: Readonly<Record<Way['times'], readonly number[]>> = { 1: [0], 2: [1, -1], 3: [1, 0, -1] };

export function written(pair: Pair, way: Way, name: string, chance: Chance): Written {
  const { focimeter } = pair;
  const places = placesOf(pair, way.place, way.near, chance);
  const adds = addLines(pair, way.add, chance);
  const spread = SPREADS[way.times];
  const by = `with ${instrumentName(pair)}`;
  const header = (time: string): string => `reading 2026-11-24 ${time} by KO${way.isNamedByLine ? '' : ` ${by}`}`;
  const onLine = (line: string): string => (way.isNamedByLine ? `${line} ${by}` : line);
  const zero = focimeter.zeroOf === 'day' && focimeter.zero !== 0 ? [`zero ${zeroText(pair, chance)}`] : [];
  const powers = spread.flatMap((step, at) => powerLines(pair, way, step, at > 0, places, chance));
  const placed = spread.flatMap((step, at) => places.lines(step).map((line) => (at > 0 ? `again ${line}` : line)));
  const added = [...adds.lines, ...(way.times > 1 ? adds.lines.map((line) => `again ${line}`) : [])];
  const rest = [...bodyLines(pair, chance), 'impact passed', 'cosmetic passed'];
  const later = [header('15:10'), ...zero];
  const lines = [
    ...orderLines(pair, name, chance),
    header('14:30'),
    ...zero,
    ...powers.map(onLine),
    // Both powers of an add by two of them belong to one reading.
    ...added.map(onLine),
    ...(way.isSplit ? later : []),
    ...placed,
    ...rest,
  ];
  return {
    name,
    lines,
    known: { ...places.known, near: way.near, surface: way.add === 'drum, back surface' ? 'back' : 'front' },
    way,
    rounding: { ...places.rounding, mm: 1e-9, add: adds.rounding, power: 1e-9 },
  };
}

/** A drum that shows eighths has its zero on one of them, however that is typed. */
const zeroText = ({ focimeter: { zero } }: Pair, chance: Chance): string => dioptres(zero, chance);

function powerLines(
  pair: Pair,
  { power: form, isCorrected, times }: Way,
  step: number,
  isAgain: boolean,
  places: Places,
  chance: Chance,
): string[] {
  const { focimeter, made } = pair;
  const by = focimeter.step === 0.01 ? step * 0.02 : 0;
  const zero = isCorrected ? 0 : focimeter.zero;
  const ending = isCorrected ? ' corrected' : '';
  return EYES.map((eye: Eye) => {
    const lens: Toric = { ...made[eye].power, sphere: exactly(made[eye].power.sphere + by) };
    // Repeats need not be in the form of the first.
    const own = isAgain && chance.is(0.5) ? chance.of(POWER_FORMS) : form;
    const prism = places.besidePower?.(eye, times > 1 ? step : 0) ?? '';
    return `${isAgain ? 'again ' : ''}${eye} ${powerText(lens, own, zero, chance)}${prism}${ending}`;
  });
}

/** Curves, thicknesses, and what the segments look like. */
function bodyLines({ set, made, kind }: Pair, chance: Chance): string[] {
  const { plain } = printedSet(set);
  const each = (text: (eye: Eye) => string): string => EYES.map((eye) => `${eye} ${text(eye)}`).join(' ');
  const lines: string[] = [];
  if (plain.baseCurve) lines.push(`base-curve ${each((eye) => dioptres(made[eye].base, chance).slice(1))}`);
  if (plain.centreThickness) lines.push(`thickness ${each(() => `centre ${BODY.thickness}`)}`);
  if (kind === 'segment' && plain.segmentSize) lines.push(`segment ${each((eye) => mm(made[eye].width))}`);
  if (kind === 'segment' && plain.segmentTilt)
    lines.push(`segment ${each((eye) => `tilt ${made[eye].tilt} nasal-up`)}`);
  return lines;
}

/** A file of many pairs, or of many ways of one. */
export const fileOf = (pairs: readonly Pair[], all: readonly Written[]): string =>
  [...instruments(pairs), ...all.flatMap(({ lines }) => lines)].join('\n');
