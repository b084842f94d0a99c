import { nearestWord } from '../../../grammar';
import { type Rule, replace } from '../rule';

export const blockUnnamed: Rule = {
  code: 'block-unnamed',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A line at the margin looks as if it opened a block, but its first word is none that does.',
    why: 'The lines below it may be another job. They are left alone until the word is clear, and are never judged against the job above.',
    example: { wrong: 'ordr QL-1043', right: 'order QL-1043' },
    fix: 'Writes the nearest word that opens a block.',
    source: 'Common practice, no source.',
  },
  message: ({ word }) => `“${word}” opens no block. The lines below it are not read.`,
  fixes: (site) => {
    const near = nearestWord(String(site.finding.data.word), OPENING);
    return (near === null ? OPENING : [near]).map((word) => replace(site, `Write ${word}`, word, false));
  },
};

const OPENING = ['order', 'instrument', 'defaults', 'tolerance'];
