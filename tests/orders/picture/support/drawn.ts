import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { analyse, type BlockAnalysis } from '../../../../orders';
import { jobPicture, type SheetOf } from '../../../../orders/picture';

/** An element of a drawing with whatever it holds. */
export interface Drawn {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
  readonly inner: readonly Drawn[];
}

const parser = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: '',
  parseTagValue: false,
  trimValues: false,
});

/** Reads markup as XML; throws where it is not well formed. */
export function drawn(markup: string): Drawn {
  const checked = XMLValidator.validate(markup);
  if (checked !== true) throw new Error(`${checked.err.msg} at ${checked.err.line}:${checked.err.col}`);
  return { name: '', attributes: {}, text: '', inner: elements(parser.parse(markup)) };
}

type Parsed = Readonly<Record<string, unknown>>;

const elements = (nodes: readonly Parsed[]): readonly Drawn[] =>
  nodes.flatMap((node) => {
    const name = Object.keys(node).find((key) => key !== ':@' && key !== '#text');
    if (!name) return [];
    const children = node[name] as readonly Parsed[];
    const text = children.map((child) => child['#text'] ?? '').join('');
    return [{ name, attributes: (node[':@'] ?? {}) as Record<string, string>, text, inner: elements(children) }];
  });

/** Every element below one, itself left out. */
export const all = (from: Drawn): readonly Drawn[] => from.inner.flatMap((one) => [one, ...all(one)]);

/** The elements that carry all of these classes. */
export const withClass = (from: Drawn, ...classes: readonly string[]): readonly Drawn[] =>
  all(from).filter(({ attributes }) => {
    const own = (attributes.class ?? '').split(' ');
    return classes.every((one) => own.includes(one));
  });

/** The one element that carries these classes. */
export function only(from: Drawn, ...classes: readonly string[]): Drawn {
  const found = withClass(from, ...classes);
  if (found.length !== 1) throw new Error(`${found.length} elements with ${classes.join(' ')}`);
  return found[0] as Drawn;
}

/** Where an element was moved to, in millimetres; one millimetre is five units. */
export function placeOf({ attributes }: Drawn): { readonly x: number; readonly y: number } {
  const [, x, y] = /translate\((\S+) (\S+)\)/.exec(attributes.transform ?? '') ?? [];
  return { x: Number(x) / 5, y: Number(y) / 5 };
}

/** The boxed lens of an eye, millimetres. */
export function boxOf(picture: Drawn, eye: 'R' | 'L') {
  const { x, y, width, height } = only(only(picture, 'lens', eye), 'box').attributes;
  const [left, top, wide, high] = [x, y, width, height].map((value) => Number(value) / 5) as [
    number,
    number,
    number,
    number,
  ];
  return { middle: left + wide / 2, level: top + high / 2, bottom: top + high, width: wide, height: high };
}

/** The analysis of the first order of a text. */
export function firstOrder(text: string): BlockAnalysis {
  const found = analyse(text).blocks.find(({ order }) => order !== null);
  if (!found) throw new Error('the text holds no order');
  return found;
}

export function sheetOf({ order, evaluation, block }: BlockAnalysis): SheetOf {
  if (!order) throw new Error('not an order');
  return { order, evaluation, lines: block.lines.map(({ text }) => text) };
}

/** The stand-alone picture of the first order of a text. */
export function pictureOf(text: string): Drawn {
  const { order, evaluation } = firstOrder(text);
  if (!order) throw new Error('not an order');
  return drawn(jobPicture(order, evaluation));
}
