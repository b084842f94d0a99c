/** Prisms and decentrations: amounts with a base in words or as an angle. */
import type { IToken } from 'chevrotain';
import { readFigure } from '../figures';
import * as T from '../tokens';
import type { Base, Figure, PrismComponent } from '../tree';
import { AmountParser, spanOf } from './amounts';

const BASES: Readonly<Record<string, Base>> = { BI: 'in', BO: 'out', BU: 'up', BD: 'down' };

export class PrismParser extends AmountParser {
  /** One or more prisms of one lens: `2.00 BI 0.50 BU`, `2.06 base 014`, `BI 2, BU 1`, `0`. */
  readonly prisms = this.RULE('prisms', (): PrismComponent[] => {
    const draft = new PrismDraft();
    this.AT_LEAST_ONE(() =>
      this.OR([
        {
          ALT: () => {
            const read = this.SUBRULE(this.prismAmountFirst);
            this.ACTION(() => draft.take(this.#component(read, draft.sign), read));
          },
        },
        {
          ALT: () => {
            const read = this.SUBRULE(this.prismBaseFirst);
            this.ACTION(() => draft.take(this.#component(read, draft.sign), read));
          },
        },
        {
          ALT: () => {
            const sign = this.CONSUME(T.SignApart);
            this.ACTION(() => {
              // A plus between two prisms only joins them.
              if (draft.started && /^[+\uFF0B]/.test(sign.image)) this.tell({ code: 'loose-form', ...spanOf(sign) });
              else draft.sign = sign;
            });
          },
        },
        { ALT: () => this.CONSUME(T.Slash) },
        {
          ALT: () => {
            const comma = this.CONSUME(T.Comma);
            this.ACTION(() => this.tell({ code: 'loose-form', ...spanOf(comma) }));
          },
        },
      ]),
    );
    return this.ACTION(() => draft.list());
  });

  readonly prismAmountFirst = this.RULE('prismAmountFirst', (): PrismTokens => {
    const read: PrismTokens = { amount: this.CONSUME(T.Figure), divisor: null, base: null, angle: null, word: null };
    this.OPTION(() => {
      this.CONSUME(T.Slash);
      this.OPTION2(() => {
        read.divisor = this.CONSUME2(T.Figure);
      });
    });
    this.MANY(() => this.OR([{ ALT: () => this.CONSUME(T.PrismMark) }, { ALT: () => this.CONSUME(T.Unit) }]));
    this.OPTION3(() =>
      this.OR2([
        {
          ALT: () => {
            read.base = this.CONSUME(T.BaseWord);
          },
        },
        {
          ALT: () => {
            read.word = this.OR3([{ ALT: () => this.CONSUME(T.BaseAngle) }, { ALT: () => this.CONSUME(T.At) }]);
            this.expect(read.word, T.Figure, T.BaseWord);
            this.OPTION4(() =>
              this.OR4([
                {
                  ALT: () => {
                    read.angle = this.CONSUME3(T.Figure);
                    this.OPTION5(() => this.CONSUME(T.Degree));
                  },
                },
                {
                  ALT: () => {
                    read.base = this.CONSUME2(T.BaseWord);
                  },
                },
              ]),
            );
          },
        },
        {
          ALT: () => {
            const word = this.CONSUME(T.Word);
            read.word = word;
            this.ACTION(() => this.refuse(spanOf(word)));
          },
        },
      ]),
    );
    return read;
  });

  readonly prismBaseFirst = this.RULE('prismBaseFirst', (): PrismTokens => {
    const base = this.CONSUME(T.BaseWord);
    const read: PrismTokens = { amount: null, divisor: null, base, angle: null, word: null };
    this.expect(base, T.Figure);
    this.OPTION(() => {
      read.amount = this.CONSUME(T.Figure);
      this.MANY(() => this.OR([{ ALT: () => this.CONSUME(T.PrismMark) }, { ALT: () => this.CONSUME(T.Unit) }]));
    });
    return read;
  });

  #component({ amount, divisor, base, angle }: PrismTokens, sign: IToken | null): PrismComponent | null {
    if (!amount) return null;
    let figure = readFigure(amount, 'prism', this.tell);
    if (divisor) figure = this.#fraction(figure, readFigure(divisor, 'prism', this.tell));
    const degrees = angle && this.#angle(readFigure(angle, 'plain', this.tell), angle);
    const start = Math.min(figure.start, base?.startOffset ?? figure.start, sign?.startOffset ?? figure.start);
    const end = Math.max(figure.end, base ? T.endOf(base) : 0, degrees?.end ?? 0);
    const relative = sign !== null || figure.sign !== '';
    return {
      amount: figure,
      base: base ? (BASES[base.payload as string] ?? null) : null,
      degrees,
      relative,
      start,
      end,
    };
  }

  #fraction(above: Figure, below: Figure): Figure {
    const value = above.value !== null && below.value ? above.value / below.value : null;
    this.tell({ code: 'fraction', start: above.start, end: below.end, data: { value } });
    return { ...above, value, end: below.end, decimals: 2 };
  }

  #angle(figure: Figure, { image }: IToken): Figure {
    if (figure.value === null || (figure.value >= 0 && figure.value <= 360)) return figure;
    this.tell({ code: 'base-range', start: figure.start, end: figure.end, data: { digits: image } });
    return { ...figure, value: null };
  }
}

interface PrismTokens {
  amount: IToken | null;
  divisor: IToken | null;
  base: IToken | null;
  angle: IToken | null;
  /** `base`, `@`, or a word in the place of the base: whatever is wrong with the base was told of it. */
  word: IToken | null;
}

/** Gathers the prisms of one lens. */
class PrismDraft {
  sign: IToken | null = null;
  readonly #components: PrismComponent[] = [];
  readonly #read = new Map<PrismComponent, PrismTokens>();

  get started(): boolean {
    return this.#components.length > 0;
  }

  take(component: PrismComponent | null, read: PrismTokens): void {
    this.sign = null;
    if (!component) return;
    this.#components.push(component);
    this.#read.set(component, read);
  }

  /** The prisms, with `1 1/2 BI` taken as one and a half. */
  list(): PrismComponent[] {
    const list: PrismComponent[] = [];
    for (const component of this.#components) {
      const before = list.at(-1);
      const whole = before && this.#isBare(before) && Number.isInteger(before.amount.value) ? before : undefined;
      if (!whole || !this.#read.get(component)?.divisor || component.amount.value === null) list.push(component);
      else list[list.length - 1] = this.#joined(whole, component);
    }
    return list;
  }

  #isBare(component: PrismComponent): boolean {
    return component.base === null && component.degrees === null && !this.#read.get(component)?.word;
  }

  #joined(whole: PrismComponent, fraction: PrismComponent): PrismComponent {
    const value = (whole.amount.value as number) + (fraction.amount.value as number);
    const amount = { ...fraction.amount, value, start: whole.start };
    const joined = { ...fraction, amount, start: whole.start };
    const read = this.#read.get(fraction);
    if (read) this.#read.set(joined, read);
    return joined;
  }
}
