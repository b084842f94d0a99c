/** What is read on the surfaces of each lens: with the lens measure, and at the segment. */
import * as T from '../tokens';
import type { ClockNode, Figure, ForEye, MeridianNode, SegmentNode, Span } from '../tree';
import { MeasureParser } from './measures';

export class SurfaceParser extends MeasureParser {
  readonly clockLine = this.RULE('clockLine', (): ForEye<ClockNode>[] => this.byEye(this.#clockParts));

  readonly #clockParts = this.partsByEye(() => this.SUBRULE(this.clockValue));

  readonly clockValue = this.RULE('clockValue', (): ClockNode => {
    const first = this.SUBRULE(this.amount, { ARGS: ['difference'] });
    let segment: Figure | null = null;
    let meridian: Figure | null = null;
    let second: MeridianNode | null = null;
    this.OPTION(() =>
      this.OR([
        {
          ALT: () => {
            const arrow = this.CONSUME(T.Arrow);
            this.expect(arrow, T.Figure, T.SignApart, T.Plano, T.Infinite);
            this.OPTION2(() => {
              segment = this.SUBRULE2(this.amount, { ARGS: ['difference'] });
            });
          },
        },
        {
          ALT: () => {
            const at = this.CONSUME(T.At);
            this.expect(at, T.Figure);
            this.OPTION3(() => {
              meridian = this.SUBRULE(this.degrees);
            });
            this.OPTION4(() => {
              this.OR2([{ ALT: () => this.CONSUME(T.Slash) }, { ALT: () => this.CONSUME(T.Comma) }]);
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
      if (at && !other?.meridian) this.tell({ code: 'meridian-missing', start: first.start, end: last.end });
      return { distance: at ? null : first, segment, meridians, start: first.start, end: last.end };
    });
  });

  readonly secondMeridian = this.RULE('secondMeridian', (): MeridianNode | null => {
    let power: Figure | null = null;
    let meridian: Figure | null = null;
    this.OPTION(() => {
      power = this.SUBRULE(this.amount, { ARGS: ['difference'] });
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

  readonly segmentLine = this.RULE('segmentLine', (): ForEye<SegmentNode>[] => this.byEye(this.#segmentParts));

  readonly #segmentParts = this.partsByEye(() => this.SUBRULE(this.segmentValue));

  /** `28.0`, `28.0 tilt 1 nasal-up`, `tilt 1 nasal-up`. */
  readonly segmentValue = this.RULE('segmentValue', (): SegmentNode => {
    let width: Figure | null = null;
    let tilted: Tilted | null = null;
    this.OR([
      {
        ALT: () => {
          width = this.SUBRULE(this.figure, { ARGS: ['length'] });
          this.OPTION(() => {
            tilted = this.SUBRULE(this.segmentTilt);
          });
        },
      },
      {
        ALT: () => {
          tilted = this.SUBRULE2(this.segmentTilt);
        },
      },
    ]);
    return this.ACTION(() => {
      const { tilt = null, towards: tiltTowards = null } = (tilted ?? {}) as Partial<Tilted>;
      const parts = [width, tilted].filter((part) => part !== null) as unknown as readonly Span[];
      return { width, tilt, tiltTowards, start: parts[0]?.start ?? 0, end: parts.at(-1)?.end ?? 0 };
    });
  });

  readonly segmentTilt = this.RULE('segmentTilt', (): Tilted => {
    const word = this.CONSUME(T.Tilt);
    this.expect(word, T.Figure, T.SignApart);
    const tilt = this.OPTION(() => this.SUBRULE(this.figure, { ARGS: ['plain'] }));
    const end = this.OPTION2(() => this.CONSUME(T.TiltEnd));
    return this.ACTION(() => ({
      tilt: tilt ?? null,
      towards: (end?.payload as SegmentNode['tiltTowards'] | undefined) ?? null,
      start: word.startOffset,
      end: end ? T.endOf(end) : (tilt?.end ?? T.endOf(word)),
    }));
  });
}

interface Tilted extends Span {
  readonly tilt: Figure | null;
  readonly towards: SegmentNode['tiltTowards'];
}
