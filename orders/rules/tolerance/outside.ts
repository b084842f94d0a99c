/** What every rule of an outside limit shares: which measures it tells, where, at which level and in which words. */
import type { Level, Place } from '../../finding';
import { deviationInWords } from '../../measure-words';
import type { Measure, Quantity } from '../../measures/measure';
import type { Order } from '../../model';
import { amountInWords } from '../../words';
import { isDecided } from '../decided';
import { readAndOrdered, subjectFirst } from '../read-and-ordered';
import type { Report, Rule, RulePage } from '../rule';
import type { Subject } from '../subject';
import { orderedPlaces } from './ordered-places';

/** The measure as the message gets it, and what has already answered it. */
type Told = Measure & { readonly answered?: 'replaced' | 'decided' };

/**
 * A rule that tells every failed measure of some quantities, and every failed one that a later value replaced. A reading
 * is never edited, so there is no fix.
 * @param quantities the quantities it owns
 * @param inWords the sentence, where the usual one does not fit
 * @param saysLess whether another failure of the same figure says more
 */
export const outside = (
  code: string,
  quantities: readonly Quantity[],
  page: RulePage,
  inWords: (measure: Measure) => string = readAgainstOrdered,
  saysLess: SaysLess = () => false,
): Rule => ({
  code,
  family: 'tolerance',
  level: 'error',
  page: { levels: 'An error; an info once a later value replaced it or a person has decided on it.', ...page },
  message: (data) => {
    const told = data as unknown as Told;
    return `${inWords(told)}${told.answered ? ` ${ANSWERED[told.answered]}` : ''}`;
  },
  needs: 'outside',
  check: (subject, report) => checkOutside(subject, report, quantities, saysLess),
});

type SaysLess = (measure: Measure, failed: readonly Measure[]) => boolean;

const ANSWERED = {
  replaced: 'A later value replaced it.',
  decided: 'A person has decided on it.',
} as const;

function checkOutside(
  { order, evaluation }: Subject,
  report: Report,
  quantities: readonly Quantity[],
  saysLess: SaysLess,
): void {
  const tell = (measure: Measure, answered: Told['answered']): void => {
    if (measure.place === null) return;
    const level: Level = answered ? 'info' : 'error';
    const data = answered ? { ...measure, answered } : { ...measure };
    report(measure.place, data, {
      ...(measure.eye ? { eye: measure.eye } : {}),
      related: placesOf(order, measure),
      level,
    });
  };
  const isMeant = ({ outcome, quantity }: Measure): boolean => outcome === 'fail' && quantities.includes(quantity);
  const now = evaluation.measures.filter(isMeant);
  for (const measure of now)
    if (!saysLess(measure, now)) tell(measure, isDecided(order, measure) ? 'decided' : undefined);
  const earlier = evaluation.earlier.filter(isMeant);
  for (const measure of earlier) if (!saysLess(measure, earlier)) tell(measure, 'replaced');
}

const placesOf = (order: Order, measure: Measure): readonly Place[] =>
  orderedPlaces(order, measure).filter(({ line }) => line !== measure.place?.line);

/** `R cylinder read -0.50, ordered -0.75: off by +0.25 D, limit 0.13 D (z80.1-2015).` */
export function readAgainstOrdered(measure: Measure): string {
  const assumed = (measure.because !== null && ASSUMED[measure.because]) || '';
  return `${subjectFirst(measure)} ${readAndOrdered(measure)}: off by ${deviationInWords(measure)}${beside(measure)}, ${limit(measure)}.${assumed}`;
}

const ASSUMED: Readonly<Record<string, string>> = {
  'worst-split': ' Only the sum was read; the whole error is taken to be in one lens.',
  'from-prism': ' It is worked out from the prism that each lens makes.',
  'own-share': ' The order says how the prism is shared.',
  'accept-when-sure': ' It is inside, but by less than the instrument is sure of.',
};

/** `R warp 1.25 D, limit 1.00 D (z80.1-2015).` For what should not be there at all. */
export const unwantedInWords = (measure: Measure): string =>
  `${subjectFirst(measure)} ${amountInWords(measure.deviation ?? 0, measure.unit)}${beside(measure)}, ${limit(measure)}.`;

/** The same error in the other unit, so that one displaced centre is one sentence. */
const beside = ({ beside: other }: Measure): string => (other ? ` (${amountInWords(other.amount, other.unit)})` : '');

const limit = ({ limit: one }: Measure): string =>
  one?.amount == null ? 'no limit' : `limit ${amountInWords(one.amount, one.unit)} (${one.set})`;
