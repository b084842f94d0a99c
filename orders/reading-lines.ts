/** What each line of a reading measures. */
import type {
  AddNode,
  ClockNode,
  Eye,
  EyeFigure,
  EyeWord,
  Figure,
  ForEye,
  LineNode,
  PdNode,
  PrismComponent,
  Qualifiers,
  SegmentNode,
  Span,
} from '../grammar';
import type { AddReading, MeasuredQuantity, Measurement, PrismPart, Ring, SlabReading } from './model';
import { type At, eyesNamed, thicknessKey } from './order-lines';
import { resultsOf } from './test-results';
import { prismOf, typedPower } from './values';

type Put = (
  quantity: MeasuredQuantity,
  value: unknown,
  span: Span,
  eye: Eye | null,
  more?: PrismSaid | { readonly unsided: true },
) => void;

type PrismSaid = Pick<Extract<Measurement, { quantity: 'prism' }>, 'ring' | 'unsaid'>;

/** The measurements of one line, or null when a reading holds no such line. */
export function readingLine(node: LineNode, at: At): Measurement[] | null {
  const list: Measurement[] = [];
  const ending: Qualifiers | undefined = node.qualifiers;
  const again = 'again' in node && node.again;
  const put: Put = (quantity, value, span, eye, more) => {
    const measured = {
      quantity,
      value,
      eye,
      again,
      place: at(span),
      with: ending?.with?.text ?? null,
      withPlace: ending?.with ? at(ending.with) : null,
      at: ending?.at?.word ?? null,
      corrected: Boolean(ending?.corrected),
    } as Measurement;
    list.push(more ? Object.assign(measured, more) : measured);
  };
  return read(node, put) ? list : null;
}

function read(node: LineNode, put: Put): boolean {
  switch (node.kind) {
    case 'power':
      for (const entry of node.entries) {
        const typed = typedPower(entry.power);
        for (const side of entry.eye ? eyesNamed(entry.eye.eye) : []) {
          if (typed && entry.power) put('power', typed, entry.power, side);
          if (entry.add) addReading(entry.add, entry.add, side, put);
          const prism = entry.prism.length > 0 ? prismOf(entry.prism, side) : null;
          if (prism) put('prism', prism, span(entry.prism), side, prismSaid(entry.prism));
        }
      }
      return true;
    case 'add':
      for (const entry of node.entries) for (const side of eyes(entry.eye)) addReading(entry.value, entry, side, put);
      return true;
    case 'prism':
      for (const entry of node.entries) {
        for (const side of eyes(entry.eye)) {
          const prism = prismOf(entry.value, side);
          if (prism && entry.value.length > 0) put('prism', prism, entry, side, prismSaid(entry.value));
        }
      }
      return true;
    case 'pd':
      distances(node.distance, node.qualifiers?.at?.word === 'near-point' ? 'near-pd' : 'pd', put);
      distances(node.near, 'near-pd', put);
      return true;
    case 'centres':
      distances(node.distance, 'optical-centres', put);
      return true;
    case 'eye-figure':
      if (node.which !== 'height' && node.which !== 'base-curve') return false;
      for (const { eye, value } of node.entries) for (const side of eyes(eye)) figure(value, node.which, side, put);
      return true;
    case 'clock':
      for (const entry of node.entries) for (const side of eyes(entry.eye)) clock(entry, side, put);
      return true;
    case 'segment':
      for (const { eye, value } of node.entries) {
        for (const side of eyes(eye)) {
          figure(value.width, 'segment-width', side, put);
          tilted(value, side, put);
        }
      }
      return true;
    case 'settings':
      if (node.which !== 'thickness') return false;
      for (const { eye, value } of node.entries) {
        for (const { key, figure: amount } of value) {
          const which = thicknessKey(key.word);
          for (const side of eyes(eye)) if (which) figure(amount, `${which}-thickness` as MeasuredQuantity, side, put);
        }
      }
      return true;
    case 'slab':
      for (const entry of node.entries) for (const side of eyes(entry.eye)) slab(entry, node.reverse, side, put);
      return true;
    case 'results':
      for (const { eye, value, place } of resultsOf(node.results)) put(node.which, value, place, eye);
      return true;
    default:
      return node.kind === 'text' && node.which === 'note';
  }
}

const eyes = (word: EyeWord | null): readonly Eye[] => eyesNamed(word?.eye ?? 'both');
const span = (parts: readonly Span[]): Span => ({ start: parts[0]?.start ?? 0, end: parts.at(-1)?.end ?? 0 });

/** A target read by ring and angle; base words need no taking apart. */
function prismSaid(components: readonly PrismComponent[]): PrismSaid {
  const unsaid = unsaidPart(components);
  const ring = ringOf(components);
  return unsaid ? { ring, unsaid } : { ring };
}

/** A plain `0` and a base by its angle speak of both parts. */
function unsaidPart(components: readonly PrismComponent[]): PrismPart | null {
  let isHorizontal = false;
  let isVertical = false;
  for (const { base } of components) {
    if (base === null) return null;
    if (base === 'in' || base === 'out') isHorizontal = true;
    else isVertical = true;
  }
  return isHorizontal && isVertical ? null : isHorizontal ? 'up' : 'right';
}

function ringOf(components: readonly PrismComponent[]): Ring | null {
  const [only, more] = components;
  if (!only || more || only.amount.value === null || only.degrees?.value == null) return null;
  return { amount: only.amount.value, degrees: only.degrees.value };
}

function figure(node: Figure | null, quantity: MeasuredQuantity, eye: Eye | null, put: Put): void {
  if (node && node.value !== null) put(quantity, node.value, node, eye);
}

/** Base up positive, whichever word says it; a lens measure shows the size alone. */
function slab(entry: EyeFigure, reverse: boolean, eye: Eye, put: Put): void {
  const { value, clock: dial, start, end } = entry;
  let read: SlabReading | null = null;
  if (dial) {
    const [from, to] = [dial.from.value, dial.to?.value];
    if (from !== null && to != null) read = { kind: 'clock', from, to, reverse };
  } else if (value && value.value !== null) read = { kind: 'value', value: reverse ? 0 - value.value : value.value };
  if (read) put('slab', read, { start, end }, eye);
}

/** A tilt has a side: without it only its size is known. */
function tilted({ tilt, tiltTowards }: SegmentNode, eye: Eye, put: Put): void {
  if (!tilt || tilt.value === null) return;
  const value = tiltTowards === 'nasal-down' ? 0 - tilt.value : tilt.value;
  put('segment-tilt', value, tilt, eye, tiltTowards === null && value !== 0 ? { unsided: true } : undefined);
}

function distances({ binocular, right, left }: PdNode, quantity: MeasuredQuantity, put: Put): void {
  figure(binocular, quantity, null, put);
  figure(right, quantity, 'R', put);
  figure(left, quantity, 'L', put);
}

function addReading(node: AddNode, place: Span, eye: Eye, put: Put): void {
  const value: AddReading | null = node.from
    ? node.from.value !== null && node.to?.value != null
      ? { kind: 'drum', from: node.from.value, to: node.to.value, surface: node.surface }
      : null
    : node.value?.value != null
      ? { kind: 'value', value: node.value.value, engraved: node.engraved }
      : null;
  if (value) put('add', value, place, eye);
  figure(node.intermediate, 'intermediate', eye, put);
}

/** A lens measure on both parts gives the add; on two meridians of one surface it gives the warp. */
function clock({ value, start, end }: ForEye<ClockNode>, eye: Eye, put: Put): void {
  const { distance, segment, meridians } = value;
  if (distance?.value != null && segment?.value != null) {
    put('add', { kind: 'clock', from: distance.value, to: segment.value } satisfies AddReading, { start, end }, eye);
  }
  const [first, second] = meridians.map(({ power }) => power.value);
  if (first != null && second != null) put('warp', Math.abs(first - second), { start, end }, eye);
}
