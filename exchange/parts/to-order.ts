/** The way back: an order and its readings from single facts. */
import {
  type Eye,
  type Measurement,
  type Order,
  type OrderedLens,
  type Power,
  prismInFrame,
  type Reading,
} from '../../orders';
import { blankOrder, blankReading, nowhere } from '../../orders/write';
import type { PartCode } from './part';

export interface Fact {
  readonly code: PartCode;
  readonly eye: Eye | null;
  readonly value: number | string;
}

export interface ReadFacts {
  readonly eye: Eye | null;
  /** The same lens once more in the same reading. */
  readonly again: boolean;
  readonly facts: readonly Fact[];
}

export type ReadingHead = Partial<Pick<Reading, 'date' | 'time' | 'by' | 'with' | 'stage'>>;

/** Facts that an order holds. */
export const ORDER_CODES: ReadonlySet<PartCode> = new Set<PartCode>([
  ...([
    'sphere',
    'cylinder',
    'axis',
    'add',
    'intermediate',
    'prism-in',
    'prism-up',
    'pd',
    'near-pd',
    'height',
  ] as const),
  ...(['base-curve', 'centre-thickness', 'edge-thickness', 'min-thickness'] as const),
  ...(['frame-a', 'frame-b', 'frame-dbl', 'frame-ed', 'vertex', 'panto', 'wrap'] as const),
]);

/** Facts that a reading holds. */
export const READING_CODES: ReadonlySet<PartCode> = new Set<PartCode>([
  ...(['sphere', 'cylinder', 'axis', 'add', 'engraved-add', 'intermediate', 'prism-in', 'prism-up'] as const),
  ...(['pd', 'near-pd', 'optical-centres', 'height', 'base-curve', 'segment-width', 'segment-tilt'] as const),
  ...(['centre-thickness', 'edge-thickness', 'min-thickness', 'impact', 'cosmetic', 'marking'] as const),
]);

/** An order that says these facts. Facts that an order does not hold are left out. */
export function orderFrom(name: string | null, facts: readonly Fact[], readings: readonly Reading[] = []): Order {
  const blank = blankOrder(name);
  const pair = figuresOf(facts.filter(({ eye }) => eye === null));
  const perEye = (code: PartCode) => ({
    binocular: pair(code),
    R: figuresOf(facts.filter(({ eye }) => eye === 'R'))(code),
    L: figuresOf(facts.filter(({ eye }) => eye === 'L'))(code),
  });
  return {
    ...blank,
    lenses: { R: lensFrom(blank.lenses.R, facts), L: lensFrom(blank.lenses.L, facts) },
    pd: perEye('pd'),
    nearPd: perEye('near-pd'),
    frame: { a: pair('frame-a'), b: pair('frame-b'), dbl: pair('frame-dbl'), ed: pair('frame-ed') },
    asWorn: { vertex: pair('vertex'), panto: pair('panto'), wrap: pair('wrap') },
    // Frame and height are what the way of supply is usually seen from.
    supply:
      pair('frame-a') || pair('pd') || facts.some(({ code, eye }) => code === 'height' && eye === 'R')
        ? 'glazed'
        : 'uncut',
    readings,
  };
}

const figuresOf = (facts: readonly Fact[]) => {
  const values = new Map(facts.map(({ code, value }) => [code, value]));
  return (code: PartCode) => {
    const value = values.get(code);
    return typeof value === 'number' ? nowhere(value) : null;
  };
};

function lensFrom(blank: OrderedLens, facts: readonly Fact[]): OrderedLens {
  const { eye } = blank;
  const own = facts.filter((fact) => fact.eye === eye);
  const figure = figuresOf(own);
  const power = powerFrom(own);
  const prism = prismFrom(own, eye);
  return {
    ...blank,
    written: power && { ...nowhere(power), form: 'sphere' },
    add: figure('add'),
    intermediate: figure('intermediate'),
    prism: prism && nowhere(prism),
    height: figure('height'),
    baseCurve: figure('base-curve'),
    thickness: { centre: figure('centre-thickness'), edge: figure('edge-thickness'), min: figure('min-thickness') },
  };
}

function powerFrom(facts: readonly Fact[]): Power | null {
  const figure = figuresOf(facts);
  const sphere = figure('sphere');
  if (!sphere) return null;
  return { sphere: sphere.value, cylinder: figure('cylinder')?.value ?? 0, axis: figure('axis')?.value ?? 180 };
}

function prismFrom(facts: readonly Fact[], eye: Eye): ReturnType<typeof prismInFrame> | null {
  const figure = figuresOf(facts);
  const [inwards, up] = [figure('prism-in'), figure('prism-up')];
  return inwards || up ? prismInFrame({ in: inwards?.value ?? 0, up: up?.value ?? 0 }, eye) : null;
}

/** A reading of these lenses, in their order. */
export function readingFrom(head: ReadingHead, lenses: readonly ReadFacts[]): Reading {
  return { ...blankReading(), ...head, measurements: lenses.flatMap(measurementsFrom) };
}

/** Facts that take several figures; all others are measurements of their own. */
const SHARED = new Set<PartCode>([
  'sphere',
  'cylinder',
  'axis',
  'prism-in',
  'prism-up',
  'add',
  'engraved-add',
  'intermediate',
]);

function measurementsFrom({ eye, again, facts }: ReadFacts): readonly Measurement[] {
  const { place } = nowhere(null);
  const base = { eye, again, place, with: null, withPlace: null, at: null, corrected: false };
  const power = powerFrom(facts);
  const prism = eye && prismFrom(facts, eye);
  const list: unknown[] = [];
  if (power) {
    const { sphere, cylinder, axis } = power;
    const form = cylinder === 0 ? 'sphere' : cylinder < 0 ? 'minus' : 'plus';
    list.push({ ...base, quantity: 'power', value: { sphere, cylinder, axis: cylinder === 0 ? null : axis, form } });
  }
  const middle = facts.find(({ code }) => code === 'intermediate');
  for (const { code, value } of facts) {
    if (code !== 'add' && code !== 'engraved-add') continue;
    list.push({ ...base, quantity: 'add', value: { kind: 'value', value, engraved: code === 'engraved-add' } });
    // An intermediate add stands in the line of the add.
    if (middle && code === 'add') list.push({ ...base, quantity: 'intermediate', value: middle.value });
  }
  for (const { code, value } of facts) if (!SHARED.has(code)) list.push({ ...base, quantity: code, value });
  const unsaid = (['prism-in', 'prism-up'] as const).find((part) => !facts.some(({ code }) => code === part));
  if (prism)
    list.push({
      ...base,
      quantity: 'prism',
      value: prism,
      ring: null,
      ...(unsaid ? { unsaid: unsaid === 'prism-up' ? 'up' : 'right' } : {}),
    });
  return list as Measurement[];
}
