/** Lines that state what is ordered or recorded: headers, dates, choices, decisions, limits. */
import type { IToken } from 'chevrotain';
import { isDay } from '../days';
import * as T from '../tokens';
import type { DateNode, EyeWord, Figure, LineKind, LineOf, Name, Word } from '../tree';
import { type Alternative, eyeOf, nameOf, spanOf, wordOf } from './amounts';
import { ResultParser } from './results';

type Part<K extends LineKind> = Omit<LineOf<K>, 'head' | 'kind'>;

export class FactParser extends ResultParser {
  readonly toleranceHeader = this.RULE('toleranceHeader', (): Part<'tolerance'> => {
    const name = this.SUBRULE(this.optionalName);
    let from: Name | null = null;
    this.OPTION(() => {
      const word = this.CONSUME(T.From);
      this.expect(word, T.NameToken);
      from = this.SUBRULE2(this.optionalName);
    });
    return { name, from };
  });

  readonly date = this.RULE('date', (): DateNode => {
    const token = this.OR(this.#dates) as IToken;
    return this.ACTION(() => this.#date(token));
  });

  readonly #dates: Alternative[] = [{ ALT: () => this.CONSUME(T.DateShape) }, { ALT: () => this.CONSUME(T.DayFirst) }];

  #date(token: IToken): DateNode {
    const span = spanOf(token);
    const typed = token.image.replace(/T$/, '');
    if (token.tokenType === T.DayFirst) {
      this.tell({ code: 'date-order', ...span, data: { typed } });
      return { ...span, iso: null };
    }
    const [year = '', month = '', day = ''] = typed.split(/[-./]/);
    const iso = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
    if (!isDay(iso)) this.tell({ code: 'date-impossible', ...span, data: { typed } });
    else if (iso !== typed) this.tell({ code: 'other-spelling', ...span, data: { written: iso } });
    return { ...span, iso: isDay(iso) ? iso : null };
  }

  #header: { -readonly [K in keyof Part<'reading'>]: Part<'reading'>[K] } = NO_READING;

  readonly readingHeader = this.RULE('readingHeader', (): Part<'reading'> => {
    this.#header = { ...NO_READING };
    this.MANY(this.#headerPart);
    return this.#header;
  });

  readonly #headerPart = () => this.OR(this.#headerParts);

  readonly #headerParts: Alternative[] = [
    {
      ALT: () => {
        const date = this.SUBRULE(this.date);
        this.ACTION(() => {
          this.#header.date = this.once(this.#header.date, date);
        });
      },
    },
    {
      ALT: () => {
        const token = this.CONSUME(T.Time);
        this.ACTION(() => {
          this.#header.time = this.once(this.#header.time, this.#time(token));
        });
      },
    },
    {
      ALT: () => {
        const name = this.#namedBy(this.CONSUME(T.By), this.SUBRULE(this.optionalName));
        this.#header.by = this.once(this.#header.by, name);
      },
    },
    {
      ALT: () => {
        const name = this.#namedBy(this.CONSUME(T.With), this.SUBRULE2(this.optionalName));
        this.#header.with = this.once(this.#header.with, name);
      },
    },
    {
      ALT: () => {
        const word = this.CONSUME(T.Stage);
        this.expect(word, T.Word);
        this.OPTION(() => {
          const token = this.CONSUME(T.Word);
          this.ACTION(() => {
            this.#header.stage = this.once(this.#header.stage, this.choose('choice', 'stage', token));
          });
        });
      },
    },
  ];

  #namedBy(word: IToken, name: Name | null): Name | null {
    if (this.RECORDING_PHASE) return null;
    if (!name) this.tellMissing(word);
    return name;
  }

  #time(token: IToken): Name | null {
    const span = spanOf(token);
    const [hour, minute, second = 0] = token.image.split(':').map(Number);
    if ((hour as number) < 24 && (minute as number) < 60 && second < 60) return { ...span, text: token.image };
    this.tell({ code: 'time-impossible', ...span, data: { typed: token.image } });
    return null;
  }

  readonly datedLine = this.RULE('datedLine', (): { date: DateNode | null; due: DateNode | null } => {
    let date: DateNode | null = null;
    let due: DateNode | null = null;
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            const node = this.SUBRULE(this.date);
            this.ACTION(() => {
              date = this.once(date, node);
            });
          },
        },
        {
          ALT: () => {
            const word = this.CONSUME(T.Due);
            this.expect(word, T.DateShape, T.DayFirst);
            this.OPTION(() => {
              const node = this.SUBRULE2(this.date);
              this.ACTION(() => {
                due = this.once(due, node);
              });
            });
          },
        },
      ]),
    );
    return { date, due };
  });

  readonly testLensLine = this.RULE('testLensLine', (): Part<'test-lens'> => {
    let nominal: Figure | null = null;
    let read: Figure | null = null;
    this.OPTION(() => {
      nominal = this.SUBRULE(this.amount, { ARGS: ['power'] });
    });
    this.OPTION2(() => {
      const word = this.CONSUME(T.Read);
      this.expect(word, T.Figure, T.SignApart, T.Plano, T.Infinite);
      this.OPTION3(() => {
        read = this.SUBRULE2(this.amount, { ARGS: ['power'] });
      });
    });
    return { nominal, read };
  });

  readonly oneFigure = this.RULE('oneFigure', (): Figure | null => {
    const figure = this.OPTION(() => this.SUBRULE(this.amount, { ARGS: ['difference'] }));
    this.OPTION2(this.ended);
    return figure ?? null;
  });

  /** `0.12`, `to 0.25 10`, `above 1.50 2`. */
  readonly limitLine = this.RULE('limitLine', (): Pick<LineOf<'limit'>, 'band' | 'bound' | 'limit'> => {
    let band: Word | null = null;
    let bound: Figure | null = null;
    let limit: Figure | null = null;
    this.OPTION(() => {
      const token = this.CONSUME(T.BandWord);
      this.expect(token, T.Figure, T.SignApart);
      band = this.ACTION(() => wordOf(token));
      this.OPTION2(() => {
        bound = this.SUBRULE(this.figure, { ARGS: ['length'] });
      });
    });
    this.OPTION3(() => {
      limit = this.SUBRULE2(this.figure, { ARGS: ['length'] });
    });
    return { band, bound, limit };
  });

  readonly decidedLine = this.RULE('decidedLine', (): Part<'decided'> => {
    const verdict = this.SUBRULE(this.decision);
    const eyes = this.SUBRULE(this.eyes);
    let by: Name | null = null;
    const why = this.OPTION2(() => this.CONSUME(T.Text));
    this.OPTION(() => {
      by = this.#namedBy(this.CONSUME(T.By), this.SUBRULE(this.optionalName));
    });
    return this.ACTION(() => ({ verdict, eyes, by, why: why ? nameOf(why) : null }));
  });

  /** An answer such as `ok` decides nothing, and is told as a word that is none of the three. */
  readonly decision = this.RULE('decision', (): Word | null => {
    const token = this.OPTION(
      () => this.OR([{ ALT: () => this.CONSUME(T.Word) }, { ALT: () => this.CONSUME(T.Answer) }]) as IToken,
    );
    return token ? this.ACTION(() => this.choose('choice', 'decided', token)) : null;
  });

  readonly confirmedLine = this.RULE('confirmedLine', (): Part<'confirmed'> => {
    const texts: Name[] = [];
    let by: Name | null = null;
    const code = this.SUBRULE(this.optionalName);
    this.MANY(() => {
      const token = this.CONSUME(T.Text);
      this.ACTION(() => texts.push(nameOf(token)));
    });
    this.OPTION(() => {
      by = this.#namedBy(this.CONSUME(T.By), this.SUBRULE2(this.optionalName));
    });
    return { code, quote: texts[0] ?? null, why: texts[1] ?? null, by };
  });

  /** One of the words that a line accepts. */
  readonly choice = this.RULE('choice', (line: string): Word | null => {
    const token = this.OPTION(() => this.CONSUME(T.Word));
    return token ? this.ACTION(() => this.choose('choice', line, token)) : null;
  });

  readonly eyes = this.RULE('eyes', (): EyeWord[] => {
    const list: EyeWord[] = [];
    this.MANY(() => {
      const eye = eyeOf(this.CONSUME(T.EyeToken));
      list.push(eye);
    });
    return list;
  });
}

const NO_READING: Part<'reading'> = { date: null, time: null, by: null, with: null, stage: null };
