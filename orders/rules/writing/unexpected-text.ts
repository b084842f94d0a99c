import { nearestWord, VOCABULARY } from '../../../grammar';
import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';
import { mends, replaceApart, textBefore } from './line-edits';

export const unexpectedText: Rule = {
  code: 'unexpected-text',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A line goes on with something that has no place in it.',
    why: 'Whatever stands here is not taken. A remark in the middle of a line may be a value that somebody meant, or “ok” where a figure was to be measured.',
    example: { wrong: 'pd 63 naer 60', right: 'pd 63 near 60' },
    fix: 'Offers the nearest word of the notation, an add for a plus figure behind a power, or makes a remark a comment.',
    source: 'Common practice, no source.',
  },
  message: () => 'This has no place here and is not taken.',
  fixes: (site) =>
    [nearWord(site), asAdd(site), asComment(site)].filter((fix) => fix !== null && mends(site, fix)) as Fix[],
};

const WORDS = VOCABULARY.filter(({ role }) => role !== 'block' && role !== 'eye').flatMap(({ word, also }) => [
  word,
  ...also,
]);

function nearWord(site: FixSite): Fix | null {
  const word = /^\p{L}+(?:-\p{L}+)*/u.exec(typed(site))?.[0];
  const near = word && nearestWord(word, WORDS);
  return near ? replace(site, `Write ${near}`, near + typed(site).slice(word.length), false) : null;
}

function asAdd(site: FixSite): Fix | null {
  const figure = /^\+\d+(?:[.,]\d+)?$/.exec(typed(site))?.[0];
  const alone = figure && !/\badd(?:ition)?\b/i.test(textBefore(site));
  return alone ? replaceApart(site, `Write add ${figure}`, `add ${figure}`, false) : null;
}

/** Only words become a comment: a figure would be hidden by it. */
function asComment(site: FixSite): Fix | null {
  if (!/^["“„«(]?\p{L}/u.test(typed(site))) return null;
  const blank = /\s$/.test(textBefore(site)) ? '' : ' ';
  return replace(site, 'Make it a comment', `${blank}# ${typed(site)}`, false);
}
