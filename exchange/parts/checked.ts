/** Figures from outside, held against what a spectacle lens can be before they go into a text. */
import { PART_UNITS, type PartCode } from './part';

/** Beyond this the notation takes no power and no prism, dioptres and prism dioptres. */
const LARGEST_POWER = 40;
/** Longer than anything on a pair of spectacles, millimetres. */
const LARGEST_LENGTH = 200;

const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d{1,3})?$/;

export type Checked = { readonly value: number; readonly rounded: boolean } | { readonly error: string };

/**
 * The value of a figure, or in a few words why it cannot be one of this kind. It is rounded to a ten-thousandth, and an
 * axis to whole degrees from 1 to 180, as the notation writes them.
 */
export function checkedFigure(code: PartCode, text: string): Checked {
  const typed = text.trim();
  if (typed.length > 40 || !NUMBER.test(typed)) return { error: `${nameOf(code)} “${shown(typed)}” is not a number` };
  const value = Number(typed);
  const rounded = Math.round(value * 1e4) / 1e4 + 0;
  if (code === 'axis') return checkedAxis(value, typed);
  const unit = PART_UNITS[code];
  const isPower = unit === 'D' || unit === 'prism';
  if (isPower && Math.abs(value) > LARGEST_POWER)
    return { error: `${nameOf(code)} ${shown(typed)} is beyond any spectacle lens` };
  if (code === 'base-curve' && value < 0) return { error: `base curve ${shown(typed)} is below zero` };
  if (unit === 'mm' && (value < 0 || value > LARGEST_LENGTH))
    return { error: `${nameOf(code)} ${shown(typed)} is no length on a pair of spectacles` };
  if (unit === 'deg' && Math.abs(value) > 180) return { error: `${nameOf(code)} ${shown(typed)} is no angle` };
  return { value: rounded, rounded: Math.abs(rounded - value) > 1e-9 };
}

/** FHIR allows -180 to 180, instruments write 0 to 180; all of them name the same lines. */
function checkedAxis(value: number, typed: string): Checked {
  if (Math.abs(value) > 180) return { error: `axis ${shown(typed)} is outside 0 to 180` };
  const whole = Math.round(value);
  const turned = ((whole % 180) + 180) % 180;
  return { value: turned === 0 ? 180 : turned, rounded: Math.abs(whole - value) > 1e-9 };
}

const nameOf = (code: PartCode): string => code.replaceAll('-', ' ');
const shown = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text);

/** Why these figures are no power, or null. A cylinder of nothing needs no axis. */
export function powerProblem(values: ReadonlyMap<PartCode, number>): string | null {
  const [sphere, cylinder] = [values.get('sphere'), values.get('cylinder')];
  if (!cylinder) return null;
  if (sphere === undefined) return 'a cylinder stands without a sphere';
  if (values.get('axis') === undefined) return 'a cylinder stands without an axis';
  if (Math.abs(sphere + cylinder) > LARGEST_POWER) return 'sphere and cylinder together are beyond any spectacle lens';
  return null;
}

/** What of these facts the notation cannot write by itself: an intermediate add stands beside an add only. */
export const isLonely = (code: PartCode, values: ReadonlyMap<PartCode, unknown>): boolean =>
  code === 'intermediate' && !values.has('add');
