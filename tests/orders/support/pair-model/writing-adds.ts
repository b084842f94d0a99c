/** The ways of writing an add. */
import type { Chance } from './chance';
import { dioptres } from './figures';
import { EYES, type Eye, exactly } from './lens';
import { printedSet } from './limits';
import { BODY } from './order-text';
import { hasPoint, type MadeLens, type Pair } from './pair';

export type AddWay =
  | 'reduced'
  | 'drum, thin lines'
  | 'drum, wide lines'
  | 'drum, back surface'
  | 'clock'
  | 'near power'
  | 'engraved'
  | 'none';

/** A progressive says its add of itself; its segment cannot be felt, for it has none. */
export function addWays(pair: Pair): readonly AddWay[] {
  if (!hasPoint(pair)) return ['none'];
  const measured: readonly AddWay[] = ['reduced', 'drum, thin lines', 'drum, wide lines', 'near power'];
  if (pair.kind === 'progressive') return [...measured, 'engraved'];
  // The rule for one eighth speaks of what shows eighths; the figures of a dial in hundredths would be held to it here.
  if (pair.focimeter.step === 0.125) return measured;
  return canTellBack(pair) ? [...measured, 'clock', 'drum, back surface'] : [...measured, 'clock'];
}

export function addLines(
  { made, focimeter }: Pair,
  way: AddWay,
  chance: Chance,
): { readonly lines: readonly string[]; readonly rounding: number } {
  const figure = (value: number): string => dioptres(exactly(value), chance);
  const each = (text: (eye: Eye) => string): readonly string[] =>
    chance.is(0.5)
      ? [`add ${EYES.map((eye) => `${eye} ${text(eye)}`).join(' ')}`]
      : EYES.map((eye) => `add ${eye} ${text(eye)}`);
  const drum = (eye: Eye, line: number): string =>
    `${figure(line + focimeter.zero)} -> ${figure(line + made[eye].add + focimeter.zero)} front-vertex`;
  switch (way) {
    case 'none':
      return { lines: [], rounding: 0 };
    case 'reduced':
      return { lines: each((eye) => figure(made[eye].add)), rounding: 0 };
    case 'engraved':
      return { lines: each((eye) => `${figure(made[eye].add)} engraved`), rounding: 0 };
    case 'drum, thin lines':
      return { lines: each((eye) => drum(eye, made[eye].power.sphere)), rounding: 0 };
    case 'drum, wide lines':
      return { lines: each((eye) => drum(eye, made[eye].power.sphere + made[eye].power.cylinder)), rounding: 0 };
    case 'drum, back surface':
      return {
        lines: EYES.map((eye) => {
          const line = made[eye].power.sphere + focimeter.zero;
          const to = Math.round((line + addFromBack(made[eye])) * 100) / 100;
          return `add ${eye} ${figure(line)} -> ${figure(to)} back-vertex`;
        }),
        // The product knows the ordered curve and add, and the lens has its own.
        rounding: 0.015,
      };
    case 'near power':
      return {
        lines: EYES.map((eye) => {
          const { sphere, cylinder, axis } = made[eye].power;
          const near = figure(sphere + made[eye].add + focimeter.zero);
          const rest = cylinder === 0 ? ' DS' : ` ${figure(cylinder)} x ${String(axis).padStart(3, '0')}`;
          return `${eye} ${near}${rest} at near-point`;
        }),
        rounding: 0,
      };
    case 'clock':
      return { lines: EYES.map((eye) => clock(eye, made[eye].base, made[eye].add)), rounding: 0.006 };
  }
}

/** Curve and thickness have to be ordered, or nobody can say what the wrong surface does. */
const canTellBack = ({ set }: Pair): boolean => {
  const { baseCurve, centreThickness } = printedSet(set).plain;
  return baseCurve !== undefined && centreThickness !== undefined;
};

/**
 * What the add shows with the back surface on the stop: the vertex power of the front surface with the segment on it, less
 * the one without. National Federation of Opticianry Schools, OPT11, practice answers 11a.
 */
export function addFromBack({ base, add }: Pick<MadeLens, 'base' | 'add'>): number {
  const { thickness, index } = BODY;
  const front = (base * (index - 1)) / 0.53;
  const atBack = (surface: number): number => surface / (1 - (thickness / 1000 / index) * surface);
  return atBack(front + add) - atBack(front);
}

/** A lens measure is marked for an index of 1.53: what it shows is less than the curve of another index does, or more. */
function clock(eye: Eye, base: number, add: number): string {
  const shown = (value: number): string => `+${value.toFixed(2)}`;
  return `clock ${eye} ${shown(base)} -> ${shown(base + (add * 0.53) / (BODY.index - 1))}`;
}
