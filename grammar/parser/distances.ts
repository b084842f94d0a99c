/** Distances between the pupils or between points of the lenses. */
import type { IToken } from 'chevrotain';
import { readFigure } from '../figures';
import * as T from '../tokens';
import type { EyeOrBoth, EyeWord, Figure, PdNode } from '../tree';
import { type Alternative, eyeOf, LONGEST_MONOCULAR, spanOf } from './amounts';
import { SurfaceParser } from './surfaces';

export interface PdParts {
  readonly distance: PdNode;
  readonly near: PdNode;
}

/** A figure with the sign that stands apart from it. */
interface Piece {
  readonly token: IToken;
  readonly sign: IToken | null;
  /** Whether a stroke or a comma joins it to the figure before. */
  readonly joined: boolean;
}

/** The figures behind one eye word, behind `near`, or at the beginning of the line. */
interface Group {
  /** The eye word or `near` that opens the group. */
  readonly word: IToken | null;
  readonly eye: EyeWord | null;
  readonly near: boolean;
  readonly pieces: Piece[];
}

export class DistanceParser extends SurfaceParser {
  #groups: Group[] = [];
  #joined = false;
  #hasNear = true;

  /**
   * Distance first, then `near`: `63 near 60`, `R 31.5 L 31.5 near R 30 L 30`, `63/60`. A line of one distance alone, such
   * as the optical centres, has no near part.
   */
  readonly pdLine = this.RULE('pdLine', (hasNear: boolean): PdParts => {
    this.#joined = false;
    this.#hasNear = hasNear;
    this.#groups = [{ word: null, eye: null, near: false, pieces: [] }];
    this.MANY(this.#pdPart);
    this.OPTION(this.ended);
    return this.ACTION(this.#pdNode);
  });

  readonly #pdPart = {
    GATE: () => this.#hasNear || this.LA(1).tokenType !== T.Near,
    DEF: () => this.OR(this.#pdParts),
  };

  readonly #pdParts: Alternative[] = [
    { ALT: () => this.#piece(this.CONSUME(T.Figure), null) },
    {
      ALT: () => {
        const sign = this.CONSUME(T.SignApart);
        this.#piece(this.CONSUME2(T.Figure), sign);
      },
    },
    { ALT: () => this.#groups.push({ word: this.CONSUME(T.Near), eye: null, near: true, pieces: [] }) },
    {
      ALT: () => {
        const word = this.CONSUME(T.EyeToken);
        this.#groups.push({ word, eye: eyeOf(word), near: this.#group.near, pieces: [] });
      },
    },
    { ALT: () => this.#join(this.CONSUME(T.Slash)) },
    { ALT: () => this.#join(this.CONSUME(T.Comma)) },
    { ALT: () => this.CONSUME(T.Unit) },
  ];

  #piece(token: IToken, sign: IToken | null): void {
    this.#group.pieces.push({ token, sign, joined: this.#joined });
    this.#joined = false;
  }

  #join(mark: IToken): void {
    this.#joined = mark.startOffset >= 0;
  }

  get #group(): Group {
    return this.#groups.at(-1) as Group;
  }

  readonly #pdNode = (): PdParts => {
    const far = new Distances();
    const near = new Distances();
    for (const group of this.#groups) {
      const sides = group.near ? near : far;
      const [first, second, third] = group.pieces;
      if (!first) this.#expectFigures(group);
      else if (third) this.refusePair(first.token, (group.pieces.at(-1) as Piece).token);
      else if (second) this.#pair(first, second, group, far, near);
      else this.#put(sides, group.eye?.eye ?? null, this.#single(first, group));
    }
    return { distance: far.node(), near: near.node() };
  };

  /** An eye word or `near` without a figure is told, unless an eye word follows `near`. */
  #expectFigures({ word, eye }: Group): void {
    if (word && (eye || this.#group.word === word)) this.tellMissing(word);
  }

  #single({ token, sign }: Piece, { near, eye }: Pick<Group, 'near' | 'eye'>): Figure {
    if (near && (sign || /^[^\d.,]/.test(token.image))) {
      // A signed value behind `near` is a power, not a distance.
      const span = { start: (sign ?? token).startOffset, end: T.endOf(token) };
      this.refuse(span);
      return { value: null, sign: '', decimals: 0, ...span };
    }
    if (!eye && this.isPair(token)) return this.refusePair(token);
    return readFigure(token, 'length', this.tell, sign && { sign, after: this.head });
  }

  /** Two figures with a slash, a comma, a blank or a dash between them. */
  #pair(first: Piece, second: Piece, { near: isNear, eye }: Group, far: Distances, near: Distances): void {
    if (second.sign || (T.touches(first.token, second.token) && /^[^\d.,]/.test(second.token.image))) {
      this.refusePair(first.token, second.token);
      return;
    }
    if (!second.joined) {
      this.#put(isNear ? near : far, eye?.eye ?? null, this.#single(first, { near: isNear, eye }));
      this.refuse(spanOf(second.token));
      return;
    }
    const one = readFigure(first.token, 'length', this.tell, first.sign && { sign: first.sign, after: this.head });
    const other = readFigure(second.token, 'length', this.tell);
    const wide = [one, other].map(({ value }) => (value ?? 0) > LONGEST_MONOCULAR);
    if (isNear ? eye || wide[0] || wide[1] : !eye && wide[0] !== wide[1]) {
      this.refusePair(first.token, second.token);
      return;
    }
    const distanceAndNear = eye !== null || wide[0] === true;
    const meaning = distanceAndNear ? 'distance-near' : 'right-left';
    this.tell({ code: 'slash-pair', start: one.start, end: other.end, data: { meaning } });
    const sides = isNear ? near : far;
    this.#put(sides, distanceAndNear ? (eye?.eye ?? null) : 'R', one);
    this.#put(distanceAndNear ? near : sides, distanceAndNear ? (eye?.eye ?? null) : 'L', other);
  }

  #put(sides: Distances, eye: EyeOrBoth | null, figure: Figure): void {
    if (!sides.put(eye, figure)) this.refuse(figure);
  }
}

/** The figures of one distance: without an eye binocular, for an eye monocular. */
class Distances {
  #binocular: Figure | null = null;
  #right: Figure | null = null;
  #left: Figure | null = null;

  /** Puts a figure in its place unless another one is there already. */
  put(eye: EyeOrBoth | null, figure: Figure): boolean {
    if (eye === null) {
      if (this.#binocular) return false;
      this.#binocular = figure;
      return true;
    }
    if ((eye !== 'L' && this.#right) || (eye !== 'R' && this.#left)) return false;
    if (eye !== 'L') this.#right = figure;
    if (eye !== 'R') this.#left = figure;
    return true;
  }

  node(): PdNode {
    return { binocular: this.#binocular, right: this.#right, left: this.#left };
  }
}
