/**
 * Parses one line on its own: `parseLine` returns a typed node and a list of problems and never throws on any text.
 * The first word decides which rule of the grammar reads the rest, so nothing unknown ever reaches the parser.
 */
import type { IRecognitionException, IToken } from 'chevrotain';
import { commentStart, contentEnd, indentOf, isBlank } from '../text';
import * as T from '../tokens';
import { tradeForm } from '../trade-forms';
import type { EyeWord, LineNode, ParsedLine, Problem, Qualifiers, Span, Word } from '../tree';
import { type BlockKind, lineWord, type VocabularyEntry } from '../vocabulary';
import { spanOf, wordOf } from './amounts';
import { LineParser, type Reader, readDesign, readerAgain, readerOf, readPower, type Site, tellHead } from './readers';
import { hiddenFigures, lostText, tellLookalikes, tellQuote } from './surroundings';

let instance: LineParser | undefined;

/** The one parser; built on first use, since building it is most of a cold start. */
function parser(): LineParser {
  instance ??= new LineParser();
  return instance;
}

const NOTHING_TOLD: readonly Problem[] = [];
const BLANK: ParsedLine = { node: { kind: 'blank', head: null }, problems: NOTHING_TOLD };

/**
 * Parses one line.
 * @param line the line without its end; a comment is cut off here
 * @param block the block the line stands in; only the lines of a `tolerance` block read differently in it
 * @returns the typed node with spans in columns of this line, and what is wrong with the writing
 */
export function parseLine(line: string, block?: BlockKind): ParsedLine {
  const cut = commentStart(line);
  const content = line.slice(0, contentEnd(line, cut));
  if (indentOf(content) === content.length) return BLANK;
  const tokens = T.tokenize(content);
  const first = tokens[0] as IToken;
  const entry = first.tokenType === T.Word ? lineWord(first.image) : undefined;
  const trade = entry && entry.role !== 'eye' ? null : tradeForm(content.trim(), first, tokens[1]);
  if (trade === 'either') return eitherLine(content, first);
  if (!entry && !trade) return unknownLine(content, first, tokens[1]);
  const active = parser();
  const word = entry && !trade ? entry.word : 'design';
  active.head = word;
  active.ending = active.stopped = null;
  const head: Word = { word, start: first.startOffset, end: T.endOf(first) };
  let node: LineNode;
  if (!entry || trade) node = read(readDesign, { parser: active, tokens, from: 0, content, head, again: false });
  else if (entry.word === 'again') node = readAgain(content, tokens, head, active);
  else if (entry.role === 'eye')
    node = read(readPower, { parser: active, tokens, from: 0, content, head, again: false });
  else {
    const reader = readerOf(entry.word, block === 'tolerance' && isLimit(entry));
    if (!reader) return unknownLine(content, first, tokens[1]);
    node = read(reader, { parser: active, tokens, from: 1, content, head, again: false });
  }
  tellQuote(tokens, active.problems, active.tell);
  tellLookalikes(line.slice(0, cut), active.tell);
  const lost = lostText(node, line, cut);
  // The words are there; they only count for nothing.
  const hidden = hiddenFigures(node, line, cut);
  if (hidden) active.tell(hidden);
  if (lost) active.problems = [...active.problems.filter(({ code }) => code !== 'value-missing'), lost];
  return { node, problems: problemsOf(active) };
}

const isLimit = ({ blocks, word }: VocabularyEntry): boolean => blocks.includes('tolerance') && word !== 'note';

/** `again R …`, `again add …`: the line behind the word is read as usual and marked as a repetition. */
function readAgain(content: string, tokens: readonly IToken[], head: Word, active: LineParser): LineNode {
  const next = tokens[1];
  const entry = next?.tokenType === T.Word ? lineWord(next.image) : undefined;
  const site = { parser: active, tokens, content, head, again: true };
  if (entry?.role === 'eye') return read(readPower, { ...site, from: 1 });
  const reader = entry && readerAgain(entry.word);
  if (entry && reader) {
    active.head = entry.word;
    return read(reader, { ...site, from: 2 });
  }
  if (!next) active.tell({ code: 'value-missing', start: head.start, end: head.end, data: { word: 'again' } });
  else active.tell({ code: 'unexpected-text', start: next.startOffset, end: content.length });
  return { kind: 'unknown', head };
}

function read(reader: Reader, site: Site): LineNode {
  const active = site.parser;
  const node: LineNode = reader(site) ?? { kind: 'unknown', head: site.head };
  if (active.stopped) tellStop(active.stopped, site, node);
  else if (site.tokens.length === site.from) expectSomething(site, node);
  // Two powers for one eye are held against each other where the order is read.
  else if ('entries' in node && node.entries.length > 1 && node.kind !== 'power' && node.kind !== 'powers')
    tellEyeTwice(node.entries, site);
  const ending: Qualifiers | null = active.ending;
  return ending ? { ...node, qualifiers: ending } : node;
}

/** Values that name their eyes share them out; one eye has one, and one that names none would be for both. */
function tellEyeTwice(
  entries: readonly (Span & { readonly eye: EyeWord | null })[],
  { parser: active, content }: Site,
): void {
  if (active.problems.length > 0) return;
  for (let at = 1; at < entries.length; at++) {
    const { eye, start, end } = entries[at] as (typeof entries)[number];
    const other = entries.slice(0, at).find((one) => one.eye === null || eye === null || sharesEye(one.eye, eye));
    if (!other) continue;
    const word = other.eye && eye && content.slice(eye.start, eye.end);
    const span = other.eye && eye ? eye : other.eye === null ? other : { start, end };
    active.tell({ code: 'eye-twice', start: span.start, end: span.end, data: { word: word ?? null } });
    return;
  }
}

const sharesEye = (one: EyeWord, other: EyeWord): boolean =>
  one.eye === other.eye || one.eye === 'both' || other.eye === 'both';

/**
 * Lines that say all with their first word; a reading that leaves its date out; and the order, whose missing name is
 * told with the order.
 */
const COMPLETE = new Set<LineNode['kind']>(['defaults', 'end', 'reading', 'order', 'blank']);

function expectSomething(site: Site, node: LineNode): void {
  if (!COMPLETE.has(node.kind) && !(node.kind === 'choice' && node.choice)) tellHead(site);
}

/**
 * At most one problem for what no rule could read: the first place at which it stopped. The parts of a line may come in
 * any order and number, so a rule only ever stops at something it does not know.
 */
function tellStop({ token }: IRecognitionException, site: Site, node: LineNode): void {
  const { parser: active, head, content } = site;
  const end = content.length;
  // The end of the line has no place of its own; the head stands in for it.
  const start = Number.isFinite(token.startOffset) ? token.startOffset : head.start;
  dropMissing(site, start);
  active.tellInstead({ ...codeOfRest(token, site, node), start, end });
}

/** `add R foo` is told for `foo`, and not once more for what is missing behind the `R`. */
function dropMissing({ parser: active, content }: Site, start: number): void {
  let before = start;
  while (before > 0 && isSeparator(content.charCodeAt(before - 1))) before--;
  active.problems = active.problems.filter(({ code, end }) => code !== 'value-missing' || end !== before);
}

const isSeparator = (code: number): boolean => isBlank(code) || code === 47 || code === 44 || code === 59;

/** What the text that no rule took is: a sign that waits for its figure, a power without its eye, or anything. */
function codeOfRest(token: IToken, { tokens, from }: Site, node: LineNode): Omit<Problem, keyof Span> {
  const isSign = token.tokenType === T.Dash || token.tokenType === T.Plus;
  if (isSign && token === tokens.at(-1)) return { code: 'value-missing', data: { word: token.image } };
  const isFirst = token.startOffset === tokens[from]?.startOffset;
  if (isFirst && node.kind === 'powers' && startsPower(token))
    return { code: 'eye-unsaid', data: { word: token.image } };
  return { code: 'unexpected-text' };
}

const startsPower = ({ tokenType }: IToken): boolean =>
  [T.Figure, T.SignApart, T.Plano, T.Infinite, T.SphereLabel].includes(tokenType);

/** Problems in the order of the line; the list is handed out, and the parser begins another one. */
function problemsOf(active: LineParser): readonly Problem[] {
  const { problems } = active;
  if (problems.length === 0) return NOTHING_TOLD;
  active.problems = [];
  if (problems.length === 1) return problems;
  return problems.filter((problem) => !isSaidBy(problems, problem)).sort((one, other) => one.start - other.start);
}

/** What is missing behind a word is no matter of its own where something else is told of the same word. */
const isSaidBy = (problems: readonly Problem[], { code, start, end }: Problem): boolean =>
  code === 'value-missing' &&
  problems.some((other) => other.code !== code && other.start === start && other.end === end);

/** `R-22`: a round segment or the power of the right lens; nothing is taken until somebody says which. */
function eitherLine(content: string, first: IToken): ParsedLine {
  const span = { start: first.startOffset, end: content.length };
  const word = content.slice(span.start, span.end);
  return {
    node: { kind: 'unknown', head: wordOf(first) },
    problems: [{ code: 'round-or-right', ...span, data: { word } }],
  };
}

/** A line that begins with a power wants its eye; anything else is not known. */
function unknownLine(content: string, first: IToken, second: IToken | undefined): ParsedLine {
  const end = content.length;
  const isWord = first.tokenType === T.Word;
  const unsaid = isWord ? isPowerWord(first, second) : isPowerFigure(first, second);
  const span: Span = isWord && !unsaid ? spanOf(first) : { start: first.startOffset, end };
  const word = content.slice(span.start, span.end);
  const problem: Problem = { code: unsaid ? 'eye-unsaid' : 'unknown-line', ...span, data: { word } };
  return { node: { kind: 'unknown', head: isWord ? wordOf(first) : null }, problems: [problem] };
}

const isPowerFigure = (first: IToken, second: IToken | undefined): boolean =>
  first.tokenType === T.Figure ||
  first.tokenType === T.Infinite ||
  ((first.tokenType === T.Dash || first.tokenType === T.Plus) && second?.tokenType === T.Figure);

/** `pl -0.75 x 22`, `sph -4.50`. */
function isPowerWord(first: IToken, second: IToken | undefined): boolean {
  const type = T.meaningInside(first.image)?.type;
  if (type === T.Plano) return true;
  return type === T.SphereLabel && second !== undefined && isPowerFigure(second, undefined);
}
