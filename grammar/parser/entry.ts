/** Lines of powers: one or two eyes with what may follow a power on the same line. */
import * as T from '../tokens';
import type { AddNode, EyeWord, Figure, ForEye, PowerEntry, PowerNode, PrismComponent } from '../tree';
import { type Alternative, eyeOf } from './amounts';
import { PowerParser } from './power';

type Entry = { -readonly [K in keyof PowerEntry]: PowerEntry[K] };

export class EntryParser extends PowerParser {
  #power: PowerNode | null = null;
  #add: AddNode | null = null;
  #prism: readonly PrismComponent[] = NOTHING;
  #baseCurve: Figure | null = null;
  #thickness: Figure | null = null;
  #end = 0;
  /** Adds and prisms at the end of the line that name their eyes themselves. */
  readonly #laterAdds: ForEye<AddNode>[] = [];
  readonly #laterPrisms: ForEye<readonly PrismComponent[]>[] = [];
  #entries: Entry[] = [];

  readonly powerLine = this.RULE('powerLine', (): PowerEntry[] => {
    const entries: Entry[] = [];
    this.#entries = entries;
    this.#laterAdds.length = this.#laterPrisms.length = 0;
    this.keep(entries);
    this.MANY(this.#entryOrSlash);
    this.OPTION(this.ended);
    if (this.#laterAdds.length + this.#laterPrisms.length > 0) this.#hand(entries);
    return entries;
  });

  readonly #entryOrSlash = () => this.OR(this.#entriesAndSlashes);

  readonly #entriesAndSlashes: Alternative[] = [
    {
      ALT: () => {
        const entry = this.SUBRULE(this.entry);
        this.ACTION(() => this.#entries.push(entry));
      },
    },
    { ALT: () => this.CONSUME(T.Slash) },
  ];

  /** The power of one eye with what may follow it on the same line. */
  readonly entry = this.RULE('entry', (): PowerEntry => {
    const eye = eyeOf(this.CONSUME(T.EyeToken));
    this.#power = this.#add = this.#baseCurve = this.#thickness = null;
    this.#prism = NOTHING;
    this.#end = 0;
    this.OPTION(this.#measured);
    this.MANY(this.#clause);
    return {
      eye,
      power: this.#power,
      add: this.#add,
      prism: this.#prism,
      baseCurve: this.#baseCurve,
      thickness: this.#thickness,
      start: eye.start,
      end: this.#end || eye.end,
    };
  });

  readonly #measured = () => this.OR(this.#powerOrDrum);

  readonly #powerOrDrum: Alternative[] = [
    { ALT: () => this.#takePower(this.SUBRULE(this.power)) },
    { ALT: () => this.#takePower(this.SUBRULE(this.drum)) },
  ];

  #takePower(power: PowerNode | null): void {
    this.#power = power;
    if (power) this.#end = power.end;
  }

  readonly #clause = () => this.OR2(this.#clauses);

  readonly #clauses: Alternative[] = [
    {
      ALT: () => {
        const word = this.CONSUME(T.AddWord);
        this.expect(word, T.Figure, T.SignApart, T.Plano, T.Infinite, T.EyeToken);
        this.#reach(T.endOf(word));
        this.OPTION2(() =>
          this.OR3([
            {
              ALT: () => {
                const value = this.SUBRULE(this.addValue);
                this.ACTION(() => {
                  this.#add = this.once(this.#add, { ...value, start: word.startOffset });
                  this.#reach(value.end);
                });
              },
            },
            {
              ALT: () => {
                const list = this.SUBRULE(this.addsByEye);
                this.ACTION(() => this.#laterAdds.push(...list));
              },
            },
          ]),
        );
      },
    },
    {
      ALT: () => {
        const word = this.CONSUME(T.PrismWord);
        this.expect(word, T.Figure, T.SignApart, T.BaseWord, T.EyeToken);
        this.#reach(T.endOf(word));
        this.OPTION3(() =>
          this.OR4([
            {
              ALT: () => {
                const prisms = this.SUBRULE(this.prisms);
                this.ACTION(() => this.#takePrisms(prisms));
              },
            },
            {
              ALT: () => {
                const list = this.SUBRULE(this.prismsByEye);
                this.ACTION(() => this.#laterPrisms.push(...list));
              },
            },
          ]),
        );
      },
    },
    {
      ALT: () => {
        const word = this.CONSUME(T.BaseCurveWord);
        this.expect(word, T.Figure, T.SignApart, T.Plano, T.Infinite);
        this.OPTION4(() => {
          const figure = this.SUBRULE(this.amount, { ARGS: ['difference'] });
          this.ACTION(() => {
            this.#baseCurve = this.once(this.#baseCurve, figure);
            this.#reach(figure.end);
          });
        });
      },
    },
    {
      ALT: () => {
        const word = this.CONSUME(T.ThicknessWord);
        this.expect(word, T.Figure, T.SignApart, T.Word);
        let isCentre = true;
        this.OPTION5(() => {
          const key = this.CONSUME(T.Word);
          this.expect(key, T.Figure, T.SignApart);
          this.ACTION(() => {
            isCentre = this.choose('key', 'kept', key) !== null;
          });
        });
        this.OPTION6(() => {
          const figure = this.SUBRULE(this.figure, { ARGS: ['length'] });
          this.ACTION(() => {
            if (isCentre) this.#thickness = this.once(this.#thickness, figure);
            this.#reach(figure.end);
          });
        });
      },
    },
    { ALT: () => this.CONSUME(T.Comma) },
  ];

  /** Prisms with the eye named before each: `R 2.00 BI L 2.00 BI`. */
  readonly prismsByEye = this.RULE('prismsByEye', (): ForEye<readonly PrismComponent[]>[] => {
    const list: ForEye<readonly PrismComponent[]>[] = [];
    this.AT_LEAST_ONE(() => {
      const word = this.CONSUME(T.EyeToken);
      this.expect(word, T.Figure, T.SignApart, T.BaseWord);
      const value = this.OPTION(() => this.SUBRULE(this.prisms));
      this.ACTION(() => {
        const eye: EyeWord = eyeOf(word);
        if (!value) return;
        list.push({ eye, value, start: eye.start, end: value.at(-1)?.end ?? eye.end });
      });
    });
    return list;
  });

  #takePrisms(prisms: readonly PrismComponent[]): void {
    const [first] = prisms;
    if (!first) return;
    const { end } = prisms.at(-1) as PrismComponent;
    if (this.#prism.length > 0) this.refuse({ start: first.start, end });
    else this.#prism = prisms;
    this.#reach(end);
  }

  #reach(end: number): void {
    if (end > this.#end) this.#end = end;
  }

  /** Gives adds and prisms that name their eyes to the entries of those eyes. */
  #hand(entries: Entry[]): void {
    for (const { eye, value } of this.#laterAdds) {
      const entry = this.#entryOf(entries, eye);
      entry.add = this.once(entry.add, value);
    }
    for (const { eye, value, start, end } of this.#laterPrisms) {
      const entry = this.#entryOf(entries, eye);
      if (entry.prism.length > 0) this.refuse({ start, end });
      else entry.prism = value;
    }
  }

  #entryOf(entries: Entry[], eye: EyeWord | null): Entry {
    const known = entries.find((entry) => entry.eye?.eye === eye?.eye);
    if (known) return known;
    const { start, end } = eye ?? { start: 0, end: 0 };
    const entry = { eye, power: null, add: null, prism: NOTHING, baseCurve: null, thickness: null, start, end };
    entries.push(entry);
    return entry;
  }

  /**
   * What two eyes on one line leave open. A prescription is written that way; a line of a job is better split.
   * @returns the entries, without a prism of which no one can tell the eye
   */
  checkTwoEyes(entries: readonly PowerEntry[], isPrescription: boolean): readonly PowerEntry[] {
    const [first] = entries;
    const last = entries.at(-1);
    if (!first || !last || entries.every(({ eye }) => eye?.eye === first.eye?.eye)) return entries;
    if (!isPrescription) this.tell({ code: 'two-eyes', start: first.start, end: last.end });
    const { add, prism } = last;
    if (isPrescription || !add || entries.some((entry) => entry !== last && entry.add)) return entries;
    this.tell({ code: 'add-for-both', start: add.start, end: add.end });
    const [one] = prism;
    // Behind an add that both eyes share, a prism may be meant for both as well.
    if (!one || one.start < add.start || prism === this.#laterPrisms.at(-1)?.value) return entries;
    this.tell({ code: 'prism-eye-unsaid', start: one.start, end: (prism.at(-1) as PrismComponent).end });
    return [...entries.slice(0, -1), { ...last, prism: NOTHING }];
  }
}

const NOTHING: readonly PrismComponent[] = [];
