/** The parts that many lines share: figures, eyes, names, and where and with what a measurement was taken. */
import { EmbeddedActionsParser, type IToken, type TokenType } from 'chevrotain';
import { type FigureUse, readAxis, readFigure } from '../figures';
import * as T from '../tokens';
import type { Base, Eye, EyeWord, Figure, Name, PrismComponent, Problem, Qualifiers, Span, Word } from '../tree';

const BASES: Readonly<Record<string, Base>> = { BI: 'in', BO: 'out', BU: 'up', BD: 'down' };

export const spanOf = (token: IToken): Span => ({ start: token.startOffset, end: T.endOf(token) });
export const wordOf = (token: IToken): Word => ({
  ...spanOf(token),
  word: (token.payload as string | undefined) ?? token.image.toLowerCase(),
});
export const nameOf = (token: IToken): Name => ({
  ...spanOf(token),
  text: (token.payload as string | undefined) ?? T.unquote(token.image),
});
export const eyeOf = (token: IToken): EyeWord => ({ ...spanOf(token), eye: token.payload as Eye | 'both' });

/** A minus or a dash that stands alone, as on slips where it means “no value”. */
export const isLoneDash = ({ sign, start, end, value }: Figure): boolean =>
  sign === '-' && value === null && end - start === 1;

export class AmountParser extends EmbeddedActionsParser {
  problems: Problem[] = [];

  constructor() {
    super(T.TOKENS as TokenType[], { maxLookahead: 2, recoveryEnabled: false, skipValidations: false });
  }

  readonly tell = (problem: Problem): void => {
    this.problems.push(problem);
  };

  /** Tells one problem in place of the smaller ones inside its span: a misread value raises one finding. */
  protected tellInstead(problem: Problem): void {
    this.problems = this.problems.filter(({ start, end }) => start < problem.start || end > problem.end);
    this.problems.push(problem);
  }

  /** What a failing rule had gathered so far; a half-typed line keeps what it already says. */
  kept: unknown = null;

  /** Where and with what, when the line says so. */
  ending: Qualifiers | null = null;

  /** Remembers a list before anything is put into it. */
  protected keep(list: unknown): void {
    this.ACTION(() => {
      this.kept = list;
    });
  }

  /** Tells that a word still waits for its value. */
  protected tellUnless(present: boolean, word: IToken): void {
    if (!present) this.tell({ code: 'value-missing', ...spanOf(word), data: { word: word.image } });
  }

  /** A figure with a sign of its own, a figure whose sign stands apart, or plano. */
  readonly amount = this.RULE('amount', (use: FigureUse): Figure => {
    const figure = this.OR([
      { ALT: () => this.#figure(this.CONSUME(T.Figure), use) },
      {
        ALT: () => {
          const apart = this.OR2([{ ALT: () => this.CONSUME(T.Dash) }, { ALT: () => this.CONSUME(T.Plus) }]);
          let token: IToken | null = null;
          this.OPTION2(() => {
            token = this.CONSUME2(T.Figure);
          });
          return this.ACTION(() => (token ? this.#apart(apart, token, use) : this.#loneSign(apart)));
        },
      },
      { ALT: () => this.#nothing(this.CONSUME(T.Plano)) },
      { ALT: () => this.#nothing(this.CONSUME(T.Infinite)) },
    ]);
    this.OPTION(() => this.CONSUME(T.Unit));
    return figure;
  });

  /** A bare figure: a length, an index, a prism amount. */
  readonly figure = this.RULE('figure', (use: FigureUse): Figure => {
    const token = this.CONSUME(T.Figure);
    this.MANY(() => this.OR([{ ALT: () => this.CONSUME(T.Unit) }, { ALT: () => this.CONSUME(T.Degree) }]));
    return this.ACTION(() => readFigure(token, use, this.tell));
  });

  /** An axis or a meridian in degrees. Letters that touch it make it unreadable, never a guess. */
  readonly degrees = this.RULE('degrees', (): Figure => {
    const token = this.CONSUME(T.Figure);
    let last = token;
    this.MANY({
      // A figure goes on only behind something unreadable, as in `1?0`.
      GATE: () => this.LA(1).startOffset === T.endOf(last) && (this.LA(1).tokenType !== T.Figure || last !== token),
      DEF: () => {
        last = this.OR([
          { ALT: () => this.CONSUME(T.Word) },
          { ALT: () => this.CONSUME(T.Other) },
          { ALT: () => this.CONSUME(T.Degree) },
          { ALT: () => this.CONSUME(T.Unit) },
          { ALT: () => this.CONSUME2(T.Figure) },
        ]);
      },
    });
    return this.ACTION(() => {
      if (last === token || last.tokenType === T.Degree || last.tokenType === T.Unit) return readAxis(token, this.tell);
      const span = { start: token.startOffset, end: T.endOf(last) };
      this.tell({ code: 'axis-unreadable', ...span });
      return { ...span, value: null, sign: '', decimals: 0 };
    });
  });

  readonly eye = this.RULE('eye', (): EyeWord => {
    const token = this.CONSUME(T.EyeToken);
    return this.ACTION(() => eyeOf(token));
  });

  /** `at prism-point`, `with FOC-B`, `corrected`, at the end of a line of a reading. */
  readonly qualifiers = this.RULE('qualifiers', (): void => {
    let at: Word | null = null;
    let instrument: Name | null = null;
    let corrected: Span | null = null;
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            const word = this.CONSUME(T.AtWord);
            this.ACTION(() => this.tellUnless(this.LA(1).tokenType === T.Word, word));
            this.OPTION(() => {
              const token = this.CONSUME(T.Word);
              at = this.ACTION(() => wordOf(token));
            });
          },
        },
        {
          ALT: () => {
            const word = this.CONSUME(T.With);
            this.ACTION(() => this.tellUnless(this.LA(1).tokenType === T.NameToken, word));
            this.OPTION2(() => {
              const token = this.CONSUME(T.NameToken);
              instrument = this.ACTION(() => nameOf(token));
            });
          },
        },
        {
          ALT: () => {
            const token = this.CONSUME(T.Corrected);
            corrected = this.ACTION(() => spanOf(token));
          },
        },
      ]),
    );
    this.ACTION(() => {
      if (at || instrument || corrected) this.ending = { at, with: instrument, corrected };
    });
  });

  /** One or more prisms: `2.00 BI 0.50 BU`, `2.06 base 014`, `0`. */
  readonly prisms = this.RULE('prisms', (): PrismComponent[] => {
    const list: PrismComponent[] = [];
    this.AT_LEAST_ONE(() => {
      const component = this.OR([
        { ALT: () => this.SUBRULE(this.prismAmountFirst) },
        { ALT: () => this.SUBRULE(this.prismBaseFirst) },
      ]);
      this.ACTION(() => {
        if (component) list.push(component);
      });
    });
    return list;
  });

  readonly prismAmountFirst = this.RULE('prismAmountFirst', (): PrismComponent => {
    const token = this.CONSUME(T.Figure);
    let divisor: IToken | null = null;
    let base: IToken | null = null;
    let degrees: IToken | null = null;
    this.OPTION(() => {
      this.CONSUME(T.Slash);
      divisor = this.CONSUME2(T.Figure);
    });
    this.MANY(() =>
      this.OR([{ ALT: () => this.#prismMark(this.CONSUME(T.PrismMark)) }, { ALT: () => this.CONSUME(T.Unit) }]),
    );
    this.OPTION2(() =>
      this.OR2([
        {
          ALT: () => {
            base = this.CONSUME(T.BaseWord);
          },
        },
        {
          ALT: () => {
            const word = this.OR3([{ ALT: () => this.CONSUME(T.BaseAngle) }, { ALT: () => this.CONSUME(T.At) }]);
            this.ACTION(() => this.tellUnless(this.LA(1).tokenType === T.Figure, word));
            this.OPTION3(() => {
              degrees = this.CONSUME3(T.Figure);
              this.OPTION4(() => this.CONSUME(T.Degree));
            });
          },
        },
      ]),
    );
    return this.ACTION(() => this.#component(token, divisor, base, degrees));
  });

  readonly prismBaseFirst = this.RULE('prismBaseFirst', (): PrismComponent | null => {
    const base = this.CONSUME(T.BaseWord);
    let amount: IToken | null = null;
    this.ACTION(() => this.tellUnless(this.LA(1).tokenType === T.Figure, base));
    this.OPTION(() => {
      amount = this.CONSUME(T.Figure);
      this.OPTION2(() => this.#prismMark(this.CONSUME(T.PrismMark)));
    });
    return this.ACTION(() => amount && this.#component(amount, null, base, null));
  });

  #figure(token: IToken, use: FigureUse): Figure {
    return this.ACTION(() => readFigure(token, use, this.tell));
  }

  #apart(apart: IToken, token: IToken, use: FigureUse): Figure {
    const figure = readFigure(token, use, this.tell, apart);
    this.tell({ code: 'sign-apart', start: figure.start, end: figure.end, data: { sign: figure.sign } });
    return figure;
  }

  /** A sign with no figure behind it. In a place where a lone mark says “nothing” the caller tells that instead. */
  #loneSign(token: IToken): Figure {
    this.tell({ code: 'value-missing', ...spanOf(token), data: { word: token.image } });
    return { ...spanOf(token), value: null, sign: token.tokenType === T.Plus ? '+' : '-', decimals: 0 };
  }

  #nothing(token: IToken): Figure {
    return this.ACTION(() => ({ ...spanOf(token), value: 0, sign: '', decimals: 0 }));
  }

  #prismMark(token: IToken): void {
    this.ACTION(() => this.tell({ code: 'prism-mark', ...spanOf(token) }));
  }

  #component(token: IToken, divisor: IToken | null, base: IToken | null, degrees: IToken | null): PrismComponent {
    let amount = readFigure(token, 'prism', this.tell);
    if (divisor) {
      const below = readFigure(divisor, 'prism', this.tell);
      const value = amount.value !== null && below.value ? amount.value / below.value : null;
      amount = { ...amount, value, end: below.end, decimals: 2 };
      this.tell({ code: 'fraction', start: amount.start, end: amount.end, data: { value } });
    }
    const angle = degrees ? readFigure(degrees, 'plain', this.tell) : null;
    const last = [amount.end, base ? T.endOf(base) : 0, angle ? angle.end : 0];
    return {
      amount,
      base: base ? (BASES[base.payload as string] ?? null) : null,
      degrees: angle,
      relative: amount.sign !== '',
      start: Math.min(amount.start, base ? base.startOffset : amount.start),
      end: Math.max(...last),
    };
  }
}
