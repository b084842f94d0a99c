import { indentOf, lineWord } from '../../../grammar';
import type { Rule } from '../rule';

export const saidTwice: Rule = {
  code: 'said-twice',
  family: 'writing',
  level: ({ in: where }) => (where === 'reading' ? 'warning' : 'error'),
  bars: true,
  page: {
    checks:
      'The same thing is said twice with two values: in an order, or in one reading. In an order the first one holds; in a reading the later one counts.',
    levels: 'An error in an order, a warning in a reading.',
    why: 'Two prisms are not added up and two axes are not averaged unless somebody says so. In a reading a second figure may be a repetition, of which the mean counts, or it may replace the first.',
    example: { wrong: 'add R +2.25', right: 'again add R +2.25' },
    fix: 'In a reading: marks the line as the same measurement once more. In an order there is none, since only the writer knows which value holds.',
    source: 'Common practice, no source.',
  },
  message: ({ in: where }) =>
    where === 'reading'
      ? 'This was measured before in the same reading, with another value. Once more, or does it replace the first? The later one counts.'
      : 'This is said twice, with different values. The first one holds until one of them is gone.',
  fixes: ({ finding, lines }) => {
    const line = lines[finding.line] ?? '';
    const start = indentOf(line);
    if (finding.data.in !== 'reading' || !canBeRepeated(line.slice(start))) return [];
    const edits = [{ line: finding.line, start, end: start, text: 'again ' }];
    return [{ title: 'It is the same measurement once more', safe: false, edits }];
  },
};

/** Facts such as a passed test are not measured once more; they change. */
function canBeRepeated(line: string): boolean {
  const word = lineWord(/^[^\s]+/.exec(line)?.[0] ?? '');
  return word !== undefined && (word.role === 'eye' || !FACTS.has(word.word)) && word.word !== 'again';
}

const FACTS = new Set(['impact', 'cosmetic', 'marking', 'zero']);
