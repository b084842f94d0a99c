/** A picture with its size, and the parts that several pictures are made of. One millimetre of a lens is five units. */
import { type Child, element, type Markup } from './markup';

export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly content: Markup;
}

/** Units of a drawing for one millimetre. */
export const SCALE = 5;

/** A drawing as an element with a name for those who cannot see it; `id` keeps its parts apart from those of others. */
export const asSvg = ({ width, height, content }: Drawing, id: string, title: string, description: string): Markup =>
  element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'picture',
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-description`,
      viewBox: `0 0 ${Math.ceil(width)} ${Math.ceil(height)}`,
      width: Math.ceil(width),
      height: Math.ceil(height),
    },
    element('title', { id: `${id}-title` }, title),
    element('desc', { id: `${id}-description` }, description),
    content,
  );

export const line = (x1: number, y1: number, x2: number, y2: number, className: string): Markup =>
  element('line', { x1, y1, x2, y2, class: className });

export type Anchor = 'start' | 'middle' | 'end';

export const label = (x: number, y: number, anchor: Anchor, className: string, ...text: readonly Child[]): Markup =>
  element('text', { x, y, 'text-anchor': anchor, class: className }, ...text);

const MARK = 8;

/** Ordered: a ring with a cross through it. */
export const orderedMark = (x: number, y: number, eye = ''): Markup =>
  element(
    'g',
    { class: `mark ordered ${eye}`.trim(), transform: `translate(${placed(x)} ${placed(y)})` },
    element('circle', { r: MARK }),
    line(-MARK - 5, 0, MARK + 5, 0, 'hair'),
    line(0, -MARK - 5, 0, MARK + 5, 'hair'),
  );

/** Read: a broken diamond. */
export const readMark = (x: number, y: number, eye = ''): Markup =>
  element(
    'g',
    { class: `mark read ${eye}`.trim(), transform: `translate(${placed(x)} ${placed(y)})` },
    element('path', { d: `M0 ${-MARK - 4}L${MARK + 4} 0L0 ${MARK + 4}L${-MARK - 4} 0Z` }),
    element('circle', { r: 1.6, class: 'dot' }),
  );

/** Spotted: a small square. */
export const spottedMark = (x: number, y: number, eye = ''): Markup =>
  element(
    'g',
    { class: `mark spotted ${eye}`.trim(), transform: `translate(${placed(x)} ${placed(y)})` },
    element('rect', { x: -5, y: -5, width: 10, height: 10 }),
  );

const placed = (value: number): string => value.toFixed(2);

/** A length between two places of the same height, with its figure above it. */
export function across(x1: number, x2: number, y: number, text: string, kind: 'ordered' | 'read' | 'plain'): Markup {
  const [left, right] = [Math.min(x1, x2), Math.max(x1, x2)];
  return element(
    'g',
    { class: `length ${kind}` },
    line(left, y, right, y, 'run'),
    line(left, y - 5, left, y + 5, 'end'),
    line(right, y - 5, right, y + 5, 'end'),
    label((left + right) / 2, y - 6, 'middle', 'figure', text),
  );
}

/** A length between two places one above the other, with its figure written along it on the side away from the lens. */
export function upright(
  x: number,
  y1: number,
  y2: number,
  text: string,
  side: 1 | -1,
  kind: 'ordered' | 'read',
): Markup {
  const [besideX, besideY] = [x + (side > 0 ? 17 : -6), (y1 + y2) / 2];
  return element(
    'g',
    { class: `length ${kind}` },
    line(x, y1, x, y2, 'run'),
    line(x - 5, y1, x + 5, y1, 'end'),
    line(x - 5, y2, x + 5, y2, 'end'),
    element(
      'text',
      {
        'text-anchor': 'middle',
        class: 'figure',
        transform: `translate(${placed(besideX)} ${placed(besideY)}) rotate(-90)`,
      },
      text,
    ),
  );
}
