/** A lens cut through level with its optical centre, to scale: front surface above, back surface below. */
import { type SectionPoint, sectionOf } from '../computed/section';
import type { Order } from '../model';
import { amountInWords } from '../words';
import { workedInWords } from '../worked-words';
import { type Drawing, label, line, SCALE } from './drawing';
import { element, together } from './markup';
import { type LensScene, sideOf } from './scene';

const ASIDE = 92;
const ABOVE = 30;

export interface LensSection extends Drawing {
  /** Thickness in words, as the figure of the order says it. */
  readonly words: string;
}

/** Null where the order does not say enough for the thickness. */
export function lensSection({ eye, worked }: LensScene, order: Order): LensSection | null {
  const found = worked.find(({ what }) => what === 'thickness');
  const points = found ? sectionOf(order, eye) : null;
  const [first, last] = [points?.[0], points?.at(-1)];
  if (!found || !points || !first || !last) return null;
  const top = Math.min(...points.map(({ front }) => front));
  const bottom = Math.max(...points.map(({ back }) => back));
  const x = (right: number): number => ASIDE + (right - first.right) * SCALE;
  const y = (depth: number): number => ABOVE + (depth - top) * SCALE;
  const width = 2 * ASIDE + (last.right - first.right) * SCALE;
  const centre = amountInWords(thicknessOf(nearest(points)), 'mm');
  const content = together(
    label(8, 20, 'start', 'eye', eye),
    element('path', { class: 'glass cut', d: outlineOf(points, x, y) }),
    line(x(0), y(top) - 8, x(0), y(bottom) + 8, 'leader'),
    label(x(0), y(top) - 12, 'middle', 'figure', centre),
    label(x(first.right) - 8, y(middleOf(first)) + 5, 'end', 'figure', amountInWords(thicknessOf(first), 'mm')),
    label(x(last.right) + 8, y(middleOf(last)) + 5, 'start', 'figure', amountInWords(thicknessOf(last), 'mm')),
    [first, last].map((one) =>
      label(x(one.right), y(bottom) + 26, 'middle', 'small', one.right * sideOf(eye) > 0 ? 'outer edge' : 'nasal edge'),
    ),
  );
  return { width, height: y(bottom) + 36, content, words: workedInWords(found).value };
}

const thicknessOf = ({ front, back }: SectionPoint): number => back - front;
const middleOf = ({ front, back }: SectionPoint): number => (front + back) / 2;
const nearest = (points: readonly SectionPoint[]): SectionPoint =>
  points.reduce((best, one) => (Math.abs(one.right) < Math.abs(best.right) ? one : best));

function outlineOf(
  points: readonly SectionPoint[],
  x: (right: number) => number,
  y: (depth: number) => number,
): string {
  const there = points.map(({ right, front }) => `${x(right).toFixed(2)} ${y(front).toFixed(2)}`);
  const back = [...points].reverse().map((one) => `${x(one.right).toFixed(2)} ${y(one.back).toFixed(2)}`);
  return `M${[...there, ...back].join('L')}Z`;
}
