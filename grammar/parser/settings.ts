/** Lines of figures under keywords: frame, position of wear, thickness. */
import type { IToken } from 'chevrotain';
import { readFigure } from '../figures';
import * as T from '../tokens';
import type { Figure, ForEye, Setting, SettingsWord, Word } from '../tree';
import { type Alternative, eyeOf, spanOf } from './amounts';
import { DistanceParser } from './distances';

/** Angles may turn either way; every other figure of these lines is a length. */
const SIGNED_KEYS = new Set(['panto', 'wrap']);

interface Entry extends ForEye<readonly Setting[]> {
  readonly value: Setting[];
  end: number;
}

export class SettingsParser extends DistanceParser {
  #line: SettingsWord = 'frame';
  #list: Entry[] = [];
  /** The keyword that names the figures to come. */
  #key: Word | null = null;
  /** A keyword that the line does not know; the figure behind it goes with it. */
  #unknown = false;
  /** A keyword, an eye word or a box that still waits for a figure. */
  #waiting: IToken | null = null;
  /** `centre R 2.1 L 2.0` says the keyword once for both eyes. */
  #shared = false;
  /** The figure in front of `[]` or of a dash in its place. */
  #boxed: Figure | null = null;
  /** A figure just refused for want of a keyword; one that follows it is refused with it. */
  #bare: Figure | null = null;

  /** `A 52 B 36`, `52[]18`, `vertex 13 panto 8`, `R centre 2.1 L centre 2.0`, `centre R 2.1 L 2.0`. */
  readonly settings = this.RULE('settings', (line: SettingsWord): ForEye<readonly Setting[]>[] => {
    this.#line = line;
    this.#list = [];
    this.#key = this.#waiting = this.#boxed = this.#bare = null;
    this.#shared = this.#unknown = false;
    this.MANY(this.#settingPart);
    this.OPTION(this.ended);
    return this.ACTION(() => {
      this.#expectFigure();
      return this.#list;
    });
  });

  readonly #settingPart = () => this.OR(this.#settingParts);

  readonly #settingParts: Alternative[] = [
    { ALT: () => this.#keyword(this.CONSUME(T.Word)) },
    { ALT: () => this.#take(this.CONSUME(T.Figure), null) },
    {
      ALT: () => {
        const sign = this.CONSUME(T.SignApart);
        this.#take(this.CONSUME2(T.Figure), sign);
      },
    },
    { ALT: () => this.#eyeWord(this.CONSUME(T.EyeToken)) },
    { ALT: () => this.#box(this.CONSUME(T.Box)) },
    { ALT: () => this.CONSUME(T.Comma) },
    { ALT: () => this.CONSUME(T.Unit) },
    { ALT: () => this.CONSUME(T.Degree) },
  ];

  #keyword(token: IToken): void {
    if (this.RECORDING_PHASE) return;
    if (this.#waiting?.tokenType !== T.EyeToken) this.#expectFigure();
    this.#key = this.choose('key', this.#line, token);
    this.#unknown = this.#key === null;
    this.#waiting = this.#key ? token : null;
    this.#shared = false;
    this.#bare = null;
  }

  #eyeWord(token: IToken): void {
    if (this.RECORDING_PHASE) return;
    const eye = eyeOf(token);
    if (this.#waiting?.tokenType === T.Word) this.#shared = true;
    else this.#expectFigure();
    if (!this.#shared) this.#key = null;
    this.#bare = null;
    this.#list.push({ eye, value: [], start: eye.start, end: eye.end });
    this.#waiting = token;
  }

  #box(token: IToken): void {
    if (this.RECORDING_PHASE) return;
    if (!this.#boxed || this.#waiting) this.refuse(spanOf(token));
    else this.#waiting = token;
  }

  #take(token: IToken, sign: IToken | null): void {
    if (this.RECORDING_PHASE) return;
    const waiting = this.#waiting;
    this.#waiting = null;
    if (this.#boxed) {
      this.#putAs('a', this.#boxed);
      this.#putAs('dbl', readFigure(waiting ? token : this.#dashed(token), 'length', this.tell));
      this.#boxed = null;
      return;
    }
    const key = this.#key;
    const use = key && SIGNED_KEYS.has(key.word) ? 'difference' : 'length';
    const figure = readFigure(token, use, this.tell, sign && { sign, after: key?.word ?? null });
    const { start, end } = figure;
    if (!key) {
      if (this.#opensBox(token)) this.#boxed = figure;
      // A thickness without a word is the centre’s, as on most slips.
      else if (this.#line === 'thickness' && !this.#unknown && !this.#has('centre'))
        this.#put({ key: { word: 'centre', start, end: start }, figure, start, end });
      else if (!this.#unknown) {
        this.refuse({ start: this.#bare?.start ?? start, end });
        this.#bare ??= figure;
      }
      this.#unknown = false;
      return;
    }
    if (this.#has(key.word)) this.refuse({ start, end });
    else this.#put({ key, figure, start: this.#shared ? start : key.start, end });
    if (!this.#shared) this.#key = null;
  }

  /** Whether a bare figure is the first of `52[]18`, or of `52-18` as it stands on many frames. */
  #opensBox(token: IToken): boolean {
    if (this.#line !== 'frame') return false;
    const next = this.LA(1);
    return (
      next.tokenType === T.Box || (T.touches(token, next) && next.tokenType === T.Figure && !/^[\d+]/.test(next.image))
    );
  }

  /** The second figure of `52-18`, without the dash that was typed for a box. */
  #dashed(token: IToken): IToken {
    const start = token.startOffset;
    this.tell({ code: 'other-spelling', start, end: start + 1, data: { written: '[]' } });
    return { ...token, image: token.image.slice(1), startOffset: start + 1 };
  }

  #putAs(word: string, figure: Figure): void {
    const { start, end } = figure;
    this.#put({ key: { word, start, end }, figure, start, end });
  }

  #has(word: string): boolean {
    return this.#list.at(-1)?.value.some(({ key }) => key.word === word) ?? false;
  }

  #put(setting: Setting): void {
    let entry = this.#list.at(-1);
    if (!entry) {
      entry = { eye: null, value: [], start: setting.start, end: setting.end };
      this.#list.push(entry);
    }
    entry.value.push(setting);
    if (setting.end > entry.end) entry.end = setting.end;
  }

  /** Tells that a keyword, an eye or a box got no figure. */
  #expectFigure(): void {
    const token = this.#waiting;
    this.#waiting = null;
    if (!token) return;
    this.tellMissing(token);
    if (this.#boxed) this.#putAs('a', this.#boxed);
    this.#boxed = null;
    if (token.tokenType === T.Word && this.#key) this.#put({ key: this.#key, figure: null, ...spanOf(token) });
  }
}
