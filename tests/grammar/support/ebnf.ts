/**
 * The grammar in the EBNF of the W3C, made from what reads the notation: the rules of the parser, the readers that pick a
 * rule by the first word, and the vocabulary. Only the lines of a file and of its blocks, which no rule reads, are written
 * here.
 */
import { type ISerializedGast, Lexer } from 'chevrotain';
import { LineParser, type Reader, readerAgain, readerOf, type Site } from '../../../grammar/parser/readers';
import { meaningInside, TOKENS, tokenize } from '../../../grammar/tokens';
import { type BlockKind, VOCABULARY, type VocabularyEntry } from '../../../grammar/vocabulary';

/** Parts of a production are wrapped before this column. */
const WIDEST = 100;

const BLOCKS: readonly Production[] = [
  ['file', '( standard | instrumentBlock | defaultsBlock | toleranceBlock | orderBlock )*'],
  ['orderBlock', 'order ( orderLine | readingBlock )*'],
  ['readingBlock', 'reading readingLine* end?'],
  ['instrumentBlock', 'instrument instrumentLine*'],
  ['defaultsBlock', 'defaults defaultsLine*'],
  ['toleranceBlock', 'tolerance toleranceLine*'],
];

/** The whole grammar, part by part. */
export function ebnf(): string {
  const parser = new LineParser(true);
  const rules = parser.getSerializedGastProductions() as readonly Node[];
  const upper = [
    part('Blocks. Each of their lines ends with a line end.', BLOCKS),
    part('The lines of each block.', linesOfBlocks()),
    part('Each line by its first word.', lineProductions(parser, new Set(rules.map(({ name = '' }) => name)))),
    part('The rules, named as in grammar/parser.', rules.filter(({ name }) => name !== 'choice').map(rule)),
    part('Words, without regard to case.', words()),
  ].join('\n\n');
  const used = shapes().filter(([name]) => new RegExp(`\\b${name}\\b`).test(upper));
  return `${upper}\n\n${part('Shapes, as regular expressions. Blanks between them count for nothing.', used)}`;
}

type Production = readonly [name: string, body: string];

const part = (title: string, productions: readonly Production[]): string =>
  `/* ${title} */\n\n${productions.map(inLines).join('\n')}`;

/** A line never ends behind a bracket or a stroke that opens something, nor begins with one that closes it. */
function inLines([name, body]: Production): string {
  const lines = [`${name} ::=`];
  for (const piece of body
    .replace(/([(|]) /g, '$1\0')
    .replace(/ ([)])/g, '\0$1')
    .split(' ')) {
    const last = lines.at(-1) as string;
    if (last.length + 1 + piece.length > WIDEST && last.includes(' ')) lines.push(`   ${piece}`);
    else lines[lines.length - 1] = `${last} ${piece}`;
  }
  return lines.join('\n').replaceAll('\0', ' ');
}

// The lines

const HEADS = VOCABULARY.filter(({ role }) => role === 'line' || role === 'block');
const isLimit = ({ blocks, word }: VocabularyEntry): boolean => blocks.includes('tolerance') && word !== 'note';

/** A line word that some block other than a tolerance has. */
const isLine = (entry: VocabularyEntry): boolean => !isLimit(entry) || entry.blocks.length > 1;

function linesOfBlocks(): Production[] {
  const kinds: readonly BlockKind[] = ['order', 'defaults', 'reading', 'instrument', 'tolerance'];
  return kinds.map((kind) => {
    const heads = HEADS.filter(({ role, blocks, word }) => role === 'line' && blocks.includes(kind) && word !== 'end');
    const names =
      kind === 'tolerance'
        ? ['limit', ...heads.filter((one) => !isLimit(one)).map(({ word }) => word)]
        : heads.map(({ word }) => word);
    const hasEyes = VOCABULARY.some(({ role, blocks }) => role === 'eye' && blocks.includes(kind));
    return [`${kind}Line`, [...(hasEyes ? ['powerLine'] : []), ...names].join(' | ')] as const;
  });
}

function lineProductions(parser: LineParser, rules: ReadonlySet<string>): Production[] {
  const bodyOf = (word: string, limit: boolean): string => bodyOfLine(parser, rules, word, limit);
  const repeated = HEADS.filter(({ word }) => readerAgain(word)).map(({ word }) => word);
  const lines = HEADS.filter(isLine).map((entry) => {
    const body = entry.word === 'again' ? oneOf(['powerLine', ...repeated]) : bodyOf(entry.word, false);
    return [entry.word, `${headOf(entry)} ${body}`.trim()] as const;
  });
  const limits = HEADS.filter(isLimit);
  const limitHeads = oneOf(limits.flatMap(({ word, also }) => [word, ...also]).map(literal));
  return [...lines, ['limit', `${limitHeads} ${bodyOf(limits[0]?.word ?? '', true)}`]];
}

const headOf = ({ word, also }: VocabularyEntry): string => oneOf([word, ...also].map(literal));
const oneOf = (parts: readonly string[]): string =>
  parts.length === 1 ? (parts[0] as string) : `( ${parts.join(' | ')} )`;
/** Letters that look like others stand as their numbers. */
const literal = (word: string): string =>
  /^[ -~]+$/.test(word) ? `'${word}'` : `#x${word.charCodeAt(0).toString(16).toUpperCase()}`;
/** Every spelling of the choices or the keys of a line or a clause. */
const spellingsOf = (role: 'choice' | 'key', line: string): readonly string[] =>
  VOCABULARY.filter((one) => one.role === role && one.of.includes(line)).flatMap(({ word, also }) => [word, ...also]);

/** What a reader does with a line is seen by watching which rule it asks for. */
function bodyOfLine(parser: LineParser, rules: ReadonlySet<string>, word: string, limit: boolean): string {
  const reader = readerOf(word, limit) as Reader;
  parser.stopped = null;
  const asked: string[] = [];
  const watched = new Proxy(parser, {
    get: (target, name) => {
      const value = Reflect.get(target, name, target);
      if (typeof value !== 'function') return value;
      if (typeof name === 'string' && rules.has(name))
        return (...args: readonly unknown[]) => {
          asked.push(call(name, name === 'result' ? word : args[0]));
          return value.apply(target, args);
        };
      return value.bind(target);
    },
    set: (target, name, value) => Reflect.set(target, name, value, target),
  });
  // A bracket has no place in any of these lines, so whatever takes the second one takes the rest of the line.
  const content = `${word} ( (`;
  const site: Site = {
    parser: watched,
    tokens: tokenize(content),
    from: 1,
    content,
    head: { word, start: 0, end: word.length },
    again: false,
  };
  const node = reader(site);
  if (node?.kind === 'text') return 'FreeText?';
  if (asked.length === 0) return '';
  return `${asked.join(' ')}${parser.stopped === null ? ' FreeText?' : ''}`;
}

function call(rule: string, line: unknown): string {
  if (typeof line !== 'string') return rule;
  const choices = spellingsOf('choice', line);
  if (rule === 'choice') return `${oneOf(choices.map(literal))}?`;
  const words = rule === 'result' ? choices : rule === 'settings' ? spellingsOf('key', line) : [];
  return words.length > 0 ? `${rule} /* ${words.join(', ')} */` : rule;
}

// The rules

type Node = ISerializedGast & { readonly name?: string; readonly definition?: readonly Node[] };

/** Words of a rule that are looked up among the choices or keys of a line or a clause. */
const LOOKED_UP: Readonly<Record<string, readonly ['choice' | 'key', string]>> = {
  qualifiers: ['choice', 'at'],
  readingHeader: ['choice', 'stage'],
  thinningLine: ['choice', 'thinning'],
  entry: ['key', 'kept'],
  decidedLine: ['choice', 'decided'],
};

const rule = ({ name = '', definition = [] }: Node): Production => [name, sequence(definition, name)];

const sequence = (parts: readonly Node[], rule: string): string =>
  parts.map((part) => inWords(part, rule, parts.length > 1)).join(' ');

function inWords(node: Node, rule: string, hasNeighbours: boolean): string {
  const { type, name = '', definition = [] } = node;
  switch (type) {
    case 'Terminal': {
      const looked = name === 'Word' ? LOOKED_UP[rule] : undefined;
      return looked ? oneOf(spellingsOf(...looked).map(literal)) : name;
    }
    case 'NonTerminal': {
      const looked = name === 'choice' ? LOOKED_UP[rule] : undefined;
      return looked ? `${oneOf(spellingsOf(...looked).map(literal))}?` : name;
    }
    case 'Alternation': {
      const ways = definition.map((way) => sequence(way.definition ?? [], rule)).join(' | ');
      return hasNeighbours ? `( ${ways} )` : ways;
    }
    case 'Option':
      return `${group(definition, rule)}?`;
    case 'Repetition':
      return `${group(definition, rule)}*`;
    case 'RepetitionMandatory':
      return `${group(definition, rule)}+`;
    default:
      throw new Error(`no words for ${type}`);
  }
}

function group(definition: readonly Node[], rule: string): string {
  const body = sequence(definition, rule);
  return /^(?:\w+|'[^']+')$/.test(body) || /^\([^()]*\)$/.test(body) ? body : `( ${body} )`;
}

// The words and the shapes

function words(): Production[] {
  const spellings = new Map<string, Set<string>>();
  for (const { word, also } of VOCABULARY) {
    for (const spelling of [word, ...also]) {
      const meaning = meaningInside(spelling);
      if (!meaning) continue;
      const { name } = meaning.type;
      spellings.set(name, (spellings.get(name) ?? new Set()).add(spelling));
    }
  }
  const kinds = TOKENS.flatMap(({ name }) => {
    const known = spellings.get(name);
    return known ? [[name, [...known].map(literal).join(' | ')] as const] : [];
  });
  return [
    ...kinds,
    ['SignApart', '( Dash | Plus ) /* with a blank behind it, before a figure */'],
    ['Name', 'Text | /[^\\s"#]+/'],
    ['FreeText', 'Text | /.+/ /* to the end of the line or to its comment */'],
  ];
}

const shapes = (): Production[] =>
  TOKENS.flatMap(({ name, PATTERN }) =>
    PATTERN instanceof RegExp && PATTERN !== Lexer.NA && name !== 'Blank' ? [[name, regex(PATTERN)] as const] : [],
  );

/** Letters that cannot be told apart on a screen stand as their numbers. */
const regex = ({ source }: RegExp): string =>
  `/${source.replace(/[^ -~]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`)}/`;
