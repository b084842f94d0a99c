/** What a focimeter may be off by: the limits of its indication and of its zero, from the table of focimeters. */
import { focimeterLimits, type InstrumentCell } from '../tables';
import { isInBand } from './band';
import { isSame } from './exact';
import { isDigital } from './instrument';
import type { Instrument } from './model';

/** A limit with its source; dioptres or prism dioptres, either way. */
export interface FocimeterLimit extends InstrumentCell {
  readonly limit: number;
}

/** Limit of the indication at a vertex power, dioptres; that at 0 D holds for the zero. ISO 8598:1996. */
export const indicationLimit = (power: number): FocimeterLimit | null =>
  focimeterLimits.vertexPower.find(({ band }) => isInBand(Math.abs(power), band)) ?? null;

/** Limit of the indication at a prism, prism dioptres. ISO 8598:1996. */
export const prismIndicationLimit = (prism: number): FocimeterLimit | null =>
  focimeterLimits.prism.find(({ band }) => isInBand(Math.abs(prism), band)) ?? null;

/**
 * How far an instrument may be off on a test lens, dioptres. A digital display that rounds to eighths or quarters has
 * limits of its own on test lenses of whole quarters; where such a cell could not be read, those of continuous
 * indication hold.
 */
export function testLensLimit(instrument: Instrument, nominal: number): FocimeterLimit | null {
  const { step } = instrument;
  const isRounding = step !== null && isDigital(instrument) && isSame(nominal * 4, Math.round(nominal * 4));
  const table = isRounding ? focimeterLimits.rounding.find((one) => isSame(one.step, step)) : undefined;
  const row = table?.rows.find(({ band }) => isInBand(Math.abs(nominal), band));
  return row?.limit === undefined ? indicationLimit(nominal) : { ...row, limit: row.limit };
}

/** What the zero of an instrument in order keeps within, dioptres; a display in hundredths has the finer limit. */
export function zeroLimit(instrument: Instrument | null): FocimeterLimit | null {
  const item = instrument?.step != null && instrument.step <= FINE_STEP ? 'zero-on-0.01-display' : 'zero';
  return focimeterLimits.single.find((one) => one.item === item) ?? null;
}

const FINE_STEP = 0.01;
