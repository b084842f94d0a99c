import type { MissingInput } from '../../context';
import type { Rule } from '../rule';

export const inputMissing: Rule = {
  code: 'input-missing',
  family: 'bench',
  level: ({ missing }) => ((missing as readonly MissingInput[]).some(({ why }) => why !== null) ? 'error' : 'warning'),
  bars: true,
  page: {
    checks:
      'A file that the verdict rests on, `bench.lentil` or `lentil.config.json`, cannot be used or has not been read yet. Nothing is judged until it is there.',
    levels: 'Error where the file cannot be used, warning while it is still being read.',
    why: 'The bench file holds the zero of an instrument and the tolerances of the house, the settings hold the decision rule. A zero that is left out turns a reject into an accept, so nothing is judged by what happens to be at hand.',
    example: { wrong: '{ "guard": "sometimes" }', right: '{ "guard": "accept-when-sure" }' },
    source: 'Common practice, no source.',
  },
  message: ({ missing }) => (missing as readonly MissingInput[]).map(inWords).join(' '),
  check: ({ order, context: { missing } }, report) => {
    const [first] = order.readings;
    if (first && missing.length > 0) report(first.place, { missing });
  },
};

const inWords = ({ what, why }: MissingInput): string =>
  why === null
    ? `“${what}” is still being read. The order is judged when it is there.`
    : `“${what}” cannot be used: ${why.replace(/[.]$/, '')}. Nothing is judged until it is corrected.`;
