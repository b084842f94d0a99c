/**
 * The shapes of the notation. The lexer knows about twenty of them and no keyword; afterwards one table turns words
 * into their meaning. So `x22`, `A52`, `7x28`, `-4.50DS` and `R-4.50-0.75x22` come apart by themselves.
 */
import { createToken, type IToken, Lexer, type TokenType } from 'chevrotain';
import { VOCABULARY, type WordRole } from './vocabulary';

const BLANKS = /[ \t\u00A0\u2000-\u200B\u202F\u3000]+/;
const MINUS = '\\-\u2010-\u2015\u2212\uFE63\uFF0D';
const PLUS = '+\uFF0B';
const LETTER = 'A-Za-z\u00C0-\u00D6\u00D8-\u00F6\u00F8-\u02AF\u0370-\u0393\u0395-\u03FF\u0400-\u04FF';

const SHAPES: TokenType[] = [];
const KINDS: TokenType[] = [];

/** The lexer takes the first shape that fits, so the order of the declarations matters. */
function shape(name: string, pattern: RegExp, group?: string): TokenType {
  const type = createToken({ name, pattern, line_breaks: false, ...(group === undefined ? {} : { group }) });
  SHAPES.push(type);
  return type;
}

shape('Blank', BLANKS, Lexer.SKIPPED);
export const Text = shape('Text', /"(?:[^"]|"")*"?|[“„][^“”]*[“”]?|«[^»]*»?/);
export const DateShape = shape('Date', /\d{4}[-./]\d{1,2}[-./]\d{1,2}T?/);
export const DayFirst = shape('DayFirst', /\d{1,2}[/.]\d{1,2}[/.]\d{4}/);
export const Time = shape('Time', /\d{1,2}:\d{2}(?::\d{2})?/);
export const Arrow = shape('Arrow', /-+>|→|=>/);
export const Figure = shape(
  'Figure',
  new RegExp(
    `[${MINUS}${PLUS}]?(?:\\d+(?:\\.\\d*|,\\d+)?|[.,]\\d+|[\uFF10-\uFF19]+(?:[.,\uFF0E\uFF0C][\uFF10-\uFF19]+)?)`,
  ),
);
export const Dash = shape('Dash', new RegExp(`[${MINUS}]`));
export const Plus = shape('Plus', new RegExp(`[${PLUS}]`));
export const Slash = shape('Slash', /\//);
export const At = shape('At', /@/);
export const Comma = shape('Comma', /[,;&]/);
export const Colon = shape('Colon', /[:=]/);
export const OpenParen = shape('OpenParen', /\(/);
export const CloseParen = shape('CloseParen', /\)/);
export const Box = shape('Box', /\[\]|□/);
export const Degree = shape('Degree', /°|º/);
export const PrismMark = shape('PrismMark', /[\u0394\u2206^]/);
export const Infinite = shape('Infinite', /∞/);
export const CrossSign = shape('CrossSign', /×/);
/** A run of letters, with hyphens inside it; `B/E` for both eyes is the one word with a stroke. */
export const Word = shape('Word', new RegExp(`[bB]/[eE](?![${LETTER}])|[${LETTER}]+(?:-[${LETTER}]+)*`));
export const Tick = shape('Tick', /[✓✔]/);
export const Other = shape('Other', /[\u0000-\uFFFF]/);

function kind(name: string): TokenType {
  const type = createToken({ name, pattern: Lexer.NA });
  KINDS.push(type);
  return type;
}

/** A minus or a plus with a blank between it and its figure. */
export const SignApart = kind('SignApart');
export const NameToken = kind('Name');
export const EyeToken = kind('Eye');
export const Cross = kind('Cross');
export const Plano = kind('Plano');
export const NoCylinder = kind('NoCylinder');
export const SphereLabel = kind('SphereLabel');
export const CylinderLabel = kind('CylinderLabel');
export const AxisLabel = kind('AxisLabel');
export const Unit = kind('Unit');
export const BaseWord = kind('BaseWord');
export const BaseAngle = kind('BaseAngle');
export const Answer = kind('Answer');
export const AddWord = kind('AddWord');
export const PrismWord = kind('PrismWord');
export const BaseCurveWord = kind('BaseCurveWord');
export const ThicknessWord = kind('ThicknessWord');
export const Near = kind('Near');
export const Intermediate = kind('Intermediate');
export const DistanceWord = kind('DistanceWord');
export const AtWord = kind('AtWord');
export const With = kind('With');
export const By = kind('By');
export const Stage = kind('Stage');
export const From = kind('From');
export const Due = kind('Due');
export const Read = kind('Read');
export const BandWord = kind('BandWord');
export const Below = kind('Below');
export const Datum = kind('Datum');
export const Lines = kind('Lines');
export const Wide = kind('Wide');
export const Thin = kind('Thin');
export const Total = kind('Total');
export const Corrected = kind('Corrected');
export const Engraved = kind('Engraved');
export const Surface = kind('Surface');
export const Tilt = kind('Tilt');
export const TiltEnd = kind('TiltEnd');
export const ClockWord = kind('ClockWord');
export const MaterialKey = kind('MaterialKey');
export const DesignWord = kind('DesignWord');
export const ShapeWord = kind('ShapeWord');
export const DesignKey = kind('DesignKey');

const WORD_KINDS: ReadonlyMap<string, TokenType> = new Map<string, TokenType>([
  ['add', AddWord],
  ['prism', PrismWord],
  ['base-curve', BaseCurveWord],
  ['thickness', ThicknessWord],
  ['base', BaseAngle],
  ['near', Near],
  ['intermediate', Intermediate],
  ['distance', DistanceWord],
  ['at', AtWord],
  ['with', With],
  ['by', By],
  ['stage', Stage],
  ['from', From],
  ['due', Due],
  ['read', Read],
  ['to', BandWord],
  ['above', BandWord],
  ['below', Below],
  ['datum', Datum],
  ['lines', Lines],
  ['wide', Wide],
  ['thin', Thin],
  ['total', Total],
  ['corrected', Corrected],
  ['engraved', Engraved],
  ['front-vertex', Surface],
  ['back-vertex', Surface],
  ['tilt', Tilt],
  ['clock', ClockWord],
  ['nasal-up', TiltEnd],
  ['nasal-down', TiltEnd],
  ['index', MaterialKey],
  ['abbe', MaterialKey],
  ['density', MaterialKey],
  ['gap', DesignKey],
  ['corridor', DesignKey],
  ['degression', DesignKey],
  ['working', DesignKey],
  ['sph', SphereLabel],
  ['cyl', CylinderLabel],
  ['axis', AxisLabel],
]);

const ROLE_KINDS: Readonly<Partial<Record<WordRole, TokenType>>> = {
  eye: EyeToken,
  base: BaseWord,
  cross: Cross,
  plano: Plano,
  'no-cylinder': NoCylinder,
  unit: Unit,
  answer: Answer,
};

const DESIGNS = new Set(['single-vision', 'bifocal', 'trifocal', 'double', 'progressive', 'office']);
const designKind = (word: string): TokenType => (DESIGNS.has(word) ? DesignWord : ShapeWord);

export interface Meaning {
  readonly type: TokenType;
  readonly word: string;
}

/** Where a spelling has several roles, the first of these is what it means inside a line. */
const ROLES_INSIDE_A_LINE: readonly WordRole[] = [
  'eye',
  'base',
  'cross',
  'plano',
  'no-cylinder',
  'label',
  'unit',
  'answer',
  'clause',
  'value',
  'line',
];

/** What a word means inside a line, by lower-cased spelling; the head of the line is looked up apart. */
const INSIDE_A_LINE: ReadonlyMap<string, Meaning> = (() => {
  const map = new Map<string, Meaning>();
  for (const role of ROLES_INSIDE_A_LINE) {
    for (const entry of VOCABULARY) {
      if (entry.role !== role) continue;
      const type =
        ROLE_KINDS[role] ?? WORD_KINDS.get(entry.word) ?? (role === 'value' ? designKind(entry.word) : undefined);
      if (!type) continue;
      for (const spelling of [entry.word, ...entry.also]) {
        const key = spelling.toLowerCase();
        if (!map.has(key)) map.set(key, { type, word: entry.word });
      }
    }
  }
  return map;
})();

export const meaningInside = (image: string): Meaning | undefined => INSIDE_A_LINE.get(image.toLowerCase());

/** Everything the parser may meet. */
export const TOKENS: readonly TokenType[] = [...SHAPES, ...KINDS];

/** The shapes are checked by a test, since that is most of the time the lexer takes to build. */
const lexer = new Lexer(SHAPES, { positionTracking: 'onlyOffset', ensureOptimizations: true, skipValidations: true });

/** The tokens of a line's content, by their shape alone; the comment is already cut off. */
export const tokenize = (content: string): IToken[] => lexer.tokenize(content).tokens;

/** One past the last column of a token. */
export const endOf = (token: IToken): number => token.startOffset + token.image.length;

/** Marks a figure that is really two, typed into one another. */
export const TOUCHING = 'touching';

/** Whether nothing stands between two tokens. */
export const touches = (left: IToken, right: IToken | undefined): boolean =>
  right !== undefined && right.startOffset === endOf(left);

/** The text inside quotes; `""` stands for one quote mark, and a missing closing quote is forgiven here. */
export function unquote(image: string): string {
  if (image.startsWith('"')) {
    const inner = isOpen(image) ? image.slice(1) : image.slice(1, -1);
    return inner.replaceAll('""', '"');
  }
  return image.replace(/^[“„«]/, '').replace(/[“”»]$/, '');
}

const OPENING_MARKS: Readonly<Record<string, string>> = { '“': '”', '„': '“', '«': '»' };

/** The quote mark that is missing at the end of a quoted text, or null when the text is closed. */
export function missingQuote(image: string): string | null {
  if (image.startsWith('"')) return isOpen(image) ? '"' : null;
  return image.length > 1 && /[“”»]$/.test(image) ? null : (OPENING_MARKS[image[0] as string] ?? null);
}

/** Inside straight quotes a quote mark is written twice, so the text is open when they come out even. */
const isOpen = (image: string): boolean => /^"(?:[^"]|"")*$/.test(image);
