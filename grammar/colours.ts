/**
 * The colours of the notation as a TextMate grammar, made from the vocabulary so that no word is listed twice. The
 * file beside this one that editors load is held to it by a test, which also rewrites it: `npx vitest run colours -u`.
 */
import { VOCABULARY, type WordRole } from './vocabulary';

interface Rule {
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly contentName?: string;
  readonly captures?: Readonly<Record<string, { readonly name: string }>>;
  readonly beginCaptures?: Readonly<Record<string, { readonly name: string }>>;
  readonly patterns?: readonly Rule[];
  readonly include?: string;
}

/** The TextMate grammar as the object that its file holds. */
export function colours() {
  return {
    name: 'Lentil',
    scopeName: 'source.lentil',
    fileTypes: ['lentil'],
    patterns: [include('comment'), include('head'), include('inside')],
    repository: {
      comment: { name: 'comment.line.number-sign.lentil', match: '(?:^|(?<=\\s))#.*$' },
      head: { patterns: HEADS },
      inside: { patterns: INSIDE },
      text: { name: 'string.quoted.double.lentil', match: `${QUOTED}|“[^”]*”?|„[^“”]*[“”]?|«[^»]*»?` },
    },
  };
}

const QUOTED = '"(?:[^"]|"")*"?';
const NAME = `(?:${QUOTED}|[^\\s"#]+)`;
const SIGN = '[-+\\x{2010}-\\x{2015}\\x{2212}\\x{FE63}\\x{FF0B}\\x{FF0D}]';

/** Lines whose rest is free text. */
const FREE = ['note', 'ref', 'coating', 'kind'];

const include = (name: string): Rule => ({ include: `#${name}` });

/** Longer words come first, since the engine takes the first alternative that fits. */
const alternatives = (words: Iterable<string>): string =>
  [...new Set(words)]
    .sort((one, other) => other.length - one.length || (one < other ? -1 : 1))
    .map((word) => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'))
    .join('|');

const spellings = (wanted: (role: WordRole, word: string) => boolean): string =>
  alternatives(VOCABULARY.filter(({ role, word }) => wanted(role, word)).flatMap(({ word, also }) => [word, ...also]));

const ofRole = (...roles: readonly WordRole[]): string => spellings((role) => roles.includes(role));

/** A word may touch a figure (`A52`, `R-4.50`), but is no part of a longer word (`base-curve`). */
const AFTER = '(?!\\p{L}|-\\p{L})';
const BEFORE = '(?<![\\p{L}]|\\p{L}-)';
const word = (words: string): string => `(?i)${BEFORE}(?:${words})${AFTER}`;
const atHead = (words: string): string => `(?i)^\\s*(${words})${AFTER}`;

const named = (opening: string, scope: string, nameScope: string, name = NAME): Rule => ({
  match: `${opening}\\s+(${name})`,
  captures: { 1: { name: scope }, 2: { name: nameScope } },
});

const KEYWORD = 'keyword.control.block.lentil';
const LINE = 'keyword.other.line.lentil';
const CLAUSE = 'keyword.other.clause.lentil';
const EYE = 'variable.language.eye.lentil';
const REFERENCE = 'entity.name.type.lentil';
const PERSON = 'variable.other.person.lentil';
const FIGURE = 'constant.numeric.lentil';

/** A lens line may name an eye before its material. */
const MATERIAL = `(?!(?:${ofRole('eye')})(?![\\p{L}\\d-]))${NAME}`;

/** What stands at the beginning of a line says what the line is. */
const HEADS: readonly Rule[] = [
  named(atHead('order|remake-of'), KEYWORD, 'entity.name.function.lentil'),
  named(atHead('instrument|tolerance'), KEYWORD, REFERENCE),
  named(atHead('standard'), LINE, REFERENCE),
  named(atHead(spellings((_, it) => it === 'lens')), LINE, 'support.type.material.lentil', MATERIAL),
  named(atHead('confirmed'), LINE, 'entity.name.tag.code.lentil'),
  {
    begin: atHead(spellings((_, it) => FREE.includes(it))),
    end: '$',
    beginCaptures: { 1: { name: LINE } },
    patterns: [include('comment'), include('text'), { name: 'string.unquoted.lentil', match: '[^\\s"“„«]+' }],
  },
  { match: atHead(ofRole('block')), captures: { 1: { name: KEYWORD } } },
  { match: atHead(ofRole('eye')), captures: { 1: { name: EYE } } },
  { match: atHead(ofRole('line')), captures: { 1: { name: LINE } } },
];

/** What stands anywhere else; the order matters where one pattern is the beginning of another. */
const INSIDE: readonly Rule[] = [
  include('text'),
  { name: 'constant.numeric.date.lentil', match: '\\d{4}-\\d{2}-\\d{2}(?:T?\\d{1,2}:\\d{2}(?::\\d{2})?)?' },
  { name: 'constant.numeric.time.lentil', match: '\\d{1,2}:\\d{2}(?::\\d{2})?' },
  named(`(?i)${BEFORE}(with|from)${AFTER}`, CLAUSE, REFERENCE),
  named(`(?i)${BEFORE}(by)${AFTER}`, CLAUSE, PERSON),
  named(`(?i)${BEFORE}(stage|at)${AFTER}`, CLAUSE, 'constant.language.place.lentil'),
  {
    match: `(?i)(?<!\\p{L})(${ofRole('cross')})\\s*(\\d+)`,
    captures: { 1: { name: 'keyword.operator.axis.lentil' }, 2: { name: 'constant.numeric.axis.lentil' } },
  },
  {
    match: '(@)\\s*(\\d+)',
    captures: { 1: { name: 'keyword.operator.meridian.lentil' }, 2: { name: 'constant.numeric.axis.lentil' } },
  },
  { name: 'keyword.operator.arrow.lentil', match: '-+>|=>|→' },
  { name: FIGURE, match: `(?:${SIGN})?(?:\\d+(?:[.,]\\d+|\\.)?|[.,]\\d+)` },
  { name: EYE, match: word(ofRole('eye')) },
  { name: 'constant.language.base.lentil', match: word(ofRole('base')) },
  { name: 'constant.language.lentil', match: word(ofRole('plano', 'no-cylinder')) },
  { name: 'support.type.design.lentil', match: word(ofRole('value')) },
  { name: CLAUSE, match: word(ofRole('clause', 'label', 'line', 'key', 'answer')) },
  { name: 'constant.language.outcome.lentil', match: word(ofRole('choice')) },
  { name: 'keyword.other.unit.lentil', match: word(ofRole('unit')) },
  { name: 'keyword.operator.lentil', match: '[/@]|\\[\\]' },
  { name: 'variable.other.lentil', match: '\\p{L}+(?:-\\p{L}+)*' },
];
