import { lineWord, nearestWord, VOCABULARY } from '../../../grammar';
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
    fix: 'Offers the nearest word of the notation, an add for a plus figure behind a power, quotes around a name with #, [] between two bare figures of a frame, R22 for R 22, or makes a remark a comment.',
    source: 'Common practice, no source.',
  },
  message: () => 'This has no place here and is not taken.',
  fixes: (site) =>
    [nearWord, asAdd, inQuotes, asBox, asRound, asComment]
      .map((fix) => fix(site))
      .filter((fix) => fix !== null && mends(site, fix)) as Fix[],
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

/** `QL#1042`: the number sign and all that touches it belong to the name. */
function inQuotes(site: FixSite): Fix | null {
  const name = /[^\s"]+$/.exec(textBefore(site))?.[0];
  if (name === undefined || !typed(site).startsWith('#')) return null;
  return withRunBefore(site, name, `"${name}${typed(site)}"`);
}

/** `frame 52 18` as it stands on many frames, without its box. */
function asBox(site: FixSite): Fix | null {
  const [, a, dbl] = /^(\d+(?:[.,]\d+)?)\s+(\d+(?:[.,]\d+)?)$/.exec(typed(site)) ?? [];
  return headOf(site) === 'frame' && a && dbl ? replace(site, `Write ${a}[]${dbl}`, `${a}[]${dbl}`, false) : null;
}

/** `bifocal R 22`: the letter may have been meant for a round segment. */
function asRound(site: FixSite): Fix | null {
  const letter = /(?<!\S)R\s+$/i.exec(textBefore(site))?.[0];
  if (headOf(site) !== 'design' || letter === undefined || !/^\d/.test(typed(site))) return null;
  return withRunBefore(site, letter, `R${typed(site)}`);
}

/** Only words become a comment: a figure would be hidden by it. */
function asComment(site: FixSite): Fix | null {
  if (!/^["“„«(]?\p{L}/u.test(typed(site))) return null;
  const blank = /\s$/.test(textBefore(site)) ? '' : ' ';
  return replace(site, 'Make it a comment', `${blank}# ${typed(site)}`, false);
}

const headOf = (site: FixSite): string | undefined =>
  lineWord(/^\s*([\p{L}-]+)/u.exec(textBefore(site))?.[1] ?? '')?.word;

function withRunBefore({ finding: { line, start, end } }: FixSite, before: string, text: string): Fix {
  return { title: `Write ${text}`, safe: false, edits: [{ line, start: start - before.length, end, text }] };
}
