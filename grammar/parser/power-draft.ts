/** Gathers one power while its parts go by, in whatever order and form they are written. */
import type { IToken } from 'chevrotain';
import { type ApartSign, readFigure, type Tell, zeroAt } from '../figures';
import * as T from '../tokens';
import type { Figure, PowerNode, Problem, Span } from '../tree';

export interface Told {
  readonly tell: Tell;
  /** Tells one problem in place of the smaller ones inside its span. */
  tellInstead(problem: Problem): void;
}

/** A figure that is neither sphere, cylinder nor axis, and the base behind it. */
interface Stray {
  readonly start: number;
  end: number;
  base: string | null;
}

const spanOf = (token: IToken): Span => ({ start: token.startOffset, end: T.endOf(token) });

export class PowerDraft {
  readonly #told: Told;
  #start = -1;
  #end = 0;
  #sphere: Figure | null = null;
  /** The cylinder, or the power in the second meridian. */
  #second: Figure | null = null;
  /** The `@` behind the first power, and the meridians of both. */
  #at: IToken | null = null;
  #meridian: Figure | null = null;
  #square: Figure | null = null;
  /** The `x`, `axis` or `@` before the axis. */
  #cross: IToken | null = null;
  #axis: Figure | null = null;
  /** Figures that run into one another may be all there is to the power. */
  #touched = false;
  /** Said to have no cylinder. */
  #none = false;
  #slash: IToken | null = null;
  /** A dash in the place of the cylinder. */
  #dash: IToken | null = null;
  #stray: Stray | null = null;
  #label: IToken | null = null;
  #labelled = false;

  constructor(told: Told) {
    this.#told = told;
  }

  reset(): void {
    this.#start = -1;
    this.#end = 0;
    this.#sphere = this.#second = this.#meridian = this.#square = this.#axis = null;
    this.#at = this.#cross = this.#slash = this.#dash = this.#label = null;
    this.#none = this.#labelled = this.#touched = false;
    this.#stray = null;
  }

  figure(token: IToken, apart: ApartSign | null): void {
    this.#take(apart?.sign ?? token, token);
    this.#label = null;
    if (token.payload === T.TOUCHING) this.#touched = true;
    if (!this.#sphere) this.#sphere = readFigure(token, 'power', this.#told.tell, apart);
    else if (this.#second || this.#cross) this.#third(token, apart);
    else {
      this.#second = readFigure(token, 'power', this.#told.tell, apart);
      // With a cylinder behind it the dash only kept the two apart.
      if (this.#dash) this.#told.tellInstead({ code: 'loose-form', ...spanOf(this.#dash) });
      // `-4.50 DS -0.75 DC x 22`: the unit of the sphere was no statement about the cylinder.
      this.#none = false;
    }
  }

  plano(token: IToken): void {
    this.#take(token, token);
    this.#label = null;
    if (!this.#sphere) this.#sphere = zeroAt(token);
    else if (this.#at && !this.#second) this.#second = zeroAt(token);
    else this.noCylinder(token);
  }

  /** A dash in the place of a figure. */
  mark(token: IToken): void {
    const place = this.#sphere ? 'cylinder' : 'sphere';
    if (this.#second || this.#cross) {
      this.#unexpected(token);
      return;
    }
    this.#take(token, token);
    this.#told.tell({ code: 'lone-mark', ...spanOf(token), data: { place } });
    if (this.#sphere) {
      this.#none = true;
      this.#dash = token;
    } else this.#sphere = zeroAt(token);
  }

  slash(token: IToken): void {
    if (this.#sphere) this.#slash ??= token;
  }

  /** A comma or a bracket. */
  loose(token: IToken): void {
    this.#told.tell({ code: 'loose-form', ...spanOf(token) });
  }

  unit(token: IToken): void {
    if (this.#sphere) this.#take(token, token);
    else this.#unexpected(token);
  }

  sphereLabel(token: IToken): void {
    if (this.#sphere) this.noCylinder(token);
    else this.#takeLabel(token);
  }

  cylinderLabel(token: IToken): void {
    this.#takeLabel(token);
    if (this.#second) this.#label = null;
  }

  noCylinder(token: IToken): void {
    if (!this.#sphere) {
      this.#takeLabel(token);
      return;
    }
    if (this.#second || this.#at) {
      this.#unexpected(token);
      return;
    }
    this.#take(token, token);
    this.#none = true;
  }

  axis(word: IToken, axis: Figure | null): void {
    this.#take(word, word);
    if (axis) this.#end = axis.end;
    this.#label = null;
    if (this.#cross || this.#axis) this.#unexpected(word, axis);
    else {
      this.#cross = word;
      this.#axis = axis;
    }
  }

  at(word: IToken, degrees: Figure | null): void {
    if (!this.#sphere) {
      this.#unexpected(word, degrees);
      return;
    }
    const cylinder = this.#second !== null || this.#none || this.#cross !== null;
    if (!this.#at && cylinder) {
      this.axis(word, degrees);
      return;
    }
    this.#take(word, word);
    if (degrees) this.#end = degrees.end;
    if (!this.#at) {
      this.#at = word;
      this.#meridian = degrees;
    } else if (this.#second && !this.#square) this.#square = degrees;
    else this.#unexpected(word, degrees);
  }

  /** A base behind a figure that was not taken: that figure is a prism without its word. */
  base(token: IToken): void {
    if (!this.#stray || this.#stray.base) {
      this.#unexpected(token);
      return;
    }
    this.#take(token, token);
    this.#stray.end = T.endOf(token);
    this.#stray.base = token.image;
  }

  /** The power as it stands; null when there was nothing but marks. */
  node(next: IToken): PowerNode | null {
    if (this.#stray) {
      const { start, end, base } = this.#stray;
      // Behind an axis the figure is no third one; nothing was expected there.
      if (this.#cross) this.#told.tellInstead({ code: 'unexpected-text', start, end });
      else this.#told.tell({ code: 'third-figure', start, end, data: { base } });
    }
    if (this.#start < 0) return null;
    const span = { start: this.#start, end: this.#end };
    if (this.#label)
      this.#told.tellInstead({ code: 'value-missing', ...spanOf(this.#label), data: { word: this.#label.image } });
    return this.#at ? this.#meridians(this.#at) : this.#spheroCylinder(span, next);
  }

  #spheroCylinder({ start, end }: Span, next: IToken): PowerNode {
    const cross = this.#cross;
    let sphere = this.#sphere;
    let axis = this.#axis;
    const asked = cross?.tokenType === T.At && !this.#none;
    if (cross && asked) {
      this.#told.tellInstead({ code: 'axis-or-meridian', start: cross.startOffset, end: axis?.end ?? T.endOf(cross) });
      axis = null;
    } else if (cross && !axis) this.#told.tell({ code: 'axis-missing', ...spanOf(cross) });
    else if (axis && !this.#second && !this.#touched) {
      this.#told.tellInstead({ code: 'cylinder-missing', start, end });
      if (sphere) sphere = { ...sphere, value: null };
    } else if (!axis && this.#second?.value && !this.#stray)
      this.#told.tell({ code: 'axis-missing', start: this.#second.start, end: this.#second.end });
    if (this.#slash && sphere && !this.#second && !this.#none && !cross && next.tokenType !== T.EyeToken)
      this.#told.tell({ code: 'lone-mark', ...spanOf(this.#slash), data: { place: 'cylinder' } });
    return { form: 'sphero-cylinder', sphere, cylinder: this.#second, axis, start, end };
  }

  #meridians(at: IToken): PowerNode {
    const power = this.#sphere as Figure;
    const meridian = this.#meridian;
    const other = this.#second;
    const square = this.#square;
    const first = { power, meridian, start: power.start, end: meridian?.end ?? power.end };
    const second = other && { power: other, meridian: square, start: other.start, end: square?.end ?? other.end };
    const start = this.#start;
    const end = second?.end ?? first.end;
    if (this.#cross)
      this.#told.tellInstead({
        code: 'axis-or-meridian',
        start: this.#cross.startOffset,
        end: this.#axis?.end ?? T.endOf(this.#cross),
      });
    else if (!meridian) this.#told.tell({ code: 'value-missing', ...spanOf(at), data: { word: at.image } });
    else if (!square) this.#told.tell({ code: 'meridian-missing', start, end });
    else if (meridian.value !== null && square.value !== null && Math.abs(meridian.value - square.value) !== 90)
      this.#told.tell({ code: 'meridians-not-square', start: meridian.start, end: square.end });
    return { form: 'meridians', first, second, start, end };
  }

  /** A figure behind the cylinder is an axis only when it can be nothing else. */
  #third(token: IToken, apart: ApartSign | null): void {
    const value = Number(token.image);
    if (!apart && !this.#cross && !this.#at && !this.#axis && /^\d{1,3}$/.test(token.image) && value <= 180) {
      this.#told.tell({ code: 'axis-unmarked', ...spanOf(token), data: { digits: token.image.length, value } });
      this.#axis = { ...zeroAt(token), value: value === 0 ? 180 : value };
    } else if (this.#stray) this.#unexpected(token);
    else this.#stray = { start: apart?.sign.startOffset ?? token.startOffset, end: T.endOf(token), base: null };
  }

  #takeLabel(token: IToken): void {
    this.#take(token, token);
    this.#label = token;
    // One of them is enough to say that none is needed.
    if (!this.#labelled) this.loose(token);
    this.#labelled = true;
  }

  #unexpected(token: IToken, value: Span | null = null): void {
    this.#told.tellInstead({ code: 'unexpected-text', start: token.startOffset, end: value?.end ?? T.endOf(token) });
  }

  #take(first: IToken, last: IToken): void {
    if (this.#start < 0) this.#start = first.startOffset;
    if (T.endOf(last) > this.#end) this.#end = T.endOf(last);
  }
}
