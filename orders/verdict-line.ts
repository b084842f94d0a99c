/** The verdict of an order in one line: the word, what it hangs on, the set, the decision rule and how well the limits are established. */
import type { Evaluation } from './evaluate';
import { deviationInWords, subjectInWords } from './measure-words';
import type { Measure } from './measures/measure';
import type { Decision, Order } from './model';
import { amountInWords, decisionRuleInWords } from './words';

/** What is listed by name before the rest is only counted. */
const MOST = 6;

/** The verdict of an order in one line: the word, what it hangs on, the set, the decision rule and the weakest evidence. */
export function verdictInWords({ decided }: Order, evaluation: Evaluation): string {
  const { verdict, evidence } = evaluation;
  const parts = [`${verdict}${REASONS[verdict](evaluation)}`];
  const by = judgedByInWords(evaluation);
  if (by) parts.push(evidence ? `${by}, weakest evidence ${evidence}` : by);
  if (decided) parts.push(decisionInWords(decided));
  return parts.join('; ');
}

/** The set that an order is judged by and, once it has been read, the decision rule; empty where it is not judged at all. */
export function judgedByInWords({ set, house, standard, guard, verdict, unresolved }: Evaluation): string {
  if (!set || unresolved.includes('input-missing')) return '';
  const named = house ? `${standard} from ${set.id}` : `${standard}`;
  return verdict === 'unread' ? named : `${named}, ${decisionRuleInWords(guard)}`;
}

const decisionInWords = ({ verdict, by, why }: Decision): string =>
  `decided: ${verdict}${by ? ` by ${by}` : ''}${why ? `, “${why}”` : ''}`;

const REASONS: Readonly<Record<Evaluation['verdict'], (evaluation: Evaluation) => string>> = {
  accept: ({ reservations, measures }) =>
    reservations
      .map((code) => {
        const meant = measures.filter(RESERVED[code] ?? (() => false));
        return `, ${inWords(code)}${meant.length > 0 ? ` (${list(meant.map(subjectInWords))})` : ''}`;
      })
      .join(''),
  reject: ({ measures }) => {
    const failed = measures.filter(({ outcome }) => outcome === 'fail');
    return `: ${list(failed.map(failureInWords))}`;
  },
  incomplete: ({ set, standard, measures, unresolved }) => {
    if (!set && !unresolved.includes('input-missing'))
      return standard === null ? ': no standard is named, nothing is judged' : `: no set called ${standard}`;
    const missing = named(measures, 'not-read', 'not read');
    const unjudged = named(measures, 'not-judged', 'not judged');
    const open = unresolved.length > 0 ? [`not resolved: ${list(unresolved.map(inWords))}`] : [];
    return `: ${[...open, ...missing, ...unjudged].join('; ') || 'nothing to judge'}`;
  },
  unread: () => '',
};

/** `R axis 4° (limit 3°)`; a failed test has neither figure nor limit. */
function failureInWords(measure: Measure): string {
  const { limit, unit, deviation } = measure;
  if (deviation === null) return subjectInWords(measure);
  const by = unit === 'prism' ? amountInWords(deviation, unit) : deviationInWords(measure);
  const most = limit?.amount == null ? '' : ` (limit ${amountInWords(limit.amount, limit.unit)})`;
  return `${subjectInWords(measure)} ${by}${most}`;
}

const inWords = (code: string): string => code.replaceAll('-', ' ');

/** The measures that a reservation is about. */
const RESERVED: Readonly<Record<string, (measure: Measure) => boolean>> = {
  'near-the-limit': ({ tooCoarse }) => tooCoarse,
  'house-limit': ({ house, outcome }) => house?.breached === true && outcome === 'pass',
};

function named(measures: readonly Measure[], outcome: Measure['outcome'], words: string): string[] {
  const found = measures.filter((measure) => measure.outcome === outcome);
  return found.length > 0 ? [`${words}: ${list(found.map(subjectInWords))}`] : [];
}

function list(items: readonly string[]): string {
  const different = [...new Set(items)];
  if (different.length <= MOST) return different.join(', ');
  return `${different.slice(0, MOST - 1).join(', ')} and ${different.length - MOST + 1} more`;
}
