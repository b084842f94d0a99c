/** What each part of a line is: from its tree where it has a place there, from the vocabulary for the words between. */
import { commentStart, type LineNode, lineWord, meaningsOf, type Span, type WordRole } from '../../../grammar';

/** Types that every editor has a colour for. */
export const TOKEN_TYPES = [
  'keyword',
  'property',
  'variable',
  'number',
  'operator',
  'enumMember',
  'type',
  'function',
  'parameter',
  'string',
  'comment',
] as const;

/** A name is declared where it is given. */
export const TOKEN_MODIFIERS = ['declaration'] as const;

export type TokenType = (typeof TOKEN_TYPES)[number];

export interface Token extends Span {
  readonly type: TokenType;
  readonly isDeclared?: boolean;
}

/** The tokens of a line in their order; none touches another one’s columns. */
export function tokensOf(text: string, node: LineNode): readonly Token[] {
  const cut = commentStart(text);
  const known: Token[] = cut < text.length ? [{ start: cut, end: text.length, type: 'comment' }] : [];
  collect(node, '', node, known);
  known.sort((a, b) => a.start - b.start || b.end - a.end);
  const tokens: Token[] = [];
  let from = 0;
  for (const token of known) {
    if (token.start < from || token.end <= token.start) continue;
    tokens.push(...between(text, from, token.start), token);
    from = token.end;
  }
  return [...tokens, ...between(text, from, cut)];
}

/** Leaves of the tree are told apart by what they hold: a figure has decimals, a name a text, an eye its side. */
function collect(part: unknown, key: string, line: LineNode, into: Token[]): void {
  if (typeof part !== 'object' || part === null) return;
  const { start, end } = part as Partial<Span>;
  const type = typeof start === 'number' && typeof end === 'number' ? typeOf(part, key, line) : null;
  if (type) into.push({ start: start as number, end: end as number, ...type });
  else for (const [name, inner] of Object.entries(part)) collect(inner, name, line, into);
}

function typeOf(part: object, key: string, line: LineNode): Omit<Token, keyof Span> | null {
  if ('decimals' in part || 'iso' in part) return { type: 'number' };
  if ('eye' in part && typeof part.eye === 'string') return { type: 'variable' };
  if ('word' in part) return key === 'head' ? headType(line) : { type: key === 'key' ? 'property' : 'enumMember' };
  if (!('text' in part)) return null;
  if (key === 'name' && HEADERS.has(line.kind))
    return { type: line.kind === 'order' ? 'function' : 'type', isDeclared: true };
  return { type: NAMES[key] ?? (key === 'name' ? (line.kind === 'remake-of' ? 'function' : 'type') : 'string') };
}

const HEADERS = new Set<LineNode['kind']>(['order', 'instrument', 'tolerance']);

const NAMES: Readonly<Record<string, TokenType>> = {
  with: 'type',
  from: 'type',
  by: 'parameter',
  time: 'number',
  code: 'enumMember',
};

function headType(line: LineNode): Omit<Token, keyof Span> | null {
  if (line.kind === 'unknown' && !(line.head && lineWord(line.head.word))) return null;
  return { type: line.kind === 'power' && !line.again ? 'variable' : 'keyword' };
}

const ROLES: Readonly<Record<WordRole, TokenType>> = {
  block: 'keyword',
  line: 'property',
  eye: 'variable',
  base: 'enumMember',
  cross: 'operator',
  plano: 'number',
  'no-cylinder': 'enumMember',
  label: 'property',
  unit: 'property',
  clause: 'property',
  value: 'enumMember',
  choice: 'enumMember',
  key: 'property',
  answer: 'enumMember',
};

/** Where a word has several roles, this is what it mostly is inside a line. */
const INSIDE: readonly WordRole[] = [
  'eye',
  'base',
  'cross',
  'plano',
  'no-cylinder',
  'label',
  'unit',
  'clause',
  'value',
  'choice',
  'key',
  'line',
  'answer',
];

const PART = /-+>|=>|→|[/@]|\[\]|×|\p{L}+(?:-\p{L}+)*/gu;

/** The words and marks between the leaves of the tree; what is not known gets no colour. */
function between(text: string, from: number, to: number): Token[] {
  return [...text.slice(from, to).matchAll(PART)].flatMap(({ 0: part, index }) => {
    const type = /^\p{L}/u.test(part) ? wordType(part) : 'operator';
    return type ? [{ start: from + index, end: from + index + part.length, type }] : [];
  });
}

function wordType(word: string): TokenType | null {
  const roles = new Set(meaningsOf(word).map(({ role }) => role));
  const role = INSIDE.find((one) => roles.has(one));
  return role ? ROLES[role] : null;
}
