/** Lines that give a measure per eye: add, prism, distances, heights, curves, the lens measure, the segment. */
import * as T from '../tokens';
import type {
  AddNode,
  ClockNode,
  EyeWord,
  Figure,
  ForEye,
  LineOf,
  MeridianNode,
  PdNode,
  PrismComponent,
  SegmentNode,
  Span,
} from '../tree';
import { spanOf } from './amounts';
import { PowerParser } from './power';

/** A bare pair such as `63/60` means distance / near above this length and right / left up to it (half of a wide PD). */
const LONGEST_MONOCULAR = 40.5;

export type AddLine = Omit<LineOf<'add'>, 'head' | 'again'>;
export type PrismLine = Omit<LineOf<'prism'>, 'head' | 'again'>;
export type PdParts = { readonly distance: PdNode; readonly near: PdNode };

export class MeasureParser extends PowerParser {
  readonly addLine = this.RULE('addLine', (): ForEye<AddNode>[] => {
    const list: ForEye<AddNode>[] = [];
    this.keep(list);
    this.MANY(() => {
      let eye: EyeWord | null = null;
      this.OR([
        {
          ALT: () => {
            eye = this.SUBRULE(this.eye);
            this.OPTION(() => {
              const value = this.SUBRULE(this.addValue);
              this.ACTION(() => list.push(forEye(eye, value)));
            });
          },
        },
        {
          ALT: () => {
            const value = this.SUBRULE2(this.addValue);
            this.ACTION(() => list.push(forEye(null, value)));
          },
        },
        { ALT: () => this.CONSUME(T.Slash) },
        { ALT: () => this.CONSUME(T.Comma) },
      ]);
    });
    this.SUBRULE(this.qualifiers);
    return this.ACTION(() => this.#rightThenLeft(list));
  });

  readonly addValue = this.RULE('addValue', (): AddNode => {
    const first = this.SUBRULE(this.amount, { ARGS: ['add'] });
    let to: Figure | null = null;
    let arrow: Span | null = null;
    let intermediate: Figure | null = null;
    let surface: AddNode['surface'] = null;
    let engraved = false;
    let end = 0;
    this.OPTION(() => {
      const token = this.CONSUME(T.Arrow);
      arrow = this.ACTION(() => spanOf(token));
      this.OPTION2(() => {
        to = this.SUBRULE2(this.amount, { ARGS: ['power'] });
      });
    });
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            this.CONSUME(T.Intermediate);
            this.OPTION3(() => {
              intermediate = this.SUBRULE3(this.amount, { ARGS: ['add'] });
            });
          },
        },
        {
          ALT: () => {
            const token = this.CONSUME(T.Surface);
            this.ACTION(() => {
              surface = token.payload as AddNode['surface'];
              end = T.endOf(token);
            });
          },
        },
        {
          ALT: () => {
            const token = this.CONSUME(T.Engraved);
            this.ACTION(() => {
              engraved = true;
              end = T.endOf(token);
            });
          },
        },
      ]),
    );
    return this.ACTION(() => {
      const ends = [first, arrow, to, intermediate].map((part) => (part as Span | null)?.end ?? 0);
      const node = { intermediate, surface, engraved, start: first.start, end: Math.max(end, ...ends) };
      return arrow ? { ...node, value: null, from: first, to } : { ...node, value: first, from: null, to: null };
    });
  });

  readonly prismLine = this.RULE('prismLine', (): PrismLine => {
    let total: Span | null = null;
    const entries: ForEye<readonly PrismComponent[]>[] = [];
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
            const eye = this.SUBRULE(this.eye);
            let prisms: PrismComponent[] = [];
            this.OPTION(() => {
              prisms = this.SUBRULE(this.prisms);
            });
            this.ACTION(() =>
              entries.push({ eye, value: prisms, start: eye.start, end: prisms.at(-1)?.end ?? eye.end }),
            );
          },
        },
        {
          ALT: () => {
            const prisms = this.SUBRULE2(this.prisms);
            this.ACTION(() => {
              const [first, last] = [prisms[0], prisms.at(-1)];
              if (first && last) entries.push({ eye: null, value: prisms, start: first.start, end: last.end });
            });
          },
        },
        { ALT: () => this.CONSUME(T.Comma) },
      ]),
    );
    this.SUBRULE(this.qualifiers);
    return { kind: 'prism', total, entries };
  });

  /** Distances between the pupils or between points of the lenses, distance first, then `near`. */
  readonly pdLine = this.RULE('pdLine', (): PdParts => {
    const far = new Distances();
    const near = new Distances();
    let current = far;
    let slash = false;
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            this.CONSUME(T.Near);
            this.ACTION(() => {
              current = near;
            });
          },
        },
        {
          ALT: () => {
            const eye = this.SUBRULE(this.eye);
            this.ACTION(() => {
              current.eye = eye;
            });
          },
        },
        {
          ALT: () => {
            const figure = this.SUBRULE(this.figure, { ARGS: ['distance'] });
            this.ACTION(() => {
              if (slash && current.last) this.#slashPair(far, near, current.last, figure);
              else if (figure.sign === '-' && current.last?.end === figure.start) this.#dashPair(current, figure);
              else if (!current.take(figure))
                this.tell({ code: 'unexpected-text', start: figure.start, end: figure.end });
              slash = false;
            });
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.Slash);
            this.ACTION(() => {
              slash = true;
            });
          },
        },
        { ALT: () => this.CONSUME(T.Comma) },
      ]),
    );
    this.SUBRULE(this.qualifiers);
    return this.ACTION(() => ({ distance: far.node(), near: near.node() }));
  });

  /** One figure per eye, or one for both: heights, curves, insets, the blank. */
  readonly eyeFigures = this.RULE('eyeFigures', (use: 'length' | 'difference'): EyeFigures => {
    const list: ForEye<Figure | null>[] = [];
    let eye: EyeWord | null = null;
    let below: Span | null = null;
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            const word = this.SUBRULE(this.eye);
            this.ACTION(() => {
              if (eye) list.push(forEye(eye, null));
              eye = word;
            });
          },
        },
        {
          ALT: () => {
            const figure = this.SUBRULE(this.amount, { ARGS: [use] });
            this.ACTION(() => {
              list.push(forEye(eye, figure));
              eye = null;
            });
          },
        },
        {
          ALT: () => {
            const token = this.CONSUME(T.Below);
            this.OPTION(() => this.CONSUME(T.Datum));
            below = this.ACTION(() => spanOf(token));
          },
        },
        { ALT: () => this.CONSUME(T.BaseWord) },
        { ALT: () => this.CONSUME(T.Slash) },
        { ALT: () => this.CONSUME(T.Comma) },
      ]),
    );
    this.SUBRULE(this.qualifiers);
    return this.ACTION(() => {
      if (eye) list.push(forEye(eye, null));
      return { entries: this.#rightThenLeft(list), belowDatum: below };
    });
  });

  readonly clockLine = this.RULE('clockLine', (): ForEye<ClockNode>[] => {
    const list: ForEye<ClockNode>[] = [];
    let eye: EyeWord | null = null;
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            eye = this.SUBRULE(this.eye);
          },
        },
        {
          ALT: () => {
            const value = this.SUBRULE(this.clockValue);
            this.ACTION(() => {
              list.push(forEye(eye, value));
              eye = null;
            });
          },
        },
      ]),
    );
    this.SUBRULE(this.qualifiers);
    return list;
  });

  readonly clockValue = this.RULE('clockValue', (): ClockNode => {
    const first = this.SUBRULE(this.amount, { ARGS: ['difference'] });
    let segment: Figure | null = null;
    let meridian: Figure | null = null;
    let second: MeridianNode | null = null;
    this.OPTION(() =>
      this.OR([
        {
          ALT: () => {
            this.CONSUME(T.Arrow);
            this.OPTION2(() => {
              segment = this.SUBRULE2(this.amount, { ARGS: ['difference'] });
            });
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.At);
            this.OPTION4(() => {
              meridian = this.SUBRULE(this.degrees);
            });
            this.OPTION3(() => {
              second = this.SUBRULE(this.secondMeridian);
            });
          },
        },
      ]),
    );
    return this.ACTION(() => {
      const at = meridian as Figure | null;
      const other = second as MeridianNode | null;
      const meridians = at
        ? [{ power: first, meridian: at, start: first.start, end: at.end }, ...(other ? [other] : [])]
        : [];
      const last = (segment as Figure | null) ?? other ?? at ?? first;
      return { distance: at ? null : first, segment, meridians, start: first.start, end: last.end };
    });
  });

  readonly segmentLine = this.RULE('segmentLine', (): ForEye<SegmentNode>[] => {
    const list: Writable<ForEye<Writable<SegmentNode>>>[] = [];
    const current = (part: Span): Writable<ForEye<Writable<SegmentNode>>> => {
      const last = list.at(-1) ?? openSegment(list, null, part);
      last.end = last.value.end = part.end;
      return last;
    };
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            const eye = this.SUBRULE(this.eye);
            this.ACTION(() => openSegment(list, eye, eye));
          },
        },
        {
          ALT: () => {
            const width = this.SUBRULE(this.figure, { ARGS: ['length'] });
            this.ACTION(() => {
              current(width).value.width = width;
            });
          },
        },
        {
          ALT: () => {
            const word = this.CONSUME(T.Tilt);
            this.ACTION(() => this.tellUnless(this.LA(1).tokenType === T.Figure, word));
            this.OPTION(() => {
              const tilt = this.SUBRULE2(this.figure, { ARGS: ['plain'] });
              this.ACTION(() => {
                current(tilt).value.tilt = tilt;
              });
            });
          },
        },
        {
          ALT: () => {
            const token = this.CONSUME(T.TiltEnd);
            this.ACTION(() => {
              current(spanOf(token)).value.tiltTowards = token.payload as SegmentNode['tiltTowards'];
            });
          },
        },
      ]),
    );
    this.SUBRULE(this.qualifiers);
    return list;
  });

  /** Two unnamed values mean right, then left; that is understood and told. */
  #rightThenLeft<V extends Span | null>(list: ForEye<V>[]): ForEye<V>[] {
    const [first, second] = list;
    if (list.length !== 2 || !first || !second || first.eye || second.eye) return list;
    this.tell({ code: 'slash-pair', start: first.start, end: second.end, data: { meaning: 'right-left' } });
    return [
      { ...first, eye: { eye: 'R', start: first.start, end: first.start } },
      { ...second, eye: { eye: 'L', start: second.start, end: second.start } },
    ];
  }

  /** `63-60`: two lengths with a dash between them, which may mean either pair. */
  #dashPair(current: Distances, figure: Figure): void {
    this.tellInstead({ code: 'pair-unclear', start: (current.last as Figure).start, end: figure.end });
    current.forget();
  }

  #slashPair(far: Distances, near: Distances, first: Figure, second: Figure): void {
    const span = { start: first.start, end: second.end };
    const [a, b] = [first.value ?? 0, second.value ?? 0];
    if (a > LONGEST_MONOCULAR && b > LONGEST_MONOCULAR) {
      near.binocular = second;
      this.tell({ code: 'slash-pair', ...span, data: { meaning: 'distance-near' } });
    } else if (a <= LONGEST_MONOCULAR && b <= LONGEST_MONOCULAR) {
      const target = near.last === first ? near : far;
      target.binocular = null;
      target.right = first;
      target.left = second;
      this.tell({ code: 'slash-pair', ...span, data: { meaning: 'right-left' } });
    } else {
      far.binocular = null;
      this.tell({ code: 'pair-unclear', ...span });
    }
  }
}

export interface EyeFigures {
  readonly entries: readonly ForEye<Figure | null>[];
  readonly belowDatum: Span | null;
}

/** Gathers the figures of one distance: without an eye binocular, after an eye word monocular. */
class Distances {
  binocular: Figure | null = null;
  right: Figure | null = null;
  left: Figure | null = null;
  eye: EyeWord | null = null;
  last: Figure | null = null;

  take(figure: Figure): boolean {
    const side = this.eye?.eye;
    this.eye = null;
    this.last = figure;
    if (side === 'R') this.right = figure;
    else if (side === 'L') this.left = figure;
    else if (side === 'both') this.right = this.left = figure;
    else if (this.binocular) return false;
    else this.binocular = figure;
    return true;
  }

  /** Drops the figure taken last: it cannot be told what it was. */
  forget(): void {
    if (this.binocular === this.last) this.binocular = null;
    if (this.right === this.last) this.right = null;
    if (this.left === this.last) this.left = null;
  }

  node(): PdNode {
    return { binocular: this.binocular, right: this.right, left: this.left };
  }
}

type Writable<V> = { -readonly [K in keyof V]: V[K] };

function openSegment(
  list: Writable<ForEye<Writable<SegmentNode>>>[],
  eye: EyeWord | null,
  { start, end }: Span,
): Writable<ForEye<Writable<SegmentNode>>> {
  const segment = { eye, value: { width: null, tilt: null, tiltTowards: null, start, end }, start, end };
  list.push(segment);
  return segment;
}

function forEye<V extends Span | null>(eye: EyeWord | null, value: V): ForEye<V> {
  const start = eye?.start ?? value?.start ?? 0;
  return { eye, value, start, end: value?.end ?? eye?.end ?? start };
}
