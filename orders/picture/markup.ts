/** Elements of SVG and HTML as text that is well formed in both. Whatever is put into them as a string is escaped. */
import { roundTo } from '../exact';

/** Text that is markup already. */
export class Markup {
  readonly text: string;

  constructor(text: string) {
    this.text = text;
  }
}

export type Child = Markup | string | number | null | false | undefined | readonly Child[];
export type Attributes = Readonly<Record<string, string | number | null | false | undefined>>;

/** Elements that hold nothing; HTML takes any other for an open one when it is closed within its tag. */
const EMPTY = new Set(['path', 'line', 'rect', 'circle', 'polyline', 'use', 'meta', 'br', 'col']);

export function element(name: string, attributes: Attributes, ...children: readonly Child[]): Markup {
  const given = Object.entries(attributes)
    .filter(([, value]) => value !== null && value !== undefined && value !== false)
    .map(([key, value]) => ` ${key}="${escaped(typeof value === 'number' ? coordinate(value) : String(value))}"`);
  const inner = children.map(inside).join('');
  return new Markup(
    EMPTY.has(name) && inner === '' ? `<${name}${given.join('')}/>` : `<${name}${given.join('')}>${inner}</${name}>`,
  );
}

/** Several elements as one. */
export const together = (...children: readonly Child[]): Markup => new Markup(children.map(inside).join(''));

function inside(child: Child): string {
  if (child === null || child === undefined || child === false) return '';
  if (typeof child === 'string') return escaped(child);
  if (typeof child === 'number') return coordinate(child);
  if (child instanceof Markup) return child.text;
  return child.map(inside).join('');
}

/** A figure of a drawing: finer than anybody sees, the same on every machine, never -0. */
export const coordinate = (value: number): string => String(roundTo(value, 2));

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text for an element or an attribute. What XML 1.0 forbids, lone surrogates among it, is shown as a mark. */
export const escaped = (text: string): string =>
  text
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu, '\ufffd')
    .replace(/[&<>"]/g, (one) => ENTITIES[one] as string);
