/**
 * Lens types as the trade writes them on a slip: `FT28`, `D 28`, `ST-28`, `R22`, `7x28`, `PAL`. Letters and figure may
 * touch, stand apart or be joined by a hyphen, and the form may be a line by itself.
 */
import type { IToken } from 'chevrotain';
import * as T from './tokens';

/** Letters that stand for the shape of a segment in front of a figure, and nowhere else. */
const LETTERS: ReadonlyMap<string, string> = new Map([
  ['d', 'flat-top'],
  ['ft', 'flat-top'],
  ['st', 'flat-top'],
  ['ct', 'curve-top'],
  ['rd', 'round'],
]);

/** Whole numbers are figures of a design; `28.5` and `-28` behind a blank are not what is meant here. */
const isPlain = (token: IToken | undefined): boolean => token?.tokenType === T.Figure && /^\d/.test(token.image);

/** `-28` right behind letters: the hyphen joins the two. */
const isJoined = (letters: IToken, figure: IToken | undefined): boolean =>
  T.touches(letters, figure) && figure?.tokenType === T.Figure && /^-\d/.test(figure.image);

/** The tokens of a design with the letters of the trade read as the shapes they stand for. */
export function withShapes(tokens: readonly IToken[], from: number): readonly IToken[] {
  let out: IToken[] | null = null;
  for (let at = from; at < tokens.length - 1; at++) {
    const [token, next] = [tokens[at] as IToken, tokens[at + 1] as IToken];
    if (token.tokenType !== T.Word) continue;
    const isRound = /^r$/i.test(token.image) && T.touches(token, next);
    const shape = LETTERS.get(token.image.toLowerCase()) ?? (isRound ? 'round' : shapeOf(token));
    if (shape === undefined || !(isPlain(next) || isJoined(token, next))) continue;
    out ??= [...tokens];
    out[at] = retyped(token, shape);
    if (isJoined(token, next)) out[at + 1] = unsigned(next);
  }
  return out ?? tokens;
}

function shapeOf({ image }: IToken): string | undefined {
  const meaning = T.meaningInside(image);
  return meaning?.type === T.ShapeWord ? meaning.word : undefined;
}

const retyped = (token: IToken, word: string): IToken => ({
  ...token,
  tokenType: T.ShapeWord,
  tokenTypeIdx: T.ShapeWord.tokenTypeIdx as number,
  payload: word,
});

const unsigned = (token: IToken): IToken => ({
  ...token,
  image: token.image.slice(1),
  startOffset: token.startOffset + 1,
});

/** Usual diameters of round segments that can be no power: 0.22 and 2.2 lie on no step, while 25 may be 0.25 or 2.50. */
const ROUND = /^r(?:22|24|28)$/i;
const ROUND_OR_RIGHT = /^r-(?:22|24|28)$/i;
/** Depth and width of a trifocal: `7x28`, `8 x 35`. */
const DEPTH_BY_WIDTH = /^(?:[6-9]|1[0-4])\s*[x×]\s*(?:2[2-9]|3\d|40)$/i;

/**
 * What a line without a line word is: a design written as the trade writes it, `either` a round segment or a power of the
 * right lens, or null for anything else.
 * @param content the line without its comment and its blanks at either end
 */
export function tradeForm(content: string, first: IToken, second: IToken | undefined): 'design' | 'either' | null {
  if (first.tokenType === T.Figure) return DEPTH_BY_WIDTH.test(content) ? 'design' : null;
  if (first.tokenType !== T.Word) return null;
  const letter = first.image.charCodeAt(0) | 32;
  if (letter === R && first.image.length === 1) {
    if (ROUND.test(content)) return 'design';
    return ROUND_OR_RIGHT.test(content) ? 'either' : null;
  }
  const type = T.meaningInside(first.image)?.type;
  if (type === T.DesignWord || type === T.ShapeWord) return 'design';
  return LETTERS.has(first.image.toLowerCase()) && (isPlain(second) || isJoined(first, second)) ? 'design' : null;
}

const R = 114;
