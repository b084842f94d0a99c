/** More than a hundred thousand judgements on a grid, and what must hold of each of them. No clock is looked at. */
import { describe, expect, test } from 'vitest';
import {
  type Evaluation,
  type Measure,
  type Order,
  parseDocument,
  type ToleranceSet,
  toleranceSets,
} from '../../orders';
import { contextOf } from '../../orders/context';
import { evaluateBy } from '../../orders/evaluate';
import { resolveOrder } from '../../orders/resolve';
import { type Forms, type Job, jobText, swapped, sweepJobs } from './support/sweep-jobs';

const CONTEXT = contextOf(parseDocument(''));
const MINUS: Forms = { ordered: 'minus', read: 'minus' };
const JOBS: readonly Job[] = [...sweepJobs()];

let judgements = 0;

function orderOf(text: string): Order {
  const [block] = parseDocument(text).blocks.filter(({ kind }) => kind === 'order');
  if (!block) throw new Error('no order');
  return resolveOrder(block, null).order;
}

function judge(order: Order, set: ToleranceSet): Evaluation {
  judgements++;
  return evaluateBy({ set, house: null, name: set.id, place: null }, order, CONTEXT);
}

const ORDERS: readonly Order[] = JOBS.map((job) => orderOf(jobText(job, MINUS)));

/** Measures whose outcome is not what their own figures say. */
const contradicts = ({ outcome, deviation, limit, because, read, spread }: Measure): boolean => {
  if (outcome === 'not-read') return read !== null;
  if (outcome === 'not-judged')
    return !(because === 'no-limit' || because === 'beside-spread' || (because === 'spread' && (spread ?? 0) > 0));
  if (limit?.amount == null) return because !== 'not-defined';
  const inside = Math.round(Math.abs(deviation ?? Number.NaN) * 1e6) <= Math.round(limit.amount * 1e6);
  return inside !== (outcome === 'pass');
};

function fromMeasures(measures: readonly Measure[]): Evaluation['verdict'] {
  if (measures.some(({ outcome }) => outcome === 'fail')) return 'reject';
  return measures.length > 0 && measures.every(({ outcome }) => outcome === 'pass') ? 'accept' : 'incomplete';
}

/** Outcomes in an order that does not hang on the lines; a deviation by its size. */
const outcomes = ({ measures }: Evaluation, exchanged = false): readonly string[] =>
  measures
    .map(({ quantity, eye, meridian, outcome, deviation }) => {
      const side = eye && exchanged ? (eye === 'R' ? 'L' : 'R') : eye;
      return `${quantity} ${side} ${meridian} ${outcome} ${Math.abs(deviation ?? 0).toFixed(4)}`;
    })
    .sort();

/** Every set with one of its limits halved, one variant for each limit. */
function tightened(set: ToleranceSet): readonly ToleranceSet[] {
  const variants: ToleranceSet[] = [];
  const paths: (readonly string[])[] = [];
  const visit = (value: unknown, path: readonly string[]): void => {
    if (typeof value === 'number' && ['amount', 'mm', 'percent'].includes(path.at(-1) ?? '') && value > 0)
      paths.push(path);
    else if (typeof value === 'object' && value !== null)
      for (const [key, part] of Object.entries(value)) visit(part, [...path, key]);
  };
  visit(set, []);
  for (const path of paths) {
    const copy = structuredClone(set) as unknown as Record<string, unknown>;
    let at = copy;
    for (const key of path.slice(0, -1)) at = at[key] as Record<string, unknown>;
    const last = path.at(-1) as string;
    at[last] = (at[last] as number) / 2;
    variants.push(copy as unknown as ToleranceSet);
  }
  return variants;
}

test('a verdict never contradicts its measures, nor a measure its figures', () => {
  const verdicts = new Map<string, number>();
  for (const order of ORDERS) {
    for (const set of toleranceSets) {
      const { verdict, measures } = judge(order, set);
      verdicts.set(verdict, (verdicts.get(verdict) ?? 0) + 1);
      if (verdict !== fromMeasures(measures)) expect(verdict).toBe(fromMeasures(measures));
      const wrong = measures.filter(contradicts);
      if (wrong.length > 0) expect(wrong).toEqual([]);
    }
  }
  // The grid is no use where everything comes out alike.
  for (const verdict of ['accept', 'reject', 'incomplete']) expect(verdicts.get(verdict)).toBeGreaterThan(100);
});

describe.each(toleranceSets.map((set) => [set.id, set] as const))('%s', (_, set) => {
  test('a tighter limit never makes an acceptance of a reject', () => {
    const variants = tightened(set);
    expect(variants.length).toBeGreaterThan(10);
    let changed = 0;
    for (const [at, order] of ORDERS.entries()) {
      const before = judge(order, set);
      // Each variant in turn, so that every limit of the set is tightened on some hundred jobs.
      for (let next = 0; next < 3; next++) {
        const variant = variants[(at * 3 + next) % variants.length] as ToleranceSet;
        const after = judge(order, variant);
        if (after.verdict !== before.verdict) changed++;
        const softer =
          (before.verdict === 'reject' && after.verdict === 'accept') ||
          (before.verdict === 'incomplete' && after.verdict === 'accept');
        if (softer) expect([jobText(JOBS[at] as Job, MINUS), before.verdict, after.verdict]).toEqual([]);
      }
    }
    expect(changed).toBeGreaterThan(0);
  });
});

test('exchanging the two eyes of order and reading changes no outcome', () => {
  for (const [at, job] of JOBS.entries()) {
    const exchanged = orderOf(jobText(swapped(job), MINUS, 'L'));
    for (const set of toleranceSets) {
      const [one, other] = [judge(ORDERS[at] as Order, set), judge(exchanged, set)];
      const [a, b] = [outcomes(one), outcomes(other, true)];
      if (one.verdict !== other.verdict || a.join() !== b.join()) expect([jobText(job, MINUS), b]).toEqual([set.id, a]);
    }
  }
});

test('the cylinder form of order and reading changes no outcome', () => {
  const forms: readonly Forms[] = [
    { ordered: 'plus', read: 'minus' },
    { ordered: 'minus', read: 'plus' },
    { ordered: 'plus', read: 'plus' },
  ];
  for (const [at, job] of JOBS.entries()) {
    for (const form of forms) {
      const other = orderOf(jobText(job, form));
      const set = toleranceSets[(at + forms.indexOf(form)) % toleranceSets.length] as ToleranceSet;
      const [a, b] = [outcomes(judge(ORDERS[at] as Order, set)), outcomes(judge(other, set))];
      if (a.join() !== b.join()) expect([jobText(job, form), b]).toEqual([set.id, a]);
    }
  }
});

test('all in all more than a hundred thousand judgements', () => {
  expect(judgements).toBeGreaterThanOrEqual(100_000);
});
