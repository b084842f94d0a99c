/**
 * Parses one line on its own: `parseLine` returns a typed node and a list of problems and never throws on any text.
 * The first word decides which rule of the grammar reads the rest, so nothing unknown ever reaches the parser.
 */
import { type IToken, NotAllInputParsedException } from 'chevrotain';
import { commentStart, indentOf } from '../text';
import * as T from '../tokens';
import type {
  ChoiceWord,
  EyeFigureWord,
  LineNode,
  Name,
  ParsedLine,
  PowersWord,
  Problem,
  SettingsWord,
  Span,
  TextWord,
  Word,
} from '../tree';
import { type BlockKind, lineWord } from '../vocabulary';
import { spanOf } from './amounts';
import { FactParser } from './facts';
import { isOpen, tellLookalikes, tellLostText, tellMissing, tellOpenQuote } from './last-look';

class LineParser extends FactParser {
  constructor() {
    super();
    this.performSelfAnalysis();
  }
}

let instance: LineParser | undefined;

/** The one parser; built on first use, since building it is most of a cold start. */
const parser = (): LineParser => (instance ??= new LineParser());

type Body = LineNode extends infer Node ? (Node extends LineNode ? Omit<Node, 'head' | 'qualifiers'> : never) : never;

/** One line on its way through the parser. */
interface Site {
  readonly tokens: readonly IToken[];
  /** Index of the first token of the part to be parsed. */
  readonly from: number;
  readonly line: string;
  /** The line without its comment. */
  readonly content: string;
  readonly again: boolean;
}

type Reader = (site: Site) => Body | null;

/** Hands the tokens from `site.from` on to one rule. What the rule gathered before it failed is kept. */
function run<R>(site: Site, names: T.Names, rule: (parser: LineParser) => R): R {
  const active = parser();
  active.input = T.giveMeaning(site.tokens, site.from, names);
  active.kept = null;
  const read = rule(active);
  // A rule that failed returns nothing; null is an answer.
  return read === undefined ? (active.kept as R) : read;
}

/** Text that the rule left over: a reason or another free fact at the end of the line. */
function restText(site: Site): Name | null {
  const left = leftOver();
  if (!left) return null;
  const active = parser();
  active.errors = [];
  const text = site.content.slice(left.startOffset).trimEnd();
  return { text: T.unquote(text), start: left.startOffset, end: left.startOffset + text.length };
}

function leftOver(): IToken | undefined {
  const error = parser().errors[0];
  return error instanceof NotAllInputParsedException ? error.token : undefined;
}

const named =
  (kind: 'order' | 'instrument' | 'standard'): Reader =>
  (site) => ({ kind, name: run(site, 'first', (p) => p.optionalName()) });
const powers =
  (which: PowersWord): Reader =>
  (site) => ({ kind: 'powers', which, entries: run(site, 'clauses', (p) => p.powerLine()) ?? [] });
const settings =
  (which: SettingsWord): Reader =>
  (site) => ({ kind: 'settings', which, entries: run(site, 'clauses', (p) => p.settings()) ?? [] });
const figure =
  (which: 'zero' | 'reads-to' | 'uncertainty'): Reader =>
  (site) => ({ kind: 'figure', which, figure: run(site, 'clauses', (p) => p.oneFigure()) });
const eyeFigures =
  (which: EyeFigureWord, use: 'length' | 'difference'): Reader =>
  (site) => {
    const read = run(site, 'clauses', (p) => p.eyeFigures(use));
    return read && { kind: 'eye-figure', which, again: site.again, ...read };
  };
const slab =
  (reverse: boolean): Reader =>
  (site) => {
    const read = run(site, 'clauses', (p) => p.eyeFigures('length'));
    return read && { kind: 'slab', reverse, entries: read.entries };
  };
const choice =
  (which: ChoiceWord): Reader =>
  (site) => ({ kind: 'choice', which, choice: run(site, 'clauses', (p) => p.choice()), detail: restText(site) });
const eyes =
  (which: 'make' | 'replaced'): Reader =>
  (site) => ({ kind: 'eyes', which, eyes: run(site, 'clauses', (p) => p.eyes()) ?? [], reason: restText(site) });
const dated =
  (which: 'due' | 'calibrated'): Reader =>
  (site) => {
    const read = run(site, 'clauses', (p) => p.datedLine());
    return read && { kind: 'dated', which, ...read };
  };
const text =
  (which: TextWord): Reader =>
  (site) => ({ kind: 'text', which, text: freeText(site) });

/** Free facts take the rest of the line as it stands; the parser never sees them. */
function freeText(site: Site): Name | null {
  const first = site.tokens[site.from];
  if (!first) return null;
  const typed = site.content.slice(first.startOffset).trimEnd();
  const span = { start: first.startOffset, end: first.startOffset + typed.length };
  if (/^["“„«]/.test(typed) && isOpen(typed)) parser().tell({ code: 'quote-open', ...span });
  return { text: T.unquote(typed), ...span };
}

const READERS: Readonly<Record<string, Reader>> = {
  order: named('order'),
  instrument: named('instrument'),
  standard: named('standard'),
  defaults: () => ({ kind: 'defaults' }),
  end: () => ({ kind: 'end' }),
  tolerance: (site) => run(site, 'first', (p) => p.toleranceHeader()),
  reading: (site) => run(site, 'clauses', (p) => p.readingHeader()),
  rx: powers('rx'),
  kept: powers('kept'),
  balance: powers('balance'),
  previous: powers('previous'),
  verification: powers('verification'),
  add: (site) => ({ kind: 'add', again: site.again, entries: run(site, 'clauses', (p) => p.addLine()) ?? [] }),
  prism: (site) => {
    const read = run(site, 'clauses', (p) => p.prismLine());
    return read && { ...read, again: site.again };
  },
  pd: (site) => {
    const read = run(site, 'clauses', (p) => p.pdLine());
    return read && { kind: 'pd', again: site.again, ...read };
  },
  'near-pd': (site) => {
    const read = run(site, 'clauses', (p) => p.pdLine());
    return read && { kind: 'pd', again: site.again, distance: read.near, near: read.distance };
  },
  'optical-centres': (site) => {
    const read = run(site, 'clauses', (p) => p.pdLine());
    return read && { kind: 'centres', again: site.again, distance: read.distance };
  },
  height: eyeFigures('height', 'length'),
  'base-curve': eyeFigures('base-curve', 'difference'),
  inset: eyeFigures('inset', 'difference'),
  blank: eyeFigures('blank', 'length'),
  thinning: eyeFigures('thinning', 'length'),
  clock: (site) => ({ kind: 'clock', again: site.again, entries: run(site, 'clauses', (p) => p.clockLine()) ?? [] }),
  segment: (site) => ({
    kind: 'segment',
    again: site.again,
    entries: run(site, 'clauses', (p) => p.segmentLine()) ?? [],
  }),
  design: (site) => ({ kind: 'design', entries: run(site, 'clauses', (p) => p.designLine()) ?? [] }),
  lens: (site) => ({ kind: 'lens', entries: run(site, 'words', (p) => p.lensLine()) ?? [] }),
  frame: settings('frame'),
  'as-worn': settings('as-worn'),
  tested: settings('tested'),
  thickness: settings('thickness'),
  decentre: (site) => ({ kind: 'decentre', entries: run(site, 'clauses', (p) => p.prismLine())?.entries ?? [] }),
  supply: choice('supply'),
  compensation: choice('compensation'),
  split: choice('split'),
  purpose: choice('purpose'),
  impact: choice('impact'),
  cosmetic: choice('cosmetic'),
  marking: choice('marking'),
  yoked: () => ({ kind: 'choice', which: 'split', choice: { word: 'yoked', start: 0, end: 0 }, detail: null }),
  make: eyes('make'),
  replaced: eyes('replaced'),
  'slab-off': slab(false),
  'reverse-slab': slab(true),
  decided: (site) => {
    const read = run(site, 'clauses', (p) => p.decidedLine());
    return read && { kind: 'decided', ...read, why: restText(site) };
  },
  confirmed: (site) => run(site, 'first', (p) => p.confirmedLine()),
  tint: (site) => run(site, 'words', (p) => p.tintLine()),
  'remake-of': (site) => ({
    kind: 'remake-of',
    name: run(site, 'first', (p) => p.optionalName()),
    why: restText(site),
  }),
  due: dated('due'),
  calibrated: dated('calibrated'),
  'test-lens': (site) => run(site, 'clauses', (p) => p.testLensLine()),
  zero: figure('zero'),
  'reads-to': figure('reads-to'),
  uncertainty: figure('uncertainty'),
  note: text('note'),
  ref: text('ref'),
  coating: text('coating'),
  kind: text('kind'),
};

const limit =
  (head: Word): Reader =>
  (site) => {
    const read = run(site, 'clauses', (p) => p.limitLine());
    return read && { kind: 'limit', which: head, ...read };
  };

const powerLine: Reader = (site) => ({
  kind: 'power',
  again: site.again,
  entries: run(site, 'clauses', (p) => p.powerLine()) ?? [],
});

const BLANK: ParsedLine = { node: { kind: 'blank', head: null }, problems: [] };

/**
 * Parses one line.
 * @param line the line without its end; a comment is cut off here
 * @param block the block the line stands in; only the lines of a `tolerance` block read differently in it
 * @returns the typed node with spans in columns of this line, and what is wrong with the writing
 */
export function parseLine(line: string, block?: BlockKind): ParsedLine {
  const content = line.slice(0, commentStart(line));
  if (indentOf(content) === content.length) return BLANK;
  const tokens = T.tokenize(content);
  const first = tokens[0] as IToken;
  const active = parser();
  active.problems = [];
  const entry = first.tokenType === T.Word ? lineWord(first.image) : undefined;
  if (!entry) return unknownLine(content, first);
  const head: Word = { ...spanOf(first), word: entry.word };
  const site: Site = { tokens, from: 1, line, content, again: false };
  if (entry.word === 'again') return againLine(site, head);
  if (entry.role === 'eye') return finish(powerLine({ ...site, from: 0 }), head, site);
  const reader =
    block === 'tolerance' && entry.word !== 'tolerance' && entry.word !== 'note' ? limit(head) : READERS[entry.word];
  return reader ? finish(reader(site), head, site) : unknownLine(content, first);
}

/** `again R …`, `again add …`: the line after the word is read as usual and marked as a repetition. */
function againLine(site: Site, head: Word): ParsedLine {
  const next = site.tokens[1];
  const entry = next?.tokenType === T.Word ? lineWord(next.image) : undefined;
  const again = { ...site, again: true };
  if (entry?.role === 'eye') return finish(powerLine({ ...again, from: 1 }), head, site);
  const reader = entry && REPEATABLE.has(entry.word) ? READERS[entry.word] : undefined;
  if (reader) return finish(reader({ ...again, from: 2 }), head, site);
  parser().tell({ code: 'value-missing', start: head.start, end: head.end, data: { word: 'again' } });
  return { node: { kind: 'unknown', head }, problems: parser().problems };
}

const REPEATABLE = new Set([
  'add',
  'prism',
  'pd',
  'near-pd',
  'optical-centres',
  'height',
  'base-curve',
  'clock',
  'segment',
  'thickness',
]);

function finish(body: Body | null, head: Word, site: Site): ParsedLine {
  const active = parser();
  tellErrors(site, head);
  const qualifiers = active.ending;
  active.ending = null;
  active.errors = [];
  const node = (
    body ? { head, ...body, ...(qualifiers ? { qualifiers } : {}) } : { kind: 'unknown', head }
  ) as LineNode;
  // A line that stopped at something unreadable has said enough.
  if (active.problems.length === 0) tellMissing(node, head, active.tell);
  if (node.kind !== 'text') tellOpenQuote(site.tokens, active.tell);
  tellLookalikes(site.content, active.tell);
  tellLostText(node, site.line, site.content.length, active.tell);
  return { node, problems: active.problems };
}

/** At most one problem for what no rule could read: the first place at which it stopped. */
function tellErrors(site: Site, head: Word): void {
  const active = parser();
  const error = active.errors[0];
  if (!error) return;
  const end = site.content.trimEnd().length;
  if (error instanceof NotAllInputParsedException) {
    active.tell({ code: 'unexpected-text', start: error.token.startOffset, end });
    return;
  }
  const at = error.token.startOffset;
  // The end-of-file token has no position; the end of the line stands in for it.
  const start = Number.isFinite(at) ? at : head.end;
  active.tell({
    code: 'line-unfinished',
    start: Math.min(start, end),
    end,
    data: { word: site.content.slice(head.start, head.end) },
  });
}

function unknownLine(content: string, first: IToken): ParsedLine {
  const end = content.trimEnd().length;
  const span: Span = first.tokenType === T.Word ? spanOf(first) : { start: first.startOffset, end };
  const code = first.tokenType === T.Figure || first.tokenType === T.Dash ? 'eye-unsaid' : 'unknown-line';
  const problem: Problem = { code, ...span, data: { word: content.slice(span.start, span.end) } };
  const head = first.tokenType === T.Word ? { ...span, word: first.image.toLowerCase() } : null;
  return { node: { kind: 'unknown', head }, problems: [problem] };
}
