import { type Evaluation, judgedByInWords, type Measure, type Order, subjectInWords } from '../../orders';

/** What is named before the rest is only counted; a line of an editor is short. */
const MOST = 3;

/** The verdict as it stands beside the order’s name: `reject: R axis; z80.1-2015, simple acceptance`. */
export function verdictInWords({ decided }: Order, evaluation: Evaluation): string {
  const judged = evaluation.verdict === 'unread' ? '' : judgedByInWords(evaluation);
  const words = [`${evaluation.verdict}${reason(evaluation)}`, judged].filter(Boolean).join('; ');
  if (!decided) return words;
  return `${words}; decided: ${decided.verdict}${decided.by ? ` by ${decided.by}` : ''}`;
}

function reason({ verdict, reservations, unresolved, measures, set, standard }: Evaluation): string {
  switch (verdict) {
    case 'accept':
      return reservations.map((code) => `, ${inWords(code)}`).join('');
    case 'reject':
      return `: ${named(measures, 'fail')}`;
    case 'incomplete': {
      if (!set && !unresolved.includes('input-missing'))
        return standard === null ? ': no standard named' : `: no set called ${standard}`;
      if (unresolved.length > 0) return `: ${inShort(unresolved.map(inWords))}`;
      const missing = named(measures, 'not-read');
      if (missing) return `: ${missing} not read`;
      return `: ${named(measures, 'not-judged') || 'nothing'} not judged`;
    }
    case 'unread':
      return '';
  }
}

function named(measures: readonly Measure[], outcome: Measure['outcome']): string {
  return inShort([...new Set(measures.filter((measure) => measure.outcome === outcome).map(subjectInWords))]);
}

const inWords = (code: string): string => code.replaceAll('-', ' ');

function inShort(names: readonly string[]): string {
  if (names.length <= MOST) return names.join(', ');
  return `${names.slice(0, MOST - 1).join(', ')} and ${names.length - MOST + 1} more`;
}
