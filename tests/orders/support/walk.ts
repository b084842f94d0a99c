/** Cases of a walk along the limits: a lens ordered and read, as text, and the outcome it must have. */
import { analyse, type Measure, type Outcome, type Quantity } from '../../../orders';

/** Powers of two meridians square to each other, dioptres. */
export type Meridians = readonly [first: number, second: number];

export interface Case {
  readonly set: string;
  /** Lines of the order that say what kind of lens it is. */
  readonly lens: readonly string[];
  /** The row it stands in, for the message. */
  readonly row: string;
  readonly quantity: Quantity;
  readonly meridian: 1 | 2 | null;
  readonly ordered: Meridians;
  readonly read: Meridians;
  /** Direction of the first meridian, degrees; 180 where it does not matter. */
  readonly axis?: number;
  /** By how much the lens was turned when it was read, degrees. */
  readonly turn?: number;
  /** More lines of the reading. */
  readonly more?: readonly string[];
  readonly outcome: Outcome;
}

/** Without the noise of binary fractions. */
export const exactly = (value: number): number => Number(value.toFixed(6)) + 0;

/** A power figure with its sign and every decimal it has. */
export function sphere(value: number): string {
  const clean = exactly(value);
  const [whole = '0', decimals = ''] = String(Math.abs(clean)).split('.');
  return `${clean > 0 ? '+' : clean < 0 ? '-' : ''}${whole}.${decimals.padEnd(2, '0')}`;
}

const normal = (axis: number): number => ((((Math.round(axis) - 1) % 180) + 180) % 180) + 1;

/**
 * A lens as it is written in one cylinder form. The first meridian lies along the axis, so it is the sphere where the
 * other is weaker (minus form) or stronger (plus form).
 */
export function lensText([first, second]: Meridians, axis: number, form: 'minus' | 'plus'): string {
  const cylinder = exactly(second - first);
  if (cylinder === 0) return sphere(first);
  const fits = form === 'minus' ? cylinder < 0 : cylinder > 0;
  const [from, size, at] = fits ? [first, cylinder, axis] : [second, -cylinder, axis + 90];
  return `${sphere(from)} ${sphere(size)} x ${String(normal(at)).padStart(3, '0')}`;
}

const FORMS = ['minus', 'plus'] as const;

/** Runs each case in all four pairs of cylinder forms, and returns those that came out otherwise. */
export function wrongOnes(cases: readonly Case[]): readonly string[] {
  const all = cases.flatMap((one) => FORMS.flatMap((asOrdered) => FORMS.map((asRead) => ({ one, asOrdered, asRead }))));
  const texts = new Map<string, { readonly one: Case; readonly text: string }>();
  for (const { one, asOrdered, asRead } of all) {
    const text = orderText(one, asOrdered, asRead);
    texts.set(`${text}|${one.quantity}|${one.meridian}`, { one, text });
  }
  const wrong: string[] = [];
  for (const { one, text } of texts.values()) {
    const found = measureIn(text, one);
    if (found?.outcome !== one.outcome)
      wrong.push(
        `${one.set}, ${one.row}: ${text.split('\n').slice(1).join(' | ')}: ${one.quantity} ${describe(found)}`,
      );
  }
  return wrong.slice(0, 20);
}

const describe = (found: Measure | undefined): string =>
  found ? `${found.outcome}, off by ${found.deviation}, limit ${found.limit?.amount}` : 'was not measured';

function measureIn(text: string, { quantity, meridian }: Case): Measure | undefined {
  const measures = analyse(text).blocks.flatMap(({ evaluation }) => evaluation?.measures ?? []);
  return measures.find((one) => one.quantity === quantity && one.eye === 'R' && one.meridian === meridian);
}

function orderText(one: Case, asOrdered: 'minus' | 'plus', asRead: 'minus' | 'plus'): string {
  const axis = one.axis ?? 180;
  return [
    `standard ${one.set}`,
    'order W-1',
    `  R ${lensText(one.ordered, axis, asOrdered)}`,
    '  L -1.00',
    ...one.lens.map((line) => `  ${line}`),
    '  reading 2026-11-24',
    `    R ${lensText(one.read, axis + (one.turn ?? 0), asRead)}`,
    ...(one.more ?? []).map((line) => `    ${line}`),
  ].join('\n');
}

/** A whole order and reading by their lines, with what one of its measures must come to. */
export interface Pair {
  readonly set: string;
  readonly row: string;
  readonly order: readonly string[];
  readonly reading: readonly string[];
  readonly quantities: readonly Quantity[];
  readonly eye: 'R' | 'L' | null;
  readonly outcome: Outcome;
}

/** Runs each pair, and returns those whose measure came out otherwise. */
export function wrongPairs(pairs: readonly Pair[]): readonly string[] {
  const wrong = pairs.flatMap(({ set, row, order, reading, quantities, eye, outcome }) => {
    const text = [
      `standard ${set}`,
      'order W-1',
      ...order.map((line) => `  ${line}`),
      '  reading 2026-11-24',
      ...reading.map((line) => `    ${line}`),
    ].join('\n');
    const measures = analyse(text).blocks.flatMap(({ evaluation }) => evaluation?.measures ?? []);
    const found = measures.filter((one) => quantities.includes(one.quantity) && one.eye === eye);
    if (found.length === 1 && found[0]?.outcome === outcome) return [];
    const what = found.length > 1 ? 'was measured twice' : describe(found[0]);
    return [`${set}, ${row}: ${[...order, ...reading].join(' | ')}: ${quantities.join()} ${what}, not ${outcome}`];
  });
  return wrong.slice(0, 20);
}
