/** Figures as a bench types them. */
import type { Chance } from './chance';
import { type Eye, exactly, inwards, type Toric, type Vector } from './lens';

const EIGHTHS: Readonly<Record<number, readonly string[]>> = {
  125: ['.12', '.13', '.125'],
  375: ['.37', '.38', '.375'],
  625: ['.62', '.63', '.625'],
  875: ['.87', '.88', '.875'],
};

/** A power with its sign, to the hundredth; an odd eighth in any of its spellings. */
export function dioptres(value: number, chance: Chance): string {
  const size = Math.abs(exactly(value));
  const sign = value < -1e-9 ? '-' : '+';
  const thousandths = Math.round(size * 1000);
  const spellings = EIGHTHS[thousandths % 1000];
  if (spellings) return `${sign}${Math.floor(thousandths / 1000)}${chance.of(spellings)}`;
  return `${sign}${size.toFixed(thousandths % 10 === 0 ? 2 : 3)}`;
}

export const degrees = (axis: number): string => String(normal(axis)).padStart(3, '0');

/** From 1 to 180. */
export const normal = (axis: number): number => ((((Math.round(axis) - 1) % 180) + 180) % 180) + 1;

/** Millimetres, to the hundredth where they have one. */
export const mm = (value: number): string => String(Math.round(value * 100) / 100 + 0);

const hundredths = (value: number): string => (Math.round(Math.abs(value) * 100) / 100).toFixed(2);

/** Both parts by base words, whichever is nothing: a part that is left out is not read where one was ordered. */
export function byBaseWords(eye: Eye, prism: Vector, chance: Chance): string {
  const inward = inwards(eye, prism);
  const across = `${hundredths(inward)} ${inward < 0 ? 'BO' : 'BI'}`;
  const up = `${hundredths(prism.up)} ${prism.up < 0 ? 'BD' : 'BU'}`;
  return chance.is(0.5) ? `${across} ${up}` : `${up} ${across}`;
}

/** The target on its ring: amount and angle, counted from the examiner's right upwards to 360. */
export function byRing(_: Eye, { right, up }: Vector): string {
  const amount = Math.hypot(right, up);
  if (amount < 0.005) return '0';
  const angle = ((Math.atan2(up, right) * 180) / Math.PI + 360) % 360;
  const shown = Math.round(angle * 10) / 10;
  return `${amount.toFixed(2)} base ${(shown === 360 ? 0 : shown).toFixed(1).padStart(5, '0')}`;
}

export type PowerForm = 'minus' | 'plus' | 'meridians' | 'lines' | 'lines other way' | 'lines named';

export const ORDER_FORMS: readonly PowerForm[] = ['minus', 'plus', 'meridians'];
export const POWER_FORMS: readonly PowerForm[] = [...ORDER_FORMS, 'lines', 'lines other way', 'lines named'];

/** One lens in a form; what the drum shows is more than the lens by the zero, in both positions. */
export function powerText({ sphere, cylinder, axis }: Toric, form: PowerForm, zero: number, chance: Chance): string {
  const [first, second] = [exactly(sphere + zero), exactly(sphere + cylinder + zero)];
  const figure = (value: number): string => dioptres(value, chance);
  const [at, across] = [degrees(axis), degrees(axis + 90)];
  if (cylinder === 0) return `${figure(first)} DS`;
  switch (form) {
    case 'minus':
      return `${figure(first)} ${figure(cylinder)} x ${at}`;
    case 'plus':
      return `${figure(second)} ${figure(-cylinder)} x ${across}`;
    case 'meridians': {
      const parts = [`${figure(first)} @ ${at}`, `${figure(second)} @ ${across}`];
      return (chance.is(0.5) ? parts : parts.reverse()).join(' / ');
    }
    case 'lines':
      return `lines ${figure(first)} / ${figure(second)} x ${at}`;
    case 'lines other way':
      return `lines ${figure(second)} / ${figure(first)} x ${across}`;
    case 'lines named':
      return chance.is(0.5)
        ? `lines wide ${figure(second)} thin ${figure(first)} x ${at}`
        : `lines thin ${figure(second)} wide ${figure(first)} x ${across}`;
  }
}
