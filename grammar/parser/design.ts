/** Designs and materials. */
import type { IToken } from 'chevrotain';
import * as T from '../tokens';
import type { DesignNode, DesignType, EyeWord, Figure, ForEye, MaterialNode, Name, Span } from '../tree';
import { type Alternative, eyeOf, nameOf, spanOf } from './amounts';
import { SettingsParser } from './settings';

type FigureName = 'intermediate' | 'width' | 'depth' | 'gap' | 'corridor' | 'degression' | 'working';

export class DesignParser extends SettingsParser {
  #designs: ForEye<DesignNode>[] = [];
  #eye: EyeWord | null = null;
  #draft = new DesignDraft();

  /** `bifocal flat-top 28`, `trifocal flat-top 7x28`, `R … L …`, in whatever order the parts are written. */
  readonly designLine = this.RULE('designLine', (): ForEye<DesignNode>[] => {
    this.#designs = [];
    this.#eye = null;
    this.#draft = new DesignDraft();
    this.MANY(this.#designPart);
    return this.ACTION(() => {
      this.#close();
      return this.#designs;
    });
  });

  readonly #designPart = () => this.OR(this.#designParts);

  readonly #designParts: Alternative[] = [
    { ALT: () => this.#word('type', this.CONSUME(T.DesignWord)) },
    { ALT: () => this.#word('shape', this.CONSUME(T.ShapeWord)) },
    { ALT: () => this.#size(this.SUBRULE(this.figure, { ARGS: ['length'] })) },
    { ALT: () => this.#nextEye(this.CONSUME(T.EyeToken)) },
    { ALT: () => this.#word('use', this.CONSUME(T.Near)) },
    { ALT: () => this.#word('use', this.CONSUME(T.DistanceWord)) },
    {
      ALT: () => {
        const word = this.CONSUME(T.Intermediate);
        const figure = this.OPTION(() => this.SUBRULE(this.amount, { ARGS: ['add'] }));
        this.ACTION(() => {
          if (this.#draft.type === 'trifocal') this.#draft.reach(spanOf(word));
          else this.#word('use', word);
          if (figure) this.#take(figure, 'intermediate');
        });
      },
    },
    {
      ALT: () => {
        const word = this.CONSUME(T.DesignKey);
        this.expect(word, T.Figure, T.SignApart, T.Plano, T.Infinite);
        const figure = this.OPTION2(() => this.SUBRULE2(this.amount, { ARGS: ['difference'] }));
        this.ACTION(() => {
          this.#draft.reach(spanOf(word));
          if (figure) this.#take(figure, word.payload as FigureName);
        });
      },
    },
    { ALT: () => this.#depth(this.CONSUME(T.Cross)) },
    {
      ALT: () => {
        const comma = this.CONSUME(T.Comma);
        this.ACTION(() => this.tell({ code: 'loose-form', ...spanOf(comma) }));
      },
    },
  ];

  #word(part: 'type' | 'shape' | 'use', token: IToken, word = token.payload as string): void {
    if (this.RECORDING_PHASE) return;
    const draft = this.#draft;
    if (draft[part] !== null && draft[part] !== word) this.refuse(spanOf(token));
    else if (part === 'type') draft.type = word as DesignType;
    else if (part === 'shape') draft.shape = word as DesignNode['shape'];
    else draft.use = word as DesignNode['use'];
    draft.reach(spanOf(token));
  }

  #size(figure: Figure): void {
    if (!this.RECORDING_PHASE) this.#take(figure, 'width');
  }

  #take(figure: Figure, as: FigureName): void {
    const { figures } = this.#draft;
    figures[as] = this.once(figures[as], figure);
    this.#draft.reach(figure);
  }

  /** `7x28`: the figure before the cross was the depth. */
  #depth(cross: IToken): void {
    if (this.RECORDING_PHASE) return;
    const { figures } = this.#draft;
    if (!figures.width || figures.depth) {
      this.refuse(spanOf(cross));
      return;
    }
    if (this.LA(1).tokenType !== T.Figure) this.tellMissing(cross);
    figures.depth = figures.width;
    figures.width = null;
  }

  #nextEye(token: IToken): void {
    if (this.RECORDING_PHASE) return;
    this.#close();
    this.#eye = eyeOf(token);
  }

  #close(): void {
    const draft = this.#draft;
    const eye = this.#eye;
    if (draft.started) {
      const { start, end } = draft;
      // A width or a use of nothing is no design: `bifocal R 22` may have been meant as `bifocal round 22`.
      const node = draft.node();
      if (!node.type) this.refuse({ start, end });
      this.#designs.push({ eye, value: node, start: eye?.start ?? start, end });
    } else if (eye) {
      this.tell({ code: 'value-missing', start: eye.start, end: eye.end, data: { word: eye.eye } });
      this.#designs.push({ eye, value: draft.node(), start: eye.start, end: eye.end });
    }
    this.#draft = new DesignDraft();
    this.#eye = null;
  }

  #lenses: MaterialDraft[] = [];

  /** `resin-1.60`, `1.60`, `MATERIAL index 1.60 abbe 41 density 1.3`, `R … L …`. */
  readonly lensLine = this.RULE('lensLine', (): ForEye<MaterialNode>[] => {
    this.#lenses = [];
    this.MANY(this.#lensPart);
    return this.ACTION(() =>
      this.#lenses.map(({ eye, start, end, name, index, abbe, density }) => {
        const from = eye?.start ?? start;
        return { eye, value: { name, index, abbe, density, start: from, end }, start: from, end };
      }),
    );
  });

  readonly #lensPart = () => this.OR(this.#lensParts);

  readonly #lensParts: Alternative[] = [
    { ALT: () => this.#name(this.CONSUME(T.NameToken)) },
    {
      ALT: () => {
        const figure = this.SUBRULE(this.figure, { ARGS: ['length'] });
        this.ACTION(() => this.#constant('index', figure));
      },
    },
    {
      ALT: () => {
        const key = this.CONSUME(T.MaterialKey);
        this.expect(key, T.Figure, T.SignApart);
        this.ACTION(() => this.#lensAt(spanOf(key)));
        const figure = this.OPTION(() => this.SUBRULE2(this.figure, { ARGS: ['length'] }));
        this.ACTION(() => figure && this.#constant(key.payload as 'abbe', figure));
      },
    },
    {
      ALT: () => {
        const word = this.CONSUME(T.EyeToken);
        this.expect(word, T.NameToken, T.Figure, T.SignApart, T.MaterialKey);
        this.ACTION(() => this.#lenses.push(new MaterialDraft(eyeOf(word))));
      },
    },
    { ALT: () => this.CONSUME(T.Comma) },
  ];

  #lensAt(span: Span): MaterialDraft {
    let draft = this.#lenses.at(-1);
    if (!draft) {
      draft = new MaterialDraft(null);
      draft.start = span.start;
      this.#lenses.push(draft);
    }
    draft.end = span.end;
    return draft;
  }

  #name(token: IToken): void {
    if (this.RECORDING_PHASE) return;
    const draft = this.#lensAt(spanOf(token));
    draft.name = this.once(draft.name, nameOf(token));
  }

  #constant(key: 'index' | 'abbe' | 'density', figure: Figure): void {
    const draft = this.#lensAt(figure);
    draft[key] = this.once(draft[key], figure);
  }
}

/** Gathers what is said about the material of one lens. */
class MaterialDraft {
  readonly eye: EyeWord | null;
  name: Name | null = null;
  index: Figure | null = null;
  abbe: Figure | null = null;
  density: Figure | null = null;
  start: number;
  end: number;

  constructor(eye: EyeWord | null) {
    this.eye = eye;
    this.start = eye?.start ?? 0;
    this.end = eye?.end ?? 0;
  }
}

/** Gathers the parts of one design in whatever order they are written. */
class DesignDraft {
  type: DesignType | null = null;
  use: DesignNode['use'] = null;
  shape: DesignNode['shape'] = null;
  readonly figures: Record<FigureName, Figure | null> = {
    intermediate: null,
    width: null,
    depth: null,
    gap: null,
    corridor: null,
    degression: null,
    working: null,
  };
  start = -1;
  end = 0;

  get started(): boolean {
    return this.start >= 0;
  }

  reach({ start, end }: Span): void {
    if (this.start < 0) this.start = start;
    if (end > this.end) this.end = end;
  }

  node(): DesignNode {
    const { use } = this;
    const type = this.type ?? this.#typeOfSegment();
    // A depth by a width alone, `7x28`, is the flat-top trifocal of the trade.
    const shape = this.shape ?? (type !== this.type && this.figures.depth ? 'flat-top' : null);
    return { type, use, shape, ...this.figures, start: Math.max(this.start, 0), end: this.end };
  }

  /** A segment that is named alone says what the lens is: one with a depth and a width is a trifocal, any other a bifocal. */
  #typeOfSegment(): DesignType | null {
    const { depth, gap } = this.figures;
    if (depth) return 'trifocal';
    if (!this.shape) return null;
    return gap ? 'double' : 'bifocal';
  }
}
