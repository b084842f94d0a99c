/** Lines that give a measure per eye: add, prism, heights, curves. */
import type { IToken } from 'chevrotain';
import { readFigure, zeroAt } from '../figures';
import * as T from '../tokens';
import type {
  AddNode,
  Base,
  EyeFigure,
  EyeFigureWord,
  EyeWord,
  Figure,
  ForEye,
  LineOf,
  PrismComponent,
  Span,
} from '../tree';
import { type Alternative, eyeOf, spanOf } from './amounts';
import { EntryParser } from './entry';

export type PrismLine = Pick<LineOf<'prism'>, 'total' | 'entries'>;

export interface EyeFigures {
  readonly entries: readonly EyeFigure[];
  readonly belowDatum: Span | null;
}

/** Lines of one figure per eye, and the two that are written like them. */
export type EyeFigureLine = EyeFigureWord | 'slab-off' | 'reverse-slab';

const LENGTHS = new Set<EyeFigureLine>(['height', 'blank', 'inset', 'thinning', 'slab-off', 'reverse-slab']);
/** The base that may be said behind a figure: a slab-off gives base up and its reverse base down, whatever is written. */
const BASES_BEHIND: Readonly<Partial<Record<EyeFigureLine, readonly Base[]>>> = {
  inset: ['in'],
  thinning: ['up', 'down'],
  'slab-off': ['up'],
  'reverse-slab': ['down'],
};
const BASES: Readonly<Record<string, Base>> = { BI: 'in', BO: 'out', BU: 'up', BD: 'down' };

export class MeasureParser extends EntryParser {
  /** The eye word whose value has not come yet. */
  #eye: EyeWord | null = null;
  #values: ForEye<Span>[] = [];
  #figures: EyeFigure[] = [];
  #line: EyeFigureLine = 'height';
  #below: Span | null = null;

  readonly addLine = this.RULE('addLine', (): ForEye<AddNode>[] => this.byEye(this.#addParts));

  readonly #addParts = this.partsByEye(() => this.SUBRULE(this.addValue));

  /** A line of one value for each eye, each with or without its eye word. */
  protected byEye<V extends Span>(parts: Alternative[]): ForEye<V>[] {
    const list: ForEye<V>[] = [];
    this.#values = list;
    this.#eye = null;
    this.keep(list);
    this.MANY(() => this.OR(parts));
    this.OPTION(this.ended);
    return this.ACTION(() => {
      this.#nextEye(null);
      return this.#rightThenLeft(list);
    });
  }

  /** The alternatives of such a line, made once for each line word. */
  protected partsByEye(value: () => Span): Alternative[] {
    return [
      { ALT: () => this.#nextEye(this.SUBRULE(this.eye)) },
      { ALT: () => this.#takeValue(value()) },
      { ALT: () => this.CONSUME(T.Slash) },
      { ALT: () => this.CONSUME(T.Comma) },
    ];
  }

  #takeValue(value: Span): void {
    if (this.RECORDING_PHASE) return;
    if (this.#hasRoom(this.#values, value)) this.#values.push(forEye(this.#eye, value));
    this.#eye = null;
  }

  readonly prismLine = this.RULE('prismLine', (): PrismLine => {
    let total: Span | null = null;
    let eye: EyeWord | null = null;
    const entries: ForEye<readonly PrismComponent[]>[] = [];
    const close = (): void => {
      if (eye) entries.push({ eye, value: [], start: eye.start, end: eye.end });
      eye = null;
    };
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            const token = this.CONSUME(T.Total);
            total = this.ACTION(() => spanOf(token));
          },
        },
        {
          ALT: () => {
            const word = this.CONSUME(T.EyeToken);
            this.expect(word, T.Figure, T.SignApart, T.BaseWord);
            this.ACTION(() => {
              close();
              eye = eyeOf(word);
            });
          },
        },
        {
          ALT: () => {
            const value = this.SUBRULE(this.prisms);
            this.ACTION(() => {
              if (value.length === 0) return;
              const start = eye?.start ?? (value[0] as Span).start;
              entries.push({ eye, value, start, end: (value.at(-1) as Span).end });
              eye = null;
            });
          },
        },
      ]),
    );
    this.OPTION(this.ended);
    return this.ACTION(() => {
      close();
      return { total, entries };
    });
  });

  /** One figure per eye, or one for both: heights, curves, insets, the blank, thinning, slab-off. */
  readonly eyeFigures = this.RULE('eyeFigures', (line: EyeFigureLine): EyeFigures => {
    const list: EyeFigure[] = [];
    this.#figures = list;
    this.#eye = this.#below = null;
    this.#line = line;
    this.MANY(this.#eyeFigurePart);
    this.OPTION(this.ended);
    return this.ACTION(() => {
      this.#nextFigure(null);
      return { entries: this.#rightThenLeft(list), belowDatum: this.#below };
    });
  });

  readonly #eyeFigurePart = () => this.OR(this.#eyeFigureParts);

  readonly #eyeFigureParts: Alternative[] = [
    { ALT: () => this.#nextFigure(this.SUBRULE(this.eye)) },
    {
      ALT: () => {
        const token = this.CONSUME(T.Figure);
        this.ACTION(() => this.#takeFigure(this.#pairOr(token)));
      },
    },
    {
      ALT: () => {
        const sign = this.CONSUME(T.SignApart);
        const apart = this.ACTION(() => this.apart(sign));
        const token = this.CONSUME2(T.Figure);
        this.ACTION(() => this.#takeFigure(readFigure(token, this.#use, this.tell, apart)));
      },
    },
    { ALT: () => this.#takeNothing(this.CONSUME(T.Plano)) },
    {
      ALT: () => {
        const token = this.CONSUME(T.Below);
        this.expect(token, T.Datum);
        this.OPTION2(() => this.CONSUME(T.Datum));
        this.ACTION(() => {
          if (this.#line === 'height') this.#below = spanOf(token);
          else this.refuse(spanOf(token));
        });
      },
    },
    {
      ALT: () => {
        const word = this.CONSUME(T.ClockWord);
        this.expect(word, T.Figure, T.SignApart, T.Plano, T.Infinite);
        let to: Figure | null = null;
        const from = this.OPTION3(() => {
          const figure = this.SUBRULE(this.amount, { ARGS: ['difference'] });
          this.OPTION4(() => {
            const arrow = this.CONSUME(T.Arrow);
            this.expect(arrow, T.Figure, T.SignApart, T.Plano, T.Infinite);
            this.OPTION5(() => {
              to = this.SUBRULE2(this.amount, { ARGS: ['difference'] });
            });
          });
          return figure;
        });
        this.ACTION(() => this.#takeClock(word, from ?? null, to));
      },
    },
    { ALT: () => this.#takeBase(this.CONSUME(T.BaseWord)) },
    { ALT: () => this.CONSUME(T.Slash) },
    { ALT: () => this.CONSUME(T.Comma) },
    { ALT: () => this.CONSUME(T.Unit) },
    { ALT: () => this.CONSUME(T.PrismMark) },
  ];

  /** `thinning none`, or an amount with its base. */
  readonly thinningLine = this.RULE('thinningLine', (): EyeFigures => {
    const word = this.OPTION(() => this.CONSUME(T.Word));
    const figures = this.SUBRULE(this.eyeFigures, { ARGS: ['thinning'] });
    return this.ACTION(() => {
      if (!word || !this.choose('choice', 'thinning', word)) return figures;
      return { ...figures, entries: [...figures.entries, forEye(null, zeroAt(word))] };
    });
  });

  get #use(): 'length' | 'difference' {
    return LENGTHS.has(this.#line) ? 'length' : 'difference';
  }

  /** `height 17,18`: two heights or one with decimals? Asked, where both would make sense. */
  #pairOr(token: IToken): Figure {
    if (this.#line === 'height' && !this.#eye && this.isPair(token)) return this.refusePair(token);
    return readFigure(token, this.#use, this.tell);
  }

  #takeFigure(figure: Figure): void {
    if (this.#hasRoom(this.#figures, figure)) this.#figures.push(forEye(this.#eye, figure));
    this.#eye = null;
  }

  /** A slab-off is read as a prism, or as two figures of a lens measure. */
  #takeClock(word: IToken, from: Figure | null, to: Figure | null): void {
    const span = { start: word.startOffset, end: to?.end ?? from?.end ?? T.endOf(word) };
    if (this.#line !== 'slab-off' && this.#line !== 'reverse-slab') this.refuse(spanOf(word));
    else if (from && !to) this.tellMissing(word);
    else if (from && this.#hasRoom(this.#figures, span))
      this.#figures.push({
        eye: this.#eye,
        value: null,
        clock: { from, to },
        start: this.#eye?.start ?? span.start,
        end: span.end,
      });
    this.#eye = null;
  }

  #takeNothing(token: IToken): void {
    if (this.RECORDING_PHASE) return;
    if (this.#line === 'base-curve') this.#takeFigure(zeroAt(token));
    else this.refuse(spanOf(token));
  }

  #takeBase(token: IToken): void {
    if (this.RECORDING_PHASE) return;
    const last = this.#figures.at(-1);
    const base = BASES[token.payload as string];
    const isExpected = base !== undefined && BASES_BEHIND[this.#line]?.includes(base) === true;
    if (!last || last.base || this.#eye || !isExpected) this.refuse(spanOf(token));
    else this.#figures[this.#figures.length - 1] = { ...last, base, end: T.endOf(token) };
  }

  /** Whether one more value can stand for an eye; a third, or one behind a named eye, is told. */
  #hasRoom(list: readonly ForEye<unknown>[], value: Span): boolean {
    if (this.#eye) return true;
    if (list.length === 0 || (list.length === 1 && !list[0]?.eye)) return true;
    this.refuse(value);
    return false;
  }

  /** Goes on to the next eye word; one that got no value is told. */
  #nextEye(eye: EyeWord | null): void {
    if (this.RECORDING_PHASE) return;
    const waiting = this.#eye;
    if (waiting)
      this.tell({ code: 'value-missing', start: waiting.start, end: waiting.end, data: { word: waiting.eye } });
    this.#eye = eye;
  }

  /** The same for lines of figures, where the tree keeps an eye that waits for its figure. */
  #nextFigure(eye: EyeWord | null): void {
    if (this.RECORDING_PHASE) return;
    const waiting = this.#eye;
    if (waiting) this.#figures.push({ eye: waiting, value: null, start: waiting.start, end: waiting.end });
    this.#nextEye(eye);
  }

  /** Two unnamed values mean right, then left; that is understood and told. */
  #rightThenLeft<V extends ForEye<Span | null>>(list: V[]): V[] {
    const [first, second] = list;
    if (list.length !== 2 || !first || !second || first.eye || second.eye) return list;
    const span = { start: first.start, end: second.end };
    if (isDashed(first.value, second.value)) {
      this.tellInstead({ code: 'pair-unclear', ...span });
      return [];
    }
    this.tell({ code: 'slash-pair', ...span, data: { meaning: 'right-left' } });
    return [
      { ...first, eye: { eye: 'R', start: first.start, end: first.start } },
      { ...second, eye: { eye: 'L', start: second.start, end: second.start } },
    ];
  }
}

/** `17-16.5`, `+2.00-2.25`: is the dash a minus, or does it keep two figures apart? A negative length is none either. */
function isDashed(first: unknown, second: unknown): boolean {
  const [one, two] = [figureOf(first), figureOf(second)];
  return one?.value === null ? one.sign === '-' : two?.sign === '-' && one?.sign !== '-';
}

function figureOf(value: unknown): Figure | null {
  if (typeof value !== 'object' || value === null) return null;
  if ('decimals' in value) return value as Figure;
  return 'value' in value ? (value as AddNode).value : null;
}

function forEye<V extends Span>(eye: EyeWord | null, value: V): ForEye<V> {
  return { eye, value, start: eye?.start ?? value.start, end: value.end };
}
