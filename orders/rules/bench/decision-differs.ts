import { subjectInWords } from '../../measure-words';
import type { Measure } from '../../measures/measure';
import type { Decision, Order } from '../../model';
import { isNeverCovered, wasReadBefore } from '../decided';
import type { Rule } from '../rule';

export const decisionDiffers: Rule = {
  code: 'decision-differs',
  family: 'bench',
  level: ({ safety, why }) => (safety ? 'error' : why ? 'info' : 'warning'),
  page: {
    checks:
      'A person accepted a pair with something outside its limit, or refused one in which everything is inside. What is read after the decision is no part of it.',
    why: 'A person decides, not a table. But the next one who opens the file has to see that figures and decision part, and why. No decision covers a failed impact test, nor a lens thinner than safety asks for.',
    example: {
      wrong: 'cosmetic failed "scratch R"\n    decided accept by MT',
      right: 'cosmetic passed\n    decided accept by MT',
    },
    source:
      'Common practice, no source. For impact tests in the United States 21 CFR 801.410; licensed practice decides.',
  },
  message: ({ verdict, by, why, safety, outside }) => {
    const who = by ? `${by} decided to ${verdict}` : `Decided: ${verdict}`;
    if (safety) return `${who}, and no decision covers this: ${outside}.`;
    const found = outside ? `outside: ${outside}` : 'everything called for is inside';
    return `${who}; ${found}. ${why ? `The reason given: “${why}”.` : 'No reason is given.'}`;
  },
  needs: 'decision',
  check: ({ order, evaluation }, report) => {
    const { decided } = order;
    if (!decided) return;
    const failed = evaluation.measures.filter((one) => one.outcome === 'fail' && wasReadBefore(order, one));
    const { verdict, by, why, place } = decided;
    if (verdict === 'accept' && failed.length > 0) {
      const safety = failed.filter((one) => isNeverCovered(order, one));
      const outside = inWords(safety.length > 0 ? safety : failed);
      report(place, { verdict, by, why, safety: safety.length > 0, outside });
    } else if (verdict !== 'accept' && evaluation.verdict === 'accept' && isLast(order, decided)) {
      report(place, { verdict, by, why, safety: false, outside: null });
    }
  },
};

const inWords = (measures: readonly Measure[]): string => [...new Set(measures.map(subjectInWords))].join(', ');

/** A new reading after the decision answers it. */
const isLast = ({ readings }: Order, { place }: Decision): boolean =>
  readings.every((reading) => reading.place.line < place.line);
