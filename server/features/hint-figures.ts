import { type Power, powerInForm, powerInWords, roundTo, signed } from '../../orders';
import type { HintSettings } from '../settings';

/** A worked-out power in the form and with the decimal places that the user wants to see. */
export function hintPower(power: Power, { cylinder, decimals }: HintSettings): string {
  const shown = cylinder === 'other' ? power : powerInForm(power, cylinder);
  if (decimals !== 2) return padded(powerInWords(shown), decimals);
  return powerInWords({ ...shown, sphere: roundTo(shown.sphere, 2), cylinder: roundTo(shown.cylinder, 2) });
}

/** A worked-out figure in dioptres, the same way. */
export const hintFigure = (value: number, { decimals }: HintSettings): string =>
  decimals === 2 ? signed(roundTo(value, 2)) : padded(signed(value), decimals);

/** Figures with two decimal places get a third. */
const padded = (words: string, decimals: HintSettings['decimals']): string =>
  decimals === 3 ? words.replace(/\.\d\d(?!\d)/g, '$&0') : words;
