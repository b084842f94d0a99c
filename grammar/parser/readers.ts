/** Which rule of the grammar reads each kind of line. */
import { type IToken, NotAllInputParsedException } from 'chevrotain';
import { giveMeaning, type Names } from '../meaning';
import * as T from '../tokens';
import { withShapes } from '../trade-forms';
import type {
  ChoiceWord,
  EyeFigureWord,
  LineNode,
  Name,
  PowerEntry,
  PowersWord,
  SettingsWord,
  TestWord,
  TextWord,
  Word,
} from '../tree';
import { FactParser } from './facts';

export class LineParser extends FactParser {
  constructor(checked = false) {
    super(checked);
    this.performSelfAnalysis();
  }
}

/** One line on its way through the parser. */
export interface Site {
  readonly parser: LineParser;
  readonly tokens: readonly IToken[];
  /** Index of the first token of the part to be parsed. */
  readonly from: number;
  /** The line without its comment and without the blanks at its end. */
  readonly content: string;
  readonly head: Word;
  readonly again: boolean;
}

/** Makes the node of a line; null when its rule failed before it had anything. */
export type Reader = (site: Site) => LineNode | null;

/** Hands the tokens from `site.from` on to one rule. What the rule gathered before it failed is kept. */
function run<R>({ parser, tokens, from }: Site, names: Names, rule: (parser: LineParser) => R): R {
  parser.kept = null;
  parser.input = giveMeaning(tokens, from, names, parser.tell);
  const read = rule(parser);
  // The library copies its list of errors whenever it is asked for it.
  parser.stopped = parser.errors[0] ?? null;
  return read ?? (parser.kept as R);
}

/** Text that the rule left over: a reason or another free fact at the end of the line. */
function restText({ parser, content }: Site): Name | null {
  const { stopped } = parser;
  if (!(stopped instanceof NotAllInputParsedException)) return null;
  parser.stopped = null;
  return textFrom(content, stopped.token.startOffset);
}

/** The same where a quoted reason may stand alone: words in front of the quote were meant for something else. */
function reasonText(site: Site): Name | null {
  const rest = restText(site);
  const quote = rest === null ? -1 : site.content.slice(rest.start).search(/["“„«]/);
  if (rest && quote > 0) {
    const end = rest.start + site.content.slice(rest.start, rest.start + quote).trimEnd().length;
    site.parser.tellInstead({ code: 'unexpected-text', start: rest.start, end });
  }
  return rest;
}

/** Free text from a column to the end of the line, without the quotes when it is one quoted text. */
function textFrom(content: string, start: number): Name {
  const typed = content.slice(start);
  const tokens = T.tokenize(typed);
  const quoted = tokens.length === 1 && tokens[0]?.tokenType === T.Text;
  return { text: quoted ? T.unquote(typed) : typed, start, end: start + typed.length };
}

/** Tells what has no place behind a line that says all with its first word. */
function expectEnd({ parser, tokens, from, content }: Site): void {
  const next = tokens[from];
  if (next) parser.tellInstead({ code: 'unexpected-text', start: next.startOffset, end: content.length });
}

/** Tells that the line says too little to mean anything. */
export function tellHead({ parser, content, head: { start, end } }: Site): void {
  parser.tell({ code: 'value-missing', start, end, data: { word: content.slice(start, end) } });
}

const named =
  (kind: 'order' | 'instrument' | 'standard'): Reader =>
  (site) => ({ kind, head: site.head, name: run(site, 'first', (p) => p.optionalName()) });

export const readPower: Reader = (site) => {
  const { parser, head, again } = site;
  const entries = run(site, 'clauses', (p) => p.powerLine()) ?? [];
  expectValues(site, entries);
  return { kind: 'power', head, again, entries: parser.checkTwoEyes(entries, false) };
};

/** Tells of an eye that got no value, unless the text behind it was told as what it is. */
function expectValues({ parser, content }: Site, entries: readonly PowerEntry[]): void {
  if (parser.stopped) return;
  for (const [at, { eye, power, add, prism, baseCurve, thickness }] of entries.entries()) {
    if (power || add || baseCurve || thickness || prism.length > 0 || !eye) continue;
    const { start, end } = eye;
    const next = entries[at + 1]?.start ?? content.length;
    if (parser.problems.some((told) => told.start >= end && told.start < next)) continue;
    parser.tell({ code: 'value-missing', start, end, data: { word: content.slice(start, end) } });
  }
}

const powers =
  (which: PowersWord): Reader =>
  (site) => {
    const entries = run(site, 'clauses', (p) => p.powerLine()) ?? [];
    // `balance L` says all there is to say.
    if (which !== 'balance') expectValues(site, entries);
    return { kind: 'powers', head: site.head, which, entries: site.parser.checkTwoEyes(entries, true) };
  };
export const readDesign: Reader = (site) => {
  const read = { ...site, tokens: withShapes(site.tokens, site.from) };
  return { kind: 'design', head: site.head, entries: run(read, 'clauses', (p) => p.designLine()) ?? [] };
};
const settings =
  (which: SettingsWord): Reader =>
  (site) => ({
    kind: 'settings',
    head: site.head,
    which,
    again: site.again,
    entries: run(site, 'clauses', (p) => p.settings(which)) ?? [],
  });
const figure =
  (which: 'zero' | 'reads-to' | 'uncertainty'): Reader =>
  (site) => ({ kind: 'figure', head: site.head, which, figure: run(site, 'clauses', (p) => p.oneFigure()) });
const eyeFigures =
  (which: EyeFigureWord): Reader =>
  (site) => {
    const read = run(site, 'clauses', (p) => (which === 'thinning' ? p.thinningLine() : p.eyeFigures(which)));
    return read && { kind: 'eye-figure', head: site.head, which, again: site.again, ...read };
  };
const slab =
  (which: 'slab-off' | 'reverse-slab'): Reader =>
  (site) => {
    const read = run(site, 'clauses', (p) => p.eyeFigures(which));
    return (
      read && {
        kind: 'slab',
        head: site.head,
        reverse: which === 'reverse-slab',
        again: site.again,
        entries: read.entries,
      }
    );
  };
const choice =
  (which: ChoiceWord): Reader =>
  (site) => {
    const word = run(site, 'clauses', (p) => p.choice(which));
    return { kind: 'choice', head: site.head, which, choice: word };
  };
/** A recorded fact may be followed by a remark; an order's choice may not. */
const recorded =
  (which: TestWord): Reader =>
  (site) => {
    const results = run(site, 'clauses', (p) => p.resultLine()) ?? [];
    return { kind: 'results', head: site.head, which, results, detail: restText(site) };
  };
const dated =
  (which: 'due' | 'calibrated'): Reader =>
  (site) => {
    const read = run(site, 'clauses', (p) => p.datedLine());
    return read && { kind: 'dated', head: site.head, which, ...read };
  };

/** Free facts take the rest of the line as it stands; the parser never sees them. */
const text =
  (which: TextWord): Reader =>
  ({ tokens, from, content, head }) => {
    let first = tokens[from];
    if (first?.tokenType === T.Colon && first.startOffset === head.end) first = tokens[from + 1];
    return { kind: 'text', head, which, text: first ? textFrom(content, first.startOffset) : null };
  };

const READERS: Readonly<Record<string, Reader>> = {
  order: named('order'),
  instrument: named('instrument'),
  standard: named('standard'),
  defaults: (site) => {
    expectEnd(site);
    return { kind: 'defaults', head: site.head };
  },
  end: (site) => {
    expectEnd(site);
    return { kind: 'end', head: site.head };
  },
  yoked: (site) => {
    expectEnd(site);
    const { start, end } = site.head;
    return { kind: 'choice', head: site.head, which: 'split', choice: { word: 'yoked', start, end } };
  },
  tolerance: (site) => ({
    kind: 'tolerance',
    head: site.head,
    ...(run(site, 'first', (p) => p.toleranceHeader()) ?? { name: null, from: null }),
  }),
  reading: (site) => {
    const read = run(site, 'clauses', (p) => p.readingHeader());
    return read && { kind: 'reading', head: site.head, ...read };
  },
  rx: powers('rx'),
  kept: powers('kept'),
  balance: powers('balance'),
  previous: powers('previous'),
  verification: powers('verification'),
  add: (site) => ({
    kind: 'add',
    head: site.head,
    again: site.again,
    entries: run(site, 'clauses', (p) => p.addLine()) ?? [],
  }),
  prism: (site) => {
    const read = run(site, 'clauses', (p) => p.prismLine());
    return read && { kind: 'prism', head: site.head, again: site.again, ...read };
  },
  pd: (site) => {
    const read = run(site, 'clauses', (p) => p.pdLine(true));
    return read && { kind: 'pd', head: site.head, again: site.again, ...read };
  },
  'near-pd': (site) => {
    const read = run(site, 'clauses', (p) => p.pdLine(false));
    return read && { kind: 'pd', head: site.head, again: site.again, distance: read.near, near: read.distance };
  },
  'optical-centres': (site) => {
    const read = run(site, 'clauses', (p) => p.pdLine(false));
    return read && { kind: 'centres', head: site.head, again: site.again, distance: read.distance };
  },
  height: eyeFigures('height'),
  'base-curve': eyeFigures('base-curve'),
  inset: eyeFigures('inset'),
  blank: eyeFigures('blank'),
  thinning: eyeFigures('thinning'),
  clock: (site) => ({
    kind: 'clock',
    head: site.head,
    again: site.again,
    entries: run(site, 'clauses', (p) => p.clockLine()) ?? [],
  }),
  segment: (site) => ({
    kind: 'segment',
    head: site.head,
    again: site.again,
    entries: run(site, 'clauses', (p) => p.segmentLine()) ?? [],
  }),
  design: (site) => readDesign(site),
  lens: (site) => ({ kind: 'lens', head: site.head, entries: run(site, 'words', (p) => p.lensLine()) ?? [] }),
  frame: settings('frame'),
  'as-worn': settings('as-worn'),
  tested: settings('tested'),
  thickness: settings('thickness'),
  decentre: (site) => {
    const read = run(site, 'clauses', (p) => p.prismLine());
    return { kind: 'decentre', head: site.head, entries: read?.entries ?? [] };
  },
  supply: choice('supply'),
  compensation: choice('compensation'),
  split: choice('split'),
  purpose: choice('purpose'),
  impact: recorded('impact'),
  cosmetic: recorded('cosmetic'),
  marking: recorded('marking'),
  make: (site) => ({
    kind: 'eyes',
    head: site.head,
    which: 'make',
    eyes: run(site, 'clauses', (p) => p.eyes()) ?? [],
    reason: null,
  }),
  replaced: (site) => {
    const eyes = run(site, 'clauses', (p) => p.eyes()) ?? [];
    const reason = reasonText(site);
    // Without its eye nobody knows which lens is a new one.
    if (eyes.length === 0 && site.tokens.length > site.from) tellHead(site);
    return { kind: 'eyes', head: site.head, which: 'replaced', eyes, reason };
  },
  'slab-off': slab('slab-off'),
  'reverse-slab': slab('reverse-slab'),
  decided: (site) => {
    const read = run(site, 'clauses', (p) => p.decidedLine());
    if (!read) return null;
    const rest = reasonText(site);
    if (
      !read.verdict &&
      site.tokens.length > site.from &&
      !site.parser.problems.some(({ code }) => code === 'unknown-choice')
    )
      tellHead(site);
    // A second decision behind the first is no reason for it.
    if (rest && /^(?:accept|reject|remake)\b/i.test(rest.text))
      site.parser.tellInstead({ code: 'unexpected-text', start: rest.start, end: rest.end });
    return { kind: 'decided', head: site.head, ...read, why: read.why ?? rest };
  },
  confirmed: (site) => {
    const read = run(site, 'first', (p) => p.confirmedLine());
    if (read?.code && !read.quote) {
      const { start, end, text: word } = read.code;
      site.parser.tell({ code: 'value-missing', start, end, data: { word } });
    }
    return read && { kind: 'confirmed', head: site.head, ...read };
  },
  tint: (site) => {
    const read = run(site, 'words', (p) => p.tintLine());
    return read && { kind: 'tint', head: site.head, ...read };
  },
  'remake-of': (site) => {
    const name = run(site, 'first', (p) => p.optionalName());
    return { kind: 'remake-of', head: site.head, name, why: restText(site) };
  },
  due: dated('due'),
  calibrated: dated('calibrated'),
  'test-lens': (site) => {
    const read = run(site, 'clauses', (p) => p.testLensLine());
    if (read?.nominal && !read.read && site.parser.problems.length === 0) tellHead(site);
    return read && { kind: 'test-lens', head: site.head, ...read };
  },
  zero: figure('zero'),
  'reads-to': figure('reads-to'),
  uncertainty: figure('uncertainty'),
  note: text('note'),
  ref: text('ref'),
  coating: text('coating'),
  kind: text('kind'),
};

const readLimit: Reader = (site) => {
  const { head } = site;
  const read = run(site, 'clauses', (p) => p.limitLine());
  if (read?.band && read.bound && !read.limit) tellHead(site);
  return read && { kind: 'limit', head, which: head, ...read };
};

/** Lines that may follow `again`, by their first words. */
export const REPEATABLE_LINES: ReadonlySet<string> = new Set([
  'add',
  'prism',
  'pd',
  'near-pd',
  'optical-centres',
  'height',
  'base-curve',
  'thickness',
  'clock',
  'segment',
  'slab-off',
  'reverse-slab',
]);

/** The reader of a line by its first word; words that only a tolerance has are no lines elsewhere. */
export const readerOf = (word: string, isLimit: boolean): Reader | undefined => (isLimit ? readLimit : READERS[word]);

export const readerAgain = (word: string): Reader | undefined =>
  REPEATABLE_LINES.has(word) ? READERS[word] : undefined;
