/** Figures as the page shows them. */
import { type Quantity, quantityInWords, roundTo, type Unit } from '../../../orders';
import type { Rate } from '../statistics/rate';

/** A minus sign as wide as the plus, and not a hyphen at which a line may break. */
const typographic = (figure: string): string => figure.replace('-', '\u2212');

export const whole = (count: number): string => String(count).replace(/\B(?=(?:\d{3})+$)/g, '\u202f');

export const times = (count: number, one: string, many = `${one}s`): string =>
  `${whole(count)} ${count === 1 ? one : many}`;

export const percent = (share: number, decimals = 1): string => `${(share * 100).toFixed(decimals)}\u00a0%`;

export const shareOf = ({ rate }: Rate): string => (rate === null ? '\u2013' : percent(rate));

export const intervalOf = ({ low, high }: Rate): string =>
  low === null || high === null ? '\u2013' : `${(low * 100).toFixed(1)} to ${percent(high)}`;

export const plainFigure = (value: number, decimals = 2): string =>
  typographic(roundTo(value, decimals).toFixed(decimals));

/** With its sign, for what may lie to either side of nothing. */
export const signedFigure = (value: number, decimals = 2): string => {
  const shown = plainFigure(value, decimals);
  return roundTo(value, decimals) > 0 ? `+${shown}` : shown;
};

const UNITS: Readonly<Record<Unit, string>> = { D: 'D', deg: '°', mm: 'mm', prism: 'Δ' };

/** Decimals that an instrument of the bench shows, and one more where a mean is shown. */
const DECIMALS: Readonly<Record<Unit, number>> = { D: 3, prism: 3, mm: 2, deg: 1 };

export const unitInWords = (unit: Unit): string => UNITS[unit];

const withUnit = (figure: string, unit: Unit): string =>
  unit === 'deg' ? `${figure}°` : `${figure}\u00a0${UNITS[unit]}`;

export const amount = (value: number, unit: Unit): string => withUnit(plainFigure(value, DECIMALS[unit]), unit);
export const signedAmount = (value: number, unit: Unit): string => withUnit(signedFigure(value, DECIMALS[unit]), unit);

/** `PD`, `Axis`, `Horizontal prism of the pair`. */
export function measureName(quantity: string): string {
  const words = quantityInWords(quantity as Quantity) ?? quantity;
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** `lens-turned` as `Lens turned`. */
export const causeName = (code: string): string => {
  const words = code.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
};

/** `Week 48 of 2026` for `2026-W48`. */
export const weekName = (week: string): string => `Week ${Number(week.slice(6))} of ${week.slice(0, 4)}`;
