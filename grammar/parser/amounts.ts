/** The parts that many lines share: figures, eyes, names, and where and with what a measurement was taken. */
import { EmbeddedActionsParser, type IRecognitionException, type IToken, type TokenType } from 'chevrotain';
import { type ApartSign, type FigureUse, readAxis, readFigure, zeroAt } from '../figures';
import * as T from '../tokens';
import type { Eye, EyeWord, Figure, Name, Problem, Qualifiers, Span, Word } from '../tree';
import { wordOf as canonicalWord, wordsOf } from '../vocabulary';
import { OneTokenLookahead } from './one-token-lookahead';

export const spanOf = (token: IToken): Span => ({ start: token.startOffset, end: T.endOf(token) });
export const wordOf = (token: IToken): Word => ({
  start: token.startOffset,
  end: T.endOf(token),
  word: (token.payload as string | undefined) ?? token.image.toLowerCase(),
});
export const nameOf = (token: IToken): Name => ({
  start: token.startOffset,
  end: T.endOf(token),
  text: (token.payload as string | undefined) ?? T.unquote(token.image),
});
export const eyeOf = (token: IToken): EyeWord => ({
  start: token.startOffset,
  end: T.endOf(token),
  eye: token.payload as Eye | 'both',
});

/** Lengths of a pair are distance and near above this and right and left up to it: half of a wide PD, in millimetres. */
export const LONGEST_MONOCULAR = 40.5;

/** What stands for a place that nobody knows. */
const UNKNOWN_PLACE = '?';
const PLACE_TYPES: readonly TokenType[] = [T.Word, T.Near, T.DistanceWord];

/** One way on in a rule. Those of the rules that run most are made once and not on every line. */
export interface Alternative {
  readonly ALT: () => unknown;
}

export class AmountParser extends EmbeddedActionsParser {
  problems: Problem[] = [];

  /** The word that opens the line, by its canonical spelling. */
  head = '';

  /** Where the rule of the line stopped before the end of the line. */
  stopped: IRecognitionException | null = null;

  /** What a failing rule had gathered so far; a half-typed line keeps what it already says. */
  kept: unknown = null;

  /** Where and with what, when the line says so. */
  ending: Qualifiers | null = null;

  #use: FigureUse = 'plain';
  #at: Word | null = null;
  #with: Name | null = null;
  #corrected: Span | null = null;

  /** @param checked whether the rules are checked for ambiguities: a third of a cold start, so only a test asks for it */
  constructor(checked = false) {
    super(T.TOKENS as TokenType[], {
      maxLookahead: 1,
      recoveryEnabled: false,
      skipValidations: !checked,
      ...(checked ? {} : { lookaheadStrategy: new OneTokenLookahead() }),
    });
  }

  readonly tell = (problem: Problem): void => {
    this.problems.push(problem);
  };

  /** Tells one problem in place of the smaller ones inside its span: a misread value raises one finding. */
  tellInstead(problem: Problem): void {
    const outside = this.problems.filter(({ start, end }) => start < problem.start || end > problem.end);
    outside.push(problem);
    this.problems = outside;
  }

  /** Remembers a list before anything is put into it. */
  protected keep(list: unknown): void {
    this.ACTION(() => {
      this.kept = list;
    });
  }

  /** Tells that a word still waits for its value. */
  protected tellMissing(word: IToken): void {
    this.tell({ code: 'value-missing', ...spanOf(word), data: { word: word.image } });
  }

  /** Tells that a word waits for its value unless the next token can be one. */
  protected expect(word: IToken, ...types: readonly TokenType[]): void {
    this.ACTION(() => {
      if (!types.includes(this.LA(1).tokenType)) this.tellMissing(word);
    });
  }

  /** Keeps the first of two values for one place; the second has none. */
  protected once<V extends Span | null>(first: V, second: V): V {
    if (!first || !second) return first ?? second;
    this.refuse(second);
    return first;
  }

  /** Tells that something has no place where it stands, and is not taken. */
  protected refuse({ start, end }: Span): void {
    this.tellInstead({ code: 'unexpected-text', start, end });
  }

  /** A word out of the few that a line or a clause accepts, by its canonical spelling; null when it is none of them. */
  protected choose(role: 'choice' | 'key', of: string, token: IToken): Word | null {
    const word = canonicalWord(role, of, token.image);
    if (word !== null) return { start: token.startOffset, end: T.endOf(token), word };
    this.tellInstead({
      code: 'unknown-choice',
      ...spanOf(token),
      data: { word: token.image, known: wordsOf(role, of) },
    });
    return null;
  }

  /** The sign that was just consumed, with the word in front of it. */
  protected apart(sign: IToken): ApartSign {
    const before = this.LA(-1);
    if (Number.isNaN(before.startOffset)) return { sign, after: this.head };
    return { sign, after: (before.payload as string | undefined) ?? null };
  }

  /** A figure with its sign where it may have one, or plano. */
  readonly amount = this.RULE('amount', (use: FigureUse): Figure => {
    this.#use = use;
    const figure = this.OR(this.#amounts) as Figure;
    this.MANY(this.#unit);
    return figure;
  });

  readonly #amounts: Alternative[] = [
    { ALT: () => this.#figure(this.CONSUME(T.Figure), null) },
    {
      ALT: () => {
        const sign = this.CONSUME(T.SignApart);
        const apart = this.ACTION(() => this.apart(sign));
        return this.#figure(this.CONSUME2(T.Figure), apart);
      },
    },
    { ALT: () => zeroAt(this.CONSUME(T.Plano)) },
    { ALT: () => zeroAt(this.CONSUME(T.Infinite)) },
  ];

  /** A figure that cannot be plano: a length, an index, a percentage. */
  readonly figure = this.RULE('figure', (use: FigureUse): Figure => {
    this.#use = use;
    const figure = this.OR(this.#figures) as Figure;
    this.MANY(this.#unit);
    return figure;
  });

  readonly #figures: Alternative[] = this.#amounts.slice(0, 2);

  readonly #units: Alternative[] = [{ ALT: () => this.CONSUME(T.Unit) }, { ALT: () => this.CONSUME(T.Degree) }];

  readonly #unit = () => this.OR2(this.#units);

  #figure(token: IToken, apart: ApartSign | null): Figure {
    return this.ACTION(() => readFigure(token, this.#use, this.tell, apart));
  }

  /** `63,60` where two lengths may stand: a pair, or one length with decimals? */
  protected isPair({ image }: IToken): boolean {
    const [, first, second] = /^(\d+),(\d\d)$/.exec(image) ?? [];
    return second !== undefined && Number(first) > LONGEST_MONOCULAR === Number(second) > LONGEST_MONOCULAR;
  }

  /** Takes nothing of two lengths of which no one can tell what they mean. */
  protected refusePair(first: IToken, last = first): Figure {
    const span = { start: first.startOffset, end: T.endOf(last) };
    this.tellInstead({ code: 'pair-unclear', ...span });
    return { value: null, sign: '', decimals: 0, ...span };
  }

  /** An axis or a meridian in degrees. Letters that touch it make it unreadable, never a guess. */
  readonly degrees = this.RULE('degrees', (): Figure => {
    const first = this.OR(this.#degreeStarts) as IToken;
    this.#last = first;
    this.MANY(this.#degreesRunOn);
    return this.ACTION(() => this.readDegrees(first, this.#last as IToken));
  });

  /** The last token of the degrees so far. */
  #last: IToken | null = null;

  readonly #degreesRunOn = {
    GATE: () => this.runsOn(this.#last as IToken),
    DEF: () => {
      this.#last = this.OR2(this.#degreeRests) as IToken;
    },
  };

  readonly #degreeStarts: Alternative[] = [
    { ALT: () => this.CONSUME(T.Figure) },
    { ALT: () => this.CONSUME(T.Word) },
    { ALT: () => this.CONSUME(T.Other) },
  ];

  readonly #degreeRests: Alternative[] = [
    { ALT: () => this.CONSUME2(T.Figure) },
    { ALT: () => this.CONSUME2(T.Word) },
    { ALT: () => this.CONSUME2(T.Other) },
    { ALT: () => this.CONSUME(T.Degree) },
    { ALT: () => this.CONSUME(T.Unit) },
  ];

  /** Whether the next token belongs to what was just read: it touches, and it does not begin a figure of its own. */
  protected runsOn(last: IToken): boolean {
    const next = this.LA(1);
    if (next.tokenType === T.Degree || (next.tokenType === T.Unit && next.payload === 'deg')) return true;
    return T.touches(last, next) && (next.tokenType !== T.Figure || /^[\d.,]/.test(next.image));
  }

  protected readDegrees(first: IToken, last: IToken): Figure {
    const plain = last === first || last.tokenType === T.Degree || last.tokenType === T.Unit;
    if (plain && first.tokenType === T.Figure) return readAxis(first, this.tell);
    const span = { start: first.startOffset, end: T.endOf(last) };
    this.tell({ code: 'axis-unreadable', ...span });
    return { value: null, sign: '', decimals: 0, ...span };
  }

  readonly eye = this.RULE('eye', (): EyeWord => eyeOf(this.CONSUME(T.EyeToken)));

  readonly optionalName = this.RULE('optionalName', (): Name | null => {
    const token = this.OPTION(() => this.CONSUME(T.NameToken));
    return token ? this.ACTION(() => nameOf(token)) : null;
  });

  /** `at prism-point`, `with FOC-B`, `corrected`, at the end of a line of a reading. */
  readonly qualifiers = this.RULE('qualifiers', (): void => {
    this.#at = this.#with = this.#corrected = null;
    this.AT_LEAST_ONE(this.#qualifier);
    this.ending = { at: this.#at, with: this.#with, corrected: this.#corrected };
  });

  readonly #qualifier = () => this.OR(this.#qualifierParts);

  readonly #places: Alternative[] = [
    { ALT: () => this.CONSUME(T.Word) },
    { ALT: () => this.CONSUME(T.Near) },
    { ALT: () => this.CONSUME(T.DistanceWord) },
  ];

  /** A place that is not known, or that was left out behind `at`, is one all the same: what was taken there is no value. */
  #place(token: IToken): Word {
    const known = token.tokenType === T.AtWord ? null : this.choose('choice', 'at', token);
    return known ?? { start: token.startOffset, end: T.endOf(token), word: UNKNOWN_PLACE };
  }

  readonly #qualifierParts: Alternative[] = [
    {
      ALT: () => {
        const word = this.CONSUME(T.AtWord);
        this.expect(word, ...PLACE_TYPES);
        const token = this.OPTION(() => this.OR2(this.#places) as IToken);
        this.ACTION(() => {
          this.#at = this.once(this.#at, this.#place(token ?? word));
        });
      },
    },
    {
      ALT: () => {
        const word = this.CONSUME(T.With);
        this.expect(word, T.NameToken);
        this.OPTION2(() => {
          const token = this.CONSUME(T.NameToken);
          this.ACTION(() => {
            this.#with = this.once(this.#with, nameOf(token));
          });
        });
      },
    },
    {
      ALT: () => {
        this.#corrected = spanOf(this.CONSUME(T.Corrected));
      },
    },
  ];

  /** The end of most lines of a reading; lines of an order have none, and pay next to nothing for it. */
  protected readonly ended = () => this.SUBRULE9(this.qualifiers);
}
