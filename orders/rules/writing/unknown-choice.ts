import { nearestWord } from '../../../grammar';
import { type Rule, replace } from '../rule';

export const unknownChoice: Rule = {
  code: 'unknown-choice',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A place that takes one of a few words has another one.',
    why: 'A word that nobody knows selects nothing, and the job goes on as if it were not there.',
    example: { wrong: 'supply glaced', right: 'supply glazed' },
    fix: 'Writes the nearest of the words that may stand there.',
    source: 'Common practice, no source.',
  },
  message: ({ word, known }) => `“${word}” is not taken. Here may stand: ${(known as readonly string[]).join(', ')}.`,
  fixes: (site) => {
    const { word, known } = site.finding.data;
    const near = nearestWord(String(word), known as readonly string[]);
    return near ? [replace(site, `Write ${near}`, near, false)] : [];
  },
};
