/** Lines that state what is ordered or recorded: headers, design, material, dimensions, choices, decisions. */
import type { IToken } from 'chevrotain';
import * as T from '../tokens';
import type {
  DateNode,
  DesignNode,
  DesignType,
  EyeWord,
  Figure,
  ForEye,
  LineKind,
  LineOf,
  MaterialNode,
  Name,
  PowerEntry,
  Setting,
  Span,
  Word,
} from '../tree';
import { nameOf, spanOf, wordOf } from './amounts';
import { MeasureParser } from './measures';

type Part<K extends LineKind> = Omit<LineOf<K>, 'head'>;

export class FactParser extends MeasureParser {
  readonly powerLine = this.RULE('powerLine', (): PowerEntry[] => {
    const entries: PowerEntry[] = [];
    this.keep(entries);
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            const entry = this.SUBRULE(this.entry);
            this.ACTION(() => entries.push(entry));
          },
        },
        { ALT: () => this.CONSUME(T.Slash) },
      ]),
    );
    this.SUBRULE(this.qualifiers);
    return entries;
  });

  readonly optionalName = this.RULE('optionalName', (): Name | null => {
    let name: Name | null = null;
    this.OPTION(() => {
      const token = this.CONSUME(T.NameToken);
      name = this.ACTION(() => nameOf(token));
    });
    return name;
  });

  readonly toleranceHeader = this.RULE('toleranceHeader', (): Part<'tolerance'> => {
    const name = this.SUBRULE(this.optionalName);
    let from: Name | null = null;
    this.OPTION(() => {
      this.CONSUME(T.From);
      from = this.SUBRULE2(this.optionalName);
    });
    return { kind: 'tolerance', name, from };
  });

  readonly date = this.RULE('date', (): DateNode => {
    const token = this.OR([{ ALT: () => this.CONSUME(T.DateShape) }, { ALT: () => this.CONSUME(T.DayFirst) }]);
    return this.ACTION(() => {
      const span = spanOf(token);
      const typed = token.image.replace(/T$/, '');
      if (token.tokenType === T.DayFirst) this.tell({ code: 'date-order', ...span, data: { typed } });
      else if (!isDay(typed)) this.tell({ code: 'date-impossible', ...span, data: { typed } });
      else return { ...span, iso: typed };
      return { ...span, iso: null };
    });
  });

  readonly readingHeader = this.RULE('readingHeader', (): Part<'reading'> => {
    let date: DateNode | null = null;
    let time: Name | null = null;
    let by: Name | null = null;
    let instrument: Name | null = null;
    let stage: Word | null = null;
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            date = this.SUBRULE(this.date);
          },
        },
        {
          ALT: () => {
            const token = this.CONSUME(T.Time);
            time = this.ACTION(() => ({ ...spanOf(token), text: token.image }));
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.By);
            by = this.SUBRULE(this.optionalName);
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.With);
            instrument = this.SUBRULE2(this.optionalName);
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.Stage);
            this.OPTION(() => {
              const token = this.CONSUME(T.Word);
              stage = this.ACTION(() => wordOf(token));
            });
          },
        },
      ]),
    );
    return { kind: 'reading', date, time, by, with: instrument, stage };
  });

  readonly datedLine = this.RULE('datedLine', (): { date: DateNode | null; due: DateNode | null } => {
    let date: DateNode | null = null;
    let due: DateNode | null = null;
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            date = this.SUBRULE(this.date);
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.Due);
            this.OPTION(() => {
              due = this.SUBRULE2(this.date);
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
      this.CONSUME(T.Read);
      this.OPTION3(() => {
        read = this.SUBRULE2(this.amount, { ARGS: ['power'] });
      });
    });
    return { kind: 'test-lens', nominal, read };
  });

  readonly oneFigure = this.RULE('oneFigure', (): Figure | null => {
    let figure: Figure | null = null;
    this.OPTION(() => {
      figure = this.SUBRULE(this.amount, { ARGS: ['difference'] });
    });
    return figure;
  });

  readonly limitLine = this.RULE('limitLine', (): { band: Word | null; bound: Figure | null; limit: Figure | null } => {
    let band: Word | null = null;
    let bound: Figure | null = null;
    let limit: Figure | null = null;
    this.OPTION(() => {
      const token = this.CONSUME(T.BandWord);
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

  readonly designLine = this.RULE('designLine', (): ForEye<DesignNode>[] => {
    const list: ForEye<DesignNode>[] = [];
    let eye: EyeWord | null = null;
    let draft = new DesignDraft();
    const close = (): void => {
      if (draft.started || eye)
        list.push({
          eye,
          value: draft.node(),
          start: eye?.start ?? draft.start,
          end: Math.max(draft.end, eye?.end ?? 0),
        });
      draft = new DesignDraft();
    };
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            const token = this.CONSUME(T.EyeToken);
            this.ACTION(() => {
              // `R22` after `bifocal` is a round segment; an eye word stands before the design.
              if (draft.type && this.LA(1).startOffset === T.endOf(token) && this.LA(1).tokenType === T.Figure) {
                draft.word(token, () => {
                  draft.shape = 'round';
                });
                return;
              }
              close();
              eye = { ...spanOf(token), eye: token.payload as EyeWord['eye'] };
            });
          },
        },
        {
          ALT: () =>
            this.#draft(
              () => draft,
              this.CONSUME(T.DesignWord),
              (to, word) => {
                to.type = word as DesignType;
              },
            ),
        },
        {
          ALT: () =>
            this.#draft(
              () => draft,
              this.CONSUME(T.ShapeWord),
              (to, word) => {
                to.shape = word as DesignNode['shape'];
              },
            ),
        },
        {
          ALT: () =>
            this.#draft(
              () => draft,
              this.CONSUME(T.Near),
              (to) => {
                to.use = 'near';
              },
            ),
        },
        {
          ALT: () =>
            this.#draft(
              () => draft,
              this.CONSUME(T.DistanceWord),
              (to) => {
                to.use = 'distance';
              },
            ),
        },
        // `D28`: a flat-top segment.
        {
          ALT: () =>
            this.#draft(
              () => draft,
              this.CONSUME(T.Unit),
              (to) => {
                if (!to.shape) to.shape = 'flat-top';
              },
            ),
        },
        {
          ALT: () => {
            this.#draft(
              () => draft,
              this.CONSUME(T.Intermediate),
              (to) => {
                if (to.type !== 'trifocal') to.use = 'intermediate';
              },
            );
            this.OPTION(() => {
              const figure = this.SUBRULE(this.amount, { ARGS: ['add'] });
              this.ACTION(() => draft.take(figure, 'intermediate'));
            });
          },
        },
        {
          ALT: () => {
            const key = this.CONSUME(T.DesignKey);
            this.OPTION2(() => {
              const figure = this.SUBRULE2(this.amount, { ARGS: ['difference'] });
              this.ACTION(() => draft.take(figure, key.payload as 'gap'));
            });
          },
        },
        {
          ALT: () => {
            const figure = this.SUBRULE3(this.amount, { ARGS: ['length'] });
            this.ACTION(() => draft.take(figure, 'width'));
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.Cross);
            this.ACTION(() => draft.depthFirst());
          },
        },
      ]),
    );
    this.ACTION(() => close());
    return list;
  });

  readonly lensLine = this.RULE('lensLine', (): ForEye<MaterialNode>[] => {
    const list: Writable<ForEye<Writable<MaterialNode>>>[] = [];
    const current = (part: Span): Writable<ForEye<Writable<MaterialNode>>> => {
      const last = list.at(-1) ?? this.#openLens(list, null, part);
      last.end = last.value.end = part.end;
      return last;
    };
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            const eye = this.SUBRULE(this.eye);
            this.ACTION(() => this.#openLens(list, eye, eye));
          },
        },
        {
          ALT: () => {
            const token = this.CONSUME(T.NameToken);
            this.ACTION(() => {
              const name = nameOf(token);
              current(name).value.name = name;
            });
          },
        },
        {
          ALT: () => {
            const figure = this.SUBRULE(this.figure, { ARGS: ['length'] });
            this.ACTION(() => {
              current(figure).value.index = figure;
            });
          },
        },
        {
          ALT: () => {
            const key = this.CONSUME(T.MaterialKey);
            this.ACTION(() => this.tellUnless(this.LA(1).tokenType === T.Figure, key));
            this.OPTION(() => {
              const figure = this.SUBRULE2(this.figure, { ARGS: ['length'] });
              this.ACTION(() => {
                current(figure).value[key.payload as 'index' | 'abbe' | 'density'] = figure;
              });
            });
          },
        },
      ]),
    );
    return list;
  });

  /** Figures under keywords, per eye where an eye is named: `A 52 B 36`, `vertex 13 panto 8`, `R centre 2.1`. */
  readonly settings = this.RULE('settings', (): ForEye<Setting[]>[] => {
    const list: ForEye<Setting[]>[] = [];
    let current: { eye: EyeWord | null; value: Setting[]; start: number; end: number } | null = null;
    const open = (eye: EyeWord | null, { start, end }: Span) => {
      const group = { eye, value: [] as Setting[], start, end };
      list.push(group);
      return group;
    };
    const put = (setting: Setting): void => {
      current ??= open(null, setting);
      current.value.push(setting);
      current.end = setting.end;
    };
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            const eye = this.SUBRULE(this.eye);
            this.ACTION(() => {
              current = open(eye, eye);
            });
          },
        },
        {
          ALT: () => {
            const key = this.CONSUME(T.Word);
            let figure: Figure | null = null;
            this.OPTION(() => {
              figure = this.SUBRULE(this.amount, { ARGS: ['difference'] });
            });
            this.ACTION(() =>
              put({
                key: wordOf(key),
                figure,
                start: key.startOffset,
                end: (figure as Figure | null)?.end ?? T.endOf(key),
              }),
            );
          },
        },
        {
          ALT: () => {
            const first = this.SUBRULE(this.figure, { ARGS: ['length'] });
            let second: Figure | null = null;
            this.OPTION2(() => {
              this.CONSUME(T.Box);
              this.OPTION3(() => {
                second = this.SUBRULE2(this.figure, { ARGS: ['length'] });
              });
            });
            this.ACTION(() => {
              put({
                key: { start: first.start, end: first.end, word: 'a' },
                figure: first,
                start: first.start,
                end: first.end,
              });
              const other = second as Figure | null;
              if (other)
                put({
                  key: { start: other.start, end: other.end, word: 'dbl' },
                  figure: other,
                  start: other.start,
                  end: other.end,
                });
            });
          },
        },
        { ALT: () => this.CONSUME(T.Comma) },
      ]),
    );
    this.SUBRULE(this.qualifiers);
    return list;
  });

  readonly decidedLine = this.RULE('decidedLine', (): { verdict: Word | null; eyes: EyeWord[]; by: Name | null } => {
    const verdict = this.SUBRULE(this.choice);
    const eyes = this.SUBRULE(this.eyes);
    let by: Name | null = null;
    this.OPTION(() => {
      this.CONSUME(T.By);
      by = this.SUBRULE(this.optionalName);
    });
    return { verdict, eyes, by };
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
      this.CONSUME(T.By);
      by = this.SUBRULE2(this.optionalName);
    });
    return { kind: 'confirmed', code, quote: texts[0] ?? null, why: texts[1] ?? null, by };
  });

  readonly tintLine = this.RULE('tintLine', (): Part<'tint'> => {
    let colour: Name | null = null;
    let bare: Figure | null = null;
    const list: Setting[] = [];
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            const key = this.CONSUME(T.NameToken);
            let figure: Figure | null = null;
            this.OPTION(() => {
              figure = this.SUBRULE(this.figure, { ARGS: ['length'] });
            });
            this.OPTION2(() => this.CONSUME(T.Other));
            this.ACTION(() => {
              const end = (figure as Figure | null)?.end ?? T.endOf(key);
              if (!figure && !colour) colour = nameOf(key);
              else
                list.push({
                  key: { ...spanOf(key), word: key.image.toLowerCase() },
                  figure,
                  start: key.startOffset,
                  end,
                });
            });
          },
        },
        {
          ALT: () => {
            bare = this.SUBRULE2(this.figure, { ARGS: ['length'] });
          },
        },
        { ALT: () => this.CONSUME2(T.Other) },
      ]),
    );
    return { kind: 'tint', colour, settings: list, bare };
  });

  readonly choice = this.RULE('choice', (): Word | null => {
    let word: Word | null = null;
    this.OPTION(() => {
      const token = this.OR([{ ALT: () => this.CONSUME(T.Word) }, { ALT: () => this.CONSUME(T.NameToken) }]);
      word = this.ACTION(() => wordOf(token));
    });
    return word;
  });

  readonly eyes = this.RULE('eyes', (): EyeWord[] => {
    const list: EyeWord[] = [];
    this.MANY(() => {
      const eye = this.SUBRULE(this.eye);
      this.ACTION(() => list.push(eye));
    });
    return list;
  });

  #openLens(
    list: Writable<ForEye<Writable<MaterialNode>>>[],
    eye: EyeWord | null,
    { start, end }: Span,
  ): Writable<ForEye<Writable<MaterialNode>>> {
    const lens = { eye, value: { name: null, index: null, abbe: null, density: null, start, end }, start, end };
    list.push(lens);
    return lens;
  }

  #draft(draft: () => DesignDraft, token: IToken, set: (draft: DesignDraft, word: string) => void): void {
    this.ACTION(() => draft().word(token, () => set(draft(), token.payload as string)));
  }
}

type Writable<V> = { -readonly [K in keyof V]: V[K] };

/** Gathers the parts of one design in whatever order they are written. */
class DesignDraft {
  type: DesignType | null = null;
  use: DesignNode['use'] = null;
  shape: DesignNode['shape'] = null;
  figures: Partial<Record<'intermediate' | 'width' | 'depth' | 'gap' | 'corridor' | 'degression' | 'working', Figure>> =
    {};
  start = Number.POSITIVE_INFINITY;
  end = 0;

  get started(): boolean {
    return this.end > 0;
  }

  word(token: IToken, set: () => void): void {
    this.#span(spanOf(token));
    set();
  }

  take(figure: Figure, as: keyof DesignDraft['figures']): void {
    this.#span(figure);
    this.figures[as] = figure;
  }

  /** `7x28`: the figure before the cross was the depth. */
  depthFirst(): void {
    if (!this.figures.width) return;
    this.figures.depth = this.figures.width;
    delete this.figures.width;
  }

  node(): DesignNode {
    const {
      intermediate = null,
      width = null,
      depth = null,
      gap = null,
      corridor = null,
      degression = null,
      working = null,
    } = this.figures;
    const start = this.started ? this.start : 0;
    return {
      type: this.type,
      use: this.use,
      shape: this.shape,
      intermediate,
      width,
      depth,
      gap,
      corridor,
      degression,
      working,
      start,
      end: this.end,
    };
  }

  #span({ start, end }: Span): void {
    this.start = Math.min(this.start, start);
    this.end = Math.max(this.end, end);
  }
}

function isDay(iso: string): boolean {
  const date = new Date(`${iso}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(iso);
}
