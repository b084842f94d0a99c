import { nearestWord, VOCABULARY } from '../../../grammar';
import type { Fix } from '../../finding';
import { type FixSite, putBefore, type Rule, replace } from '../rule';
import { mends } from './line-edits';

export const unknownLine: Rule = {
  code: 'unknown-line',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'The first word of a line is not one that can begin it.',
    why: 'The first word says what the line is; without it nothing on the line is taken. Other lines are not touched by it.',
    example: { wrong: 'heigth 17', right: 'height 17' },
    fix: 'Offers the nearest word, or either eye for a slip in two letters. Where no word is near, the line may become a note.',
    source: 'Common practice, no source.',
  },
  message: ({ word }) => `“${word}” does not begin any line here. The line is not taken.`,
  fixes: (site) => candidates(site).filter((fix) => mends(site, fix)),
};

const FIRST_WORDS = VOCABULARY.filter(({ role }) => role === 'line' || role === 'eye' || role === 'block').flatMap(
  ({ word, also }) => [word, ...also],
);

const EYE_LETTERS = ['OD', 'OS', 'OU', 'RE', 'LE', 'BE'];

function candidates(site: FixSite): readonly Fix[] {
  const word = String(site.finding.data.word);
  // One slip in two letters may be either eye, and nothing else can be told from it.
  if (word.length === 2 && nearestWord(word, EYE_LETTERS))
    return [
      replace(site, 'It is the right eye: write R', 'R', false),
      replace(site, 'It is the left eye: write L', 'L', false),
    ];
  const near = word.length > 2 ? nearestWord(word, FIRST_WORDS) : null;
  return [near ? replace(site, `Write ${near}`, near, false) : putBefore(site, 'Make it a note', 'note ', false)];
}
