/** Tests that a person records as passed or failed: for each lens, or for the pair. */
import type { Eye, ResultNode, Span } from '../grammar';
import type { Place } from './finding';
import { EYES, type Measurement } from './model';
import { eyesNamed } from './order-lines';

export type TestQuantity = 'impact' | 'cosmetic' | 'marking';
export type TestResult = 'passed' | 'failed';

export const TESTS: readonly TestQuantity[] = ['impact', 'cosmetic', 'marking'];

type TestMeasurement = Extract<Measurement, { quantity: TestQuantity }>;

export const isTest = (one: Measurement): one is TestMeasurement => (TESTS as readonly string[]).includes(one.quantity);
export const isFailedTest = (one: Measurement): boolean => isTest(one) && one.value === 'failed';

/** A batch certificate stands for a passed test of the batch; null for a word that is no result. */
const resultOf = ({ word }: ResultNode): TestResult | null =>
  word === 'failed' ? 'failed' : word === 'passed' || word === 'batch' ? 'passed' : null;

const eyesOf = ({ eyes }: ResultNode): readonly Eye[] => [...new Set(eyes.flatMap(({ eye }) => eyesNamed(eye)))];

/**
 * What one line says of each lens. A result without an eye holds for every lens that has none of its own, and for the pair
 * where no lens is named. Of two results for the same lens the failed one holds.
 */
export function resultsOf(
  results: readonly ResultNode[],
): readonly { readonly eye: Eye | null; readonly value: TestResult; readonly place: Span }[] {
  const worst = (some: readonly ResultNode[]): ResultNode | undefined =>
    some.find((one) => resultOf(one) === 'failed') ?? some.find((one) => resultOf(one) !== null);
  const ofPair = worst(results.filter(({ eyes }) => eyes.length === 0));
  const said = (eye: Eye | null, one: ResultNode | undefined) =>
    one ? [{ eye, value: resultOf(one) as TestResult, place: { start: one.start, end: one.end } }] : [];
  if (results.every(({ eyes }) => eyes.length === 0)) return said(null, ofPair);
  return EYES.flatMap((eye) => said(eye, worst(results.filter((one) => eyesOf(one).includes(eye))) ?? ofPair));
}

/** The second of two results that say the opposite of the same lens or of the pair, or null. */
export function contradiction(results: readonly ResultNode[]): ResultNode | null {
  const first = new Map<Eye | 'pair', TestResult>();
  for (const one of results) {
    const result = resultOf(one);
    const sides = one.eyes.length === 0 ? (['pair'] as const) : eyesOf(one);
    if (!result) continue;
    for (const side of sides) {
      if ((first.get(side) ?? result) !== result) return one;
      first.set(side, result);
    }
  }
  return null;
}

const BAD = /\b(?:not|fail\w*|reject\w*|broke\w*|crack\w*|shatter\w*)\b/i;
const GOOD = /\bpass\w*\b/i;

/** Whether the words behind a result speak against it: `passed "L failed"`. Such words may be the result that was meant. */
export function contradicts(results: readonly ResultNode[], detail: string): boolean {
  const said = new Set(results.map(resultOf));
  return (said.has('passed') && BAD.test(detail)) || (!said.has('passed') && GOOD.test(detail));
}

/** A test that stands for a lens or for the pair, with the failed one of the same lens that it came after. */
export interface StandingTest<Item> {
  readonly side: Eye | 'pair';
  readonly item: Item;
  readonly after: Place | null;
}

/**
 * The result that stands for each lens now in the frame, newest last. A lens that broke is not mended by a second test, so
 * a failed impact test stays; of the others the newest counts. One test of the pair that stands for both is told as that.
 */
export function standingTests<Item extends { readonly one: Measurement }>(
  taken: readonly Item[],
): readonly StandingTest<Item>[] {
  const list: StandingTest<Item>[] = [];
  for (const quantity of TESTS) {
    const own = taken.filter(({ one }) => one.quantity === quantity);
    if (own.length === 0) continue;
    const [R, L] = EYES.map((eye) => standing(own.filter(({ one }) => one.eye === null || one.eye === eye)));
    if (R && L && R.item === L.item) list.push({ side: 'pair', ...R });
    else {
      if (R) list.push({ side: 'R', ...R });
      if (L) list.push({ side: 'L', ...L });
    }
  }
  return list;
}

function standing<Item extends { readonly one: Measurement }>(
  tests: readonly Item[],
): Omit<StandingTest<Item>, 'side'> | null {
  const last = tests.at(-1);
  if (!last) return null;
  const failed = tests.findLast(({ one }) => isFailedTest(one));
  if (!failed || failed === last) return { item: last, after: null };
  return last.one.quantity === 'impact' ? { item: failed, after: null } : { item: last, after: failed.one.place };
}
