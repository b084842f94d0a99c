/** Powers: sphere with cylinder and axis, two principal meridians, or two drum positions; and additions. */
import type { IToken } from 'chevrotain';
import type { ApartSign } from '../figures';
import * as T from '../tokens';
import type { AddNode, EyeWord, Figure, ForEye, PowerNode, Span } from '../tree';
import { type Alternative, spanOf } from './amounts';
import { PowerDraft } from './power-draft';
import { PrismParser } from './prism';

export class PowerParser extends PrismParser {
  readonly #draft = new PowerDraft(this);

  /**
   * `-4.50 -0.75 x 022`, `-4.50 DS`, `-4.50 @ 022 / -5.25 @ 112`. The parts may come in any number and form; the draft
   * knows what each of them can mean where it stands.
   */
  readonly power = this.RULE('power', (): PowerNode | null => {
    this.#draft.reset();
    this.AT_LEAST_ONE(this.#powerPart);
    return this.ACTION(this.#powerNode);
  });

  readonly #powerPart = () => this.OR(this.#powerParts);
  readonly #powerNode = () => this.#draft.node(this.LA(1));
  readonly #axisDegrees = () => this.SUBRULE(this.degrees);
  readonly #meridianDegrees = () => this.SUBRULE2(this.degrees);

  readonly #powerParts: Alternative[] = [
    { ALT: () => this.#figure(this.CONSUME(T.Figure), null) },
    {
      ALT: () => {
        const sign = this.CONSUME(T.SignApart);
        const apart = this.ACTION(() => this.apart(sign));
        this.#figure(this.CONSUME2(T.Figure), apart);
      },
    },
    { ALT: () => this.#part('plano', this.CONSUME(T.Plano)) },
    { ALT: () => this.#part('plano', this.CONSUME(T.Infinite)) },
    { ALT: () => this.#axis(this.CONSUME(T.Cross), this.OPTION(this.#axisDegrees)) },
    { ALT: () => this.#axis(this.CONSUME(T.AxisLabel), this.OPTION2(this.#meridianDegrees)) },
    {
      ALT: () => {
        const at = this.CONSUME(T.At);
        const degrees = this.OPTION3(() => this.SUBRULE3(this.degrees));
        this.ACTION(() => this.#draft.at(at, degrees ?? null));
      },
    },
    { ALT: () => this.#part('slash', this.CONSUME(T.Slash)) },
    {
      ALT: () => {
        const comma = this.CONSUME(T.Comma);
        // Before another eye it separates the two, as a stroke does.
        if (this.LA(1).tokenType !== T.EyeToken) this.#part('loose', comma);
      },
    },
    { ALT: () => this.#part('loose', this.CONSUME(T.OpenParen)) },
    { ALT: () => this.CONSUME(T.CloseParen) },
    { ALT: () => this.#part('mark', this.CONSUME(T.Dash)) },
    { ALT: () => this.#part('sphereLabel', this.CONSUME(T.SphereLabel)) },
    { ALT: () => this.#part('cylinderLabel', this.CONSUME(T.CylinderLabel)) },
    { ALT: () => this.#part('noCylinder', this.CONSUME(T.NoCylinder)) },
    { ALT: () => this.#part('unit', this.CONSUME(T.Unit)) },
    { ALT: () => this.#part('base', this.CONSUME(T.BaseWord)) },
  ];

  #part(what: Part, token: IToken): void {
    if (!this.RECORDING_PHASE) this.#draft[what](token);
  }

  #figure(token: IToken, apart: ApartSign | null): void {
    if (!this.RECORDING_PHASE) this.#draft.figure(token, apart);
  }

  #axis(word: IToken, degrees: Figure | undefined): void {
    if (!this.RECORDING_PHASE) this.#draft.axis(word, degrees ?? null);
  }

  #thin: Figure | null = null;
  #wide: Figure | null = null;
  #unnamed: Figure[] = [];
  #drumEnd = 0;

  /** `lines -4.50 / -5.12 x 024`, `lines wide -5.12 thin -4.50 x 024`. */
  readonly drum = this.RULE('drum', (): PowerNode => {
    this.#thin = this.#wide = null;
    this.#unnamed = [];
    const start = this.SUBRULE(this.drumWord);
    this.MANY(this.#drumPart);
    const cross = this.OPTION(this.#drumCross);
    const wheel = cross ? this.OPTION2(this.#axisDegrees) : undefined;
    return this.ACTION(() => {
      const thin = this.#thin ?? this.#unnamed.shift() ?? null;
      const wide = this.#wide ?? this.#unnamed.shift() ?? null;
      for (const extra of this.#unnamed) this.refuse(extra);
      const end = Math.max(this.#drumEnd, cross ? T.endOf(cross) : 0, wheel?.end ?? 0);
      this.#checkDrum({ start, end }, thin, wide, cross ?? null, wheel ?? null);
      return { form: 'lines', thin, wide, wheel: wheel ?? null, start, end };
    });
  });

  readonly #drumPart = () => this.OR(this.#drumParts);
  readonly #drumCross = () => this.OR2(this.#drumCrosses) as IToken;

  readonly #drumCrosses: Alternative[] = [
    { ALT: () => this.CONSUME(T.Cross) },
    { ALT: () => this.CONSUME(T.AxisLabel) },
    { ALT: () => this.CONSUME(T.At) },
  ];

  readonly #drumParts: Alternative[] = [
    { ALT: () => this.SUBRULE2(this.drumWord) },
    {
      ALT: () => {
        const figure = this.SUBRULE(this.amount, { ARGS: ['power'] });
        this.ACTION(() => {
          this.#unnamed.push(figure);
          this.#drumEnd = figure.end;
        });
      },
    },
    { ALT: () => this.CONSUME(T.Slash) },
    { ALT: () => this.CONSUME(T.Comma) },
  ];

  /** `lines`, `thin -4.50` or `wide -5.12`; returns where it starts. */
  readonly drumWord = this.RULE('drumWord', (): number => this.OR(this.#drumWords) as number);

  readonly #drumWords: Alternative[] = [
    { ALT: () => this.#drumFigure(this.CONSUME(T.Lines), undefined) },
    {
      ALT: () => {
        const word = this.CONSUME(T.Wide);
        this.#expectFigure(word);
        const figure = this.OPTION(() => this.SUBRULE(this.amount, { ARGS: ['power'] }));
        this.ACTION(() => {
          this.#wide = this.once(this.#wide, figure ?? null);
        });
        return this.#drumFigure(word, figure);
      },
    },
    {
      ALT: () => {
        const word = this.CONSUME(T.Thin);
        this.#expectFigure(word);
        const figure = this.OPTION2(() => this.SUBRULE2(this.amount, { ARGS: ['power'] }));
        this.ACTION(() => {
          this.#thin = this.once(this.#thin, figure ?? null);
        });
        return this.#drumFigure(word, figure);
      },
    },
  ];

  #drumFigure(word: IToken, figure: Figure | undefined): number {
    this.#drumEnd = figure?.end ?? T.endOf(word);
    return word.startOffset;
  }

  #checkDrum(span: Span, thin: Figure | null, wide: Figure | null, cross: IToken | null, wheel: Figure | null): void {
    if (!thin || !wide) {
      const told = this.problems.some(({ code, start }) => code === 'value-missing' && start >= span.start);
      if (!told) this.tell({ code: 'value-missing', ...span, data: { word: 'lines' } });
    } else if (cross && !wheel) this.tell({ code: 'axis-missing', ...spanOf(cross) });
    else if (!wheel && thin.value !== null && wide.value !== null && thin.value !== wide.value)
      this.tell({ code: 'axis-missing', start: wide.start, end: wide.end });
  }

  #expectFigure(word: IToken): void {
    this.expect(word, T.Figure, T.SignApart, T.Plano, T.Infinite);
  }

  /** `+2.00`, `+2.25 intermediate +1.12`, `-4.50 -> -2.50 front-vertex`, `+2.00 engraved`. */
  readonly addValue = this.RULE('addValue', (): AddNode => {
    let value: Figure | null = this.SUBRULE(this.amount, { ARGS: ['add'] });
    let from: Figure | null = null;
    let to: Figure | null = null;
    let intermediate: Figure | null = null;
    let surface: AddNode['surface'] = null;
    let engraved = false;
    let end = 0;
    this.OPTION(() => {
      const arrow = this.CONSUME(T.Arrow);
      this.#expectFigure(arrow);
      this.ACTION(() => {
        from = this.#drumPosition(value as Figure);
        value = null;
        end = T.endOf(arrow);
      });
      this.OPTION2(() => {
        to = this.SUBRULE2(this.amount, { ARGS: ['power'] });
      });
    });
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            const word = this.CONSUME(T.Intermediate);
            this.#expectFigure(word);
            this.OPTION3(() => {
              const figure = this.SUBRULE3(this.amount, { ARGS: ['add'] });
              this.ACTION(() => {
                intermediate = this.once(intermediate, figure);
              });
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
            engraved = true;
            this.ACTION(() => {
              end = T.endOf(token);
            });
          },
        },
      ]),
    );
    return this.ACTION(() => {
      const first = (value ?? from) as Figure;
      for (const part of [first, to, intermediate] as (Figure | null)[]) if (part && part.end > end) end = part.end;
      return { value, from, to, intermediate, surface, engraved, start: first.start, end };
    });
  });

  /** The first of two drum positions was read as an add, which may go without a sign; a position may not. */
  #drumPosition(figure: Figure): Figure {
    if (figure.sign !== '' || !figure.value) return figure;
    this.tellInstead({ code: 'sign-missing', start: figure.start, end: figure.end });
    return { ...figure, value: null };
  }

  /** Adds with the eye named before each: `R +2.00 L +2.25`. */
  readonly addsByEye = this.RULE('addsByEye', (): ForEye<AddNode>[] => {
    const list: ForEye<AddNode>[] = [];
    this.AT_LEAST_ONE(() => {
      const word = this.CONSUME(T.EyeToken);
      this.#expectFigure(word);
      const eye = this.ACTION(() => ({ ...spanOf(word), eye: word.payload as EyeWord['eye'] }));
      const value = this.OPTION(() => this.SUBRULE(this.addValue));
      this.MANY(() => this.OR([{ ALT: () => this.CONSUME(T.Slash) }, { ALT: () => this.CONSUME(T.Comma) }]));
      this.ACTION(() => {
        if (value) list.push({ eye, value, start: eye.start, end: value.end });
      });
    });
    return list;
  });
}

type Part = 'plano' | 'slash' | 'loose' | 'mark' | 'sphereLabel' | 'cylinderLabel' | 'noCylinder' | 'unit' | 'base';
