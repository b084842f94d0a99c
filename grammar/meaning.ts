/** From shapes to meanings: words are looked up, names are joined, and signs from other keyboards are told. */
import type { IToken, TokenType } from 'chevrotain';
import * as T from './tokens';
import type { Problem } from './tree';

/** How names are joined on a line: after the clause words, from the first word on, or wherever a word stands. */
export type Names = 'clauses' | 'first' | 'words';

type Tell = (problem: Problem) => void;

/**
 * Gives the words behind the head of a line their meaning and makes one token of each name.
 * @param from index of the first token behind the head
 * @returns the tokens that the parser reads
 */
export function giveMeaning(tokens: readonly IToken[], from: number, names: Names, tell: Tell): IToken[] {
  const out: IToken[] = [];
  let nameDue = names === 'first';
  for (let at = from; at < tokens.length; at++) {
    let token = tokens[at] as IToken;
    const type = token.tokenType;
    if (type === T.Colon && isLabelled(tokens, at)) continue;
    if (nameDue || (names === 'words' && startsName(token))) {
      nameDue = false;
      let last = at;
      if (type !== T.Text)
        while (T.touches(tokens[last] as IToken, tokens[last + 1]) && tokens[last + 1]?.tokenType !== T.Text) last++;
      out.push(joinName(tokens, at, last, tell));
      at = last;
      continue;
    }
    if (type === T.Word) {
      token = giveWord(token, out, tokens[at + 1]);
      nameDue = token.tokenType === T.With || token.tokenType === T.By || token.tokenType === T.From;
    } else if (type === T.Figure) {
      while (runsOn(token, tokens[at + 1])) token = joinFigures(token, tokens[++at] as IToken);
    } else if (type === T.Dash || type === T.Plus) {
      if (isUnsigned(tokens[at + 1])) retype(token, T.SignApart, '');
    } else giveSign(token, tell);
    out.push(token);
  }
  return out;
}

/** A colon or an equals sign behind a word: `R: -4.50`, `R = -4.50`, `index=1.60`. */
const isLabelled = (tokens: readonly IToken[], at: number): boolean => /\p{L}$/u.test(tokens[at - 1]?.image ?? '');

const startsName = (token: IToken): boolean =>
  token.tokenType === T.Text || (token.tokenType === T.Word && !T.meaningInside(token.image));

/**
 * Gives one word its meaning. The letters of `DCx22` come apart, since the cross may touch what stands before it. In
 * `x l80` the letter is a digit that was mistyped and no eye.
 */
function giveWord(token: IToken, out: IToken[], next: IToken | undefined): IToken {
  const meaning = T.meaningInside(token.image);
  if (!meaning) return splitCross(token, out) ?? token;
  if (meaning.type === T.EyeToken && out.at(-1)?.tokenType === T.Cross && runsOn(token, next)) return token;
  retype(token, meaning.type, meaning.word);
  return token;
}

function splitCross(token: IToken, out: IToken[]): IToken | null {
  const cross = token.image.at(-1) as string;
  const rest = token.image.slice(0, -1);
  const meaning = T.meaningInside(rest);
  if (T.meaningInside(cross)?.type !== T.Cross || (meaning?.type !== T.Unit && meaning?.type !== T.NoCylinder))
    return null;
  const before = { ...token, image: rest };
  retype(before, meaning.type, meaning.word);
  out.push(before);
  token.image = cross;
  token.startOffset += rest.length;
  retype(token, T.Cross, 'x');
  return token;
}

function giveSign(token: IToken, tell: Tell): void {
  if (token.tokenType === T.CrossSign) retype(token, T.Cross, 'x');
  else if (token.tokenType === T.PrismMark)
    tell({ code: 'prism-mark', start: token.startOffset, end: token.startOffset + 1 });
}

const isUnsigned = (token: IToken | undefined): boolean =>
  token?.tokenType === T.Figure && /^[\d.,\uFF10-\uFF19]/.test(token.image);

/** Figures may touch only when the second has a sign; `-4.5.0` is no two figures, and no one can say what it is. */
const runsOn = (token: IToken, next: IToken | undefined): boolean => T.touches(token, next) && isUnsigned(next);

function joinFigures(token: IToken, next: IToken): IToken {
  token.image += next.image;
  token.payload = T.TOUCHING;
  return token;
}

function retype(token: IToken, type: TokenType, word: string): void {
  token.tokenType = type;
  token.tokenTypeIdx = type.tokenTypeIdx as number;
  token.payload = word;
}

/** A name runs on to the next blank or quote. A `#` in it would begin a comment anywhere else, so it ends the name too. */
function joinName(tokens: readonly IToken[], first: number, last: number, tell: Tell): IToken {
  const token = tokens[first] as IToken;
  const quoted = token.tokenType === T.Text;
  let image = token.image;
  for (let at = first + 1; at <= last; at++) image += (tokens[at] as IToken).image;
  const end = token.startOffset + image.length;
  const mark = quoted ? -1 : image.indexOf('#');
  if (mark >= 0) {
    tell({ code: 'unexpected-text', start: token.startOffset + mark, end });
    image = image.slice(0, mark);
  }
  token.image = image;
  retype(token, T.NameToken, quoted ? T.unquote(image) : image);
  return token;
}
