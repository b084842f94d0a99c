/** Powers: sphere with cylinder and axis, two principal meridians, or two drum positions. */
import type { IToken } from 'chevrotain';
import { readAxis } from '../figures';
import * as T from '../tokens';
import type { AddNode, Figure, MeridianNode, PowerEntry, PowerNode, PrismComponent, Span } from '../tree';
import { AmountParser, eyeOf, isLoneDash, spanOf } from './amounts';

export class PowerParser extends AmountParser {
  /** `-4.50 -0.75 x 022`, `-4.50 DS`, `-4.50 @ 022 / -5.25 @ 112`. */
  readonly power = this.RULE('power', (): PowerNode | null => {
    let sphere: Figure | null = null;
    let label: Span | null = null;
    let meridian: Figure | null = null;
    let second: MeridianNode | null = null;
    let tail: CylinderPart | null = null;
    this.OR([
      {
        ALT: () => {
          sphere = this.SUBRULE(this.sphere);
        },
      },
      {
        ALT: () => {
          const token = this.CONSUME(T.SphereLabel);
          this.ACTION(() => {
            label = spanOf(token);
            this.tell({ code: 'loose-form', ...spanOf(token) });
          });
          this.OPTION(() => {
            sphere = this.SUBRULE2(this.sphere);
          });
        },
      },
    ]);
    this.OR2({
      // `@` right after the sphere opens the second form; after a cylinder it is asked about.
      IGNORE_AMBIGUITIES: true,
      DEF: [
        {
          ALT: () => {
            const at = this.CONSUME(T.At);
            this.ACTION(() => this.tellUnless(this.LA(1).tokenType === T.Figure, at));
            this.OPTION2(() => {
              meridian = this.SUBRULE(this.degrees);
              this.OPTION3(() => {
                second = this.SUBRULE(this.secondMeridian);
              });
            });
          },
        },
        {
          ALT: () => {
            tail = this.SUBRULE(this.cylinderPart);
          },
        },
      ],
    });
    return this.ACTION(() => {
      const power = sphere as Figure | null;
      if (!power) return null;
      const start = (label as Span | null)?.start ?? power.start;
      if (meridian) return this.#meridians(start, power, meridian, second);
      if (!tail) return { form: 'sphero-cylinder', sphere: power, cylinder: null, axis: null, start, end: power.end };
      return this.#spheroCylinder(start, power, tail as unknown as CylinderPart);
    });
  });

  /** The sphere’s place: a power, or a lone mark that says “nothing”. */
  readonly sphere = this.RULE('sphere', (): Figure => {
    const figure = this.SUBRULE(this.amount, { ARGS: ['power'] });
    return this.ACTION(() => {
      if (!isLoneDash(figure)) return figure;
      this.tellInstead({ code: 'lone-mark', start: figure.start, end: figure.end, data: { place: 'sphere' } });
      return { ...figure, value: 0, sign: '' };
    });
  });

  readonly secondMeridian = this.RULE('secondMeridian', (): MeridianNode | null => {
    let power: Figure | null = null;
    let meridian: Figure | null = null;
    this.OR([{ ALT: () => this.CONSUME(T.Slash) }, { ALT: () => this.CONSUME(T.Comma) }]);
    this.OPTION(() => {
      power = this.SUBRULE(this.amount, { ARGS: ['power'] });
      this.OPTION2(() => {
        this.CONSUME(T.At);
        this.OPTION3(() => {
          meridian = this.SUBRULE(this.degrees);
        });
      });
    });
    return this.ACTION(() => {
      const figure = power as Figure | null;
      const at = meridian as Figure | null;
      return figure && { power: figure, meridian: at, start: figure.start, end: at ? at.end : figure.end };
    });
  });

  readonly cylinderPart = this.RULE('cylinderPart', (): CylinderPart => {
    const part: Mutable<CylinderPart> = { cylinder: null, axis: NO_AXIS, none: false, end: 0 };
    let stroke: IToken | null = null;
    this.MANY(() => {
      const token = this.OR([
        { ALT: () => this.CONSUME(T.Slash) },
        { ALT: () => this.CONSUME(T.Comma) },
        { ALT: () => this.CONSUME(T.OpenParen) },
      ]);
      this.ACTION(() => {
        if (token.tokenType === T.Slash) stroke = token;
        this.#separator(token);
      });
    });
    this.OPTION(() => this.CONSUME(T.CylinderLabel));
    this.OPTION2(() =>
      this.OR2([
        {
          ALT: () => {
            const figure = this.SUBRULE(this.amount, { ARGS: ['power'] });
            this.ACTION(() => this.#cylinder(part, figure));
          },
        },
        { ALT: () => this.#none(part, this.CONSUME(T.NoCylinder)) },
        { ALT: () => this.#none(part, this.CONSUME(T.SphereLabel)) },
      ]),
    );
    // `-4.50 DS -0.75 DC x 22`: the unit of the sphere was no statement about the cylinder.
    this.OPTION3({
      GATE: () => part.none,
      DEF: () => {
        part.cylinder = this.SUBRULE2(this.amount, { ARGS: ['power'] });
        part.none = false;
      },
    });
    this.MANY2(() => this.OR3([{ ALT: () => this.CONSUME2(T.Slash) }, { ALT: () => this.CONSUME2(T.Comma) }]));
    this.OPTION4(() => {
      part.axis = this.SUBRULE(this.axisPart);
    });
    this.OPTION5(() => this.CONSUME(T.CloseParen));
    this.ACTION(() => this.#loneStroke(stroke, part));
    return part;
  });

  readonly axisPart = this.RULE('axisPart', (): AxisPart => {
    let axis: Figure | null = null;
    let from: IToken | null = null;
    let end = 0;
    this.OR([
      {
        ALT: () => {
          from = this.OR2([
            { ALT: () => this.CONSUME(T.Cross) },
            { ALT: () => this.CONSUME(T.AxisLabel) },
            { ALT: () => this.CONSUME(T.At) },
          ]);
          this.OPTION(() => {
            axis = this.SUBRULE(this.degrees);
          });
        },
      },
      {
        ALT: () => {
          const token = this.CONSUME(T.Figure);
          this.ACTION(() => {
            axis = this.#thirdFigure(token);
            end = T.endOf(token);
          });
        },
      },
      { ALT: () => this.CONSUME(T.Dash) },
    ]);
    return { axis, from, end };
  });

  /** `lines -4.50 / -5.12 x 024`, `lines wide -5.12 thin -4.50 x 024`. */
  readonly drum = this.RULE('drum', (): PowerNode => {
    const word = this.CONSUME(T.Lines);
    const unnamed: Figure[] = [];
    let thin: Figure | null = null;
    let wide: Figure | null = null;
    let wheel: Figure | null = null;
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            this.CONSUME(T.Wide);
            this.OPTION3(() => {
              wide = this.SUBRULE(this.amount, { ARGS: ['power'] });
            });
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.Thin);
            this.OPTION4(() => {
              thin = this.SUBRULE2(this.amount, { ARGS: ['power'] });
            });
          },
        },
        {
          ALT: () => {
            const figure = this.SUBRULE3(this.amount, { ARGS: ['power'] });
            this.ACTION(() => unnamed.push(figure));
          },
        },
        { ALT: () => this.CONSUME(T.Slash) },
        { ALT: () => this.CONSUME(T.Comma) },
      ]),
    );
    this.OPTION(() => {
      this.OR2([
        { ALT: () => this.CONSUME(T.Cross) },
        { ALT: () => this.CONSUME(T.AxisLabel) },
        { ALT: () => this.CONSUME(T.At) },
      ]);
      this.OPTION2(() => {
        wheel = this.SUBRULE(this.degrees);
      });
    });
    return this.ACTION(() => {
      thin ??= unnamed.shift() ?? null;
      wide ??= unnamed.shift() ?? null;
      for (const extra of unnamed) this.tell({ code: 'unexpected-text', start: extra.start, end: extra.end });
      const parts = [spanOf(word), thin, wide, wheel].filter((part) => part !== null) as Span[];
      return {
        form: 'lines',
        thin,
        wide,
        wheel,
        start: word.startOffset,
        end: Math.max(...parts.map(({ end }) => end)),
      };
    });
  });

  /** The power of one eye with what may follow it on the same line. */
  readonly entry = this.RULE('entry', (): PowerEntry => {
    const token = this.CONSUME(T.EyeToken);
    this.OPTION(() => this.CONSUME(T.Other));
    let power: PowerNode | null = null;
    let add: AddNode | null = null;
    let prism: PrismComponent[] = [];
    let baseCurve: Figure | null = null;
    let thickness: Figure | null = null;
    this.OPTION2(() => {
      power = this.OR([{ ALT: () => this.SUBRULE(this.drum) }, { ALT: () => this.SUBRULE(this.power) }]);
    });
    this.MANY(() =>
      this.OR2([
        {
          ALT: () => {
            add = this.SUBRULE(this.addClause);
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.PrismWord);
            this.OPTION3(() => {
              prism = this.SUBRULE(this.prisms);
            });
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.BaseCurveWord);
            this.OPTION4(() => {
              baseCurve = this.SUBRULE(this.amount, { ARGS: ['difference'] });
            });
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.ThicknessWord);
            this.OPTION5(() => this.CONSUME(T.Word));
            this.OPTION6(() => {
              thickness = this.SUBRULE(this.figure, { ARGS: ['length'] });
            });
          },
        },
        { ALT: () => this.CONSUME2(T.Comma) },
      ]),
    );
    return this.ACTION(() => {
      const ends = [power, add, ...prism, baseCurve, thickness].map((part) => (part as Span | null)?.end ?? 0);
      return {
        eye: eyeOf(token),
        power,
        add,
        prism,
        baseCurve,
        thickness,
        start: token.startOffset,
        end: Math.max(T.endOf(token), ...ends),
      };
    });
  });

  readonly addClause = this.RULE('addClause', (): AddNode => {
    const word = this.CONSUME(T.AddWord);
    let value: Figure | null = null;
    let intermediate: Figure | null = null;
    this.OPTION(() => {
      value = this.SUBRULE(this.amount, { ARGS: ['add'] });
    });
    this.OPTION2(() => {
      this.CONSUME(T.Intermediate);
      this.OPTION3(() => {
        intermediate = this.SUBRULE2(this.amount, { ARGS: ['add'] });
      });
    });
    return this.ACTION(() => ({
      value,
      intermediate,
      from: null,
      to: null,
      surface: null,
      engraved: false,
      start: word.startOffset,
      end: Math.max(T.endOf(word), (value as Figure | null)?.end ?? 0, (intermediate as Figure | null)?.end ?? 0),
    }));
  });

  /** A cylinder, or a lone mark in its place that says there is none. */
  #cylinder(part: Mutable<CylinderPart>, figure: Figure): void {
    if (!isLoneDash(figure)) {
      part.cylinder = figure;
      return;
    }
    this.tellInstead({ code: 'lone-mark', start: figure.start, end: figure.end, data: { place: 'cylinder' } });
    part.none = true;
    part.end = figure.end;
  }

  #none(part: Mutable<CylinderPart>, token: IToken): void {
    this.ACTION(() => {
      part.none = true;
      part.end = T.endOf(token);
    });
  }

  /** `-4.50 /` says “no cylinder”; before another eye the stroke only separates the two. */
  #loneStroke(stroke: IToken | null, part: CylinderPart): void {
    if (!stroke || part.cylinder || part.none || part.axis.from || part.axis.end > 0) return;
    if (this.LA(1).tokenType !== T.EyeToken)
      this.tell({ code: 'lone-mark', ...spanOf(stroke), data: { place: 'cylinder' } });
  }

  #separator(token: IToken): void {
    if (token.tokenType === T.OpenParen || token.tokenType === T.Comma)
      this.tell({ code: 'loose-form', ...spanOf(token) });
  }

  #thirdFigure(token: IToken): Figure | null {
    if (/^\d{1,3}$/.test(token.image) && Number(token.image) <= 180) {
      this.tell({ code: 'axis-unmarked', ...spanOf(token) });
      return readAxis(token, this.tell);
    }
    this.tell({ code: 'third-figure', ...spanOf(token) });
    return null;
  }

  #spheroCylinder(start: number, sphere: Figure, part: CylinderPart): PowerNode {
    const { axis, from } = part.axis;
    const end = Math.max(
      sphere.end,
      part.end,
      part.cylinder?.end ?? 0,
      axis?.end ?? 0,
      part.axis.end,
      from ? T.endOf(from) : 0,
    );
    const span = { start, end };
    const power = { form: 'sphero-cylinder' as const, sphere, cylinder: part.cylinder, axis, ...span };
    if (touching(sphere, part.cylinder)) {
      this.tellInstead({ code: 'figures-touch', ...span });
      return { ...power, sphere: { ...sphere, value: null }, cylinder: null, axis: null };
    }
    if (from?.tokenType === T.At && part.cylinder) {
      this.tellInstead({ code: 'axis-or-meridian', start: from.startOffset, end: axis?.end ?? T.endOf(from) });
      return { ...power, axis: null };
    }
    if (from && !axis) this.tell({ code: 'axis-missing', ...spanOf(from) });
    else if (!axis && part.axis.end === 0 && part.cylinder?.value)
      this.tell({ code: 'axis-missing', start: part.cylinder.start, end: part.cylinder.end });
    if (axis && !part.cylinder && !part.none) {
      this.tellInstead({ code: 'cylinder-missing', ...span });
      return { ...power, sphere: { ...sphere, value: null } };
    }
    return power;
  }

  #meridians(start: number, power: Figure, meridian: Figure, second: MeridianNode | null): PowerNode {
    const end = second?.end ?? meridian.end;
    if (!second?.meridian) this.tell({ code: 'meridian-missing', start, end });
    else if (
      meridian.value !== null &&
      second.meridian.value !== null &&
      Math.abs(meridian.value - second.meridian.value) !== 90
    ) {
      this.tell({ code: 'meridians-not-square', start: meridian.start, end: second.meridian.end });
    }
    return { form: 'meridians', first: { power, meridian, start: power.start, end: meridian.end }, second, start, end };
  }
}

interface CylinderPart {
  readonly cylinder: Figure | null;
  readonly axis: AxisPart;
  /** Said to have no cylinder. */
  readonly none: boolean;
  readonly end: number;
}

interface AxisPart {
  readonly axis: Figure | null;
  /** The `x`, `axis` or `@` before the axis. */
  readonly from: IToken | null;
  readonly end: number;
}

const NO_AXIS: AxisPart = { axis: null, from: null, end: 0 };

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** Figures may touch only when the second has a sign, as in `-4.50-0.75`. */
const touching = (first: Figure, second: Figure | null): boolean =>
  second !== null && second.start === first.end && second.sign === '';
