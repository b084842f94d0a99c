/** Lines that end in free words: the results of tests, and tints. */
import type { IToken } from 'chevrotain';
import { nearestWord } from '../nearest';
import * as T from '../tokens';
import type { EyeWord, Figure, LineOf, Name, ResultNode, Setting } from '../tree';
import { wordOf as canonicalWord } from '../vocabulary';
import { type Alternative, eyeOf, nameOf, spanOf } from './amounts';
import { DesignParser } from './design';

export class ResultParser extends DesignParser {
  /** `brown absorbs 80`, `transmits 20`, `polarised 180`. */
  readonly tintLine = this.RULE('tintLine', (): Omit<LineOf<'tint'>, 'head' | 'kind'> => {
    let colour: Name | null = null;
    let bare: Figure | null = null;
    let key: IToken | null = null;
    const settings: Setting[] = [];
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            const token = this.CONSUME(T.NameToken);
            this.ACTION(() => {
              if (isShare(token) && this.#tellShare(settings, token)) return;
              if (key) this.tellMissing(key);
              key = canonicalWord('key', 'tint', token.image) ? token : null;
              if (key) return;
              const { start, end, text } = nameOf(token);
              colour = colour ? { start: colour.start, end, text: `${colour.text} ${text}` } : { start, end, text };
            });
          },
        },
        {
          ALT: () => {
            const figure = this.SUBRULE(this.figure, { ARGS: ['length'] });
            this.ACTION(() => {
              if (key) settings.push(this.#tintSetting(key, figure));
              else {
                bare = this.once(bare, figure);
                const { start, end, value } = figure;
                if (value !== null) this.tellInstead({ code: 'tint-unclear', start, end, data: { value } });
              }
              key = null;
            });
          },
        },
        // The per cent sign needs no shape of its own.
        {
          ALT: () => {
            const token = this.CONSUME(T.Other);
            this.ACTION(() => isShare(token) && this.#tellShare(settings, token));
          },
        },
        { ALT: () => this.CONSUME(T.Comma) },
      ]),
    );
    return this.ACTION(() => {
      if (key) this.tellMissing(key);
      return { colour, settings, bare };
    });
  });

  /** `polarised 80 %`: a filter has a direction, and its share is no direction. The figure is not taken. */
  #tellShare(settings: Setting[], mark: IToken): boolean {
    const last = settings.at(-1);
    if (last?.key.word !== 'polarised' || !last.figure || mark.startOffset < last.end) return false;
    settings.pop();
    const { value } = last.figure;
    this.tellInstead({ code: 'polarised-share', start: last.figure.start, end: T.endOf(mark), data: { value } });
    return true;
  }

  #tintSetting(token: IToken, figure: Figure): Setting {
    const word = canonicalWord('key', 'tint', token.image) as string;
    return { key: { ...spanOf(token), word }, figure, start: token.startOffset, end: figure.end };
  }

  #results: ResultNode[] = [];
  /** Eyes named since the last result. */
  #waiting: EyeWord[] = [];

  /**
   * The results of a test, whatever words stand for them: `passed`, `R passed L failed`, `failed R`. A word that is no
   * result begins the free words at the end, unless it stands where a result is due.
   */
  readonly resultLine = this.RULE('resultLine', (): readonly ResultNode[] => {
    this.#results = [];
    this.#waiting = [];
    this.keep(this.#results);
    this.MANY(this.#resultPart);
    return this.ACTION(() => this.#withLastEyes());
  });

  readonly #resultPart = { GATE: () => this.#isResultDue(), DEF: () => this.OR(this.#resultParts) };

  readonly #resultParts: Alternative[] = [
    {
      ALT: () => {
        const eye = eyeOf(this.CONSUME(T.EyeToken));
        this.ACTION(() => this.#waiting.push(eye));
      },
    },
    { ALT: () => this.#result(this.CONSUME(T.Word)) },
    { ALT: () => this.#result(this.CONSUME(T.Answer)) },
  ];

  #isResultDue(): boolean {
    const { tokenType, image } = this.LA(1);
    if (tokenType !== T.Word && tokenType !== T.Answer) return true;
    const last = this.#results.at(-1);
    if (!last || RESULTS.includes(image.toLowerCase()) || nearestWord(image, RESULTS)) return true;
    return this.#waiting.length > 0 && last.eyes.length > 0;
  }

  #result(token: IToken): void {
    if (this.RECORDING_PHASE) return;
    this.#results.push({ ...spanOf(token), word: token.image.toLowerCase(), eyes: this.#waiting });
    this.#waiting = [];
  }

  /** `failed R`: eyes behind a result that names none are its own. */
  #withLastEyes(): readonly ResultNode[] {
    const [last, waiting] = [this.#results.at(-1), this.#waiting];
    if (waiting.length === 0) return this.#results;
    if (last && last.eyes.length === 0) return [...this.#results.slice(0, -1), { ...last, eyes: waiting }];
    for (const { start, end, eye } of waiting) this.tell({ code: 'value-missing', start, end, data: { word: eye } });
    return this.#results;
  }
}

const isShare = ({ image }: IToken): boolean => /^(?:%|per-?cent|pct|per)$/i.test(image);

const RESULTS = ['passed', 'failed', 'batch'];
