/** Folds analysed orders, one by one, into what a report needs. Its size does not grow with the number of orders. */
import { type BlockAnalysis, type Context, firstPassOf } from '../../orders';
import { Deviations } from './parts/deviations';
import { Failures } from './parts/failures';
import { Instruments } from './parts/instruments';
import { OpenOrders } from './parts/open-orders';
import { Operators } from './parts/operators';
import { Remakes } from './parts/remakes';
import { Repeats } from './parts/repeats';
import { Verdicts } from './parts/verdicts';
import { CAUTIONS, type ReportJson } from './report-json';
import { type Seen, usableDay } from './seen';
import { Frequency } from './statistics/named';

/** Files that could not be read are named up to so many, and counted beyond. */
const MOST_NAMED = 1_000;

/** What a report is made for. */
export interface ReportOptions {
  /** The day that ages are counted to, such as `2026-11-30`; without one, the newest day of a reading. */
  readonly date?: string | null;
}

/**
 * Call `openFile` before the blocks of a file, `block` for each of them in their order, and `unreadable` for a file that
 * gave none; `result` may be asked for at any time. The same calls give the same result, byte for byte.
 */
export interface ReportSummary {
  /** Begins a file; its blocks follow. */
  openFile(path: string, context: Context): void;
  /**
   * Adds a block of the file.
   * @param firstLine number of the block’s first line in its file, counted from 0
   */
  block(analysis: BlockAnalysis, firstLine: number): void;
  /** Adds a file that could not be read. */
  unreadable(path: string, error: string): void;
  /** The report on everything added up to now. */
  result(options?: ReportOptions): ReportJson;
}

/** A report with nothing in it yet. */
export const reportSummary = (): ReportSummary => new Summary();

class Summary implements ReportSummary {
  readonly #verdicts = new Verdicts();
  readonly #failures = new Failures();
  readonly #deviations = new Deviations();
  readonly #instruments = new Instruments();
  readonly #repeats = new Repeats();
  readonly #operators = new Operators();
  readonly #open = new OpenOrders();
  readonly #remakes = new Remakes();
  readonly #parts = [
    this.#verdicts,
    this.#failures,
    this.#deviations,
    this.#instruments,
    this.#repeats,
    this.#operators,
    this.#open,
    this.#remakes,
  ];
  readonly #standards = new Frequency();
  readonly #evidence = new Frequency();
  readonly #unreadable: { readonly path: string; readonly error: string }[] = [];
  #files = 0;
  #unread = 0;
  #orders = 0;
  #readings = 0;
  #from: string | null = null;
  #to: string | null = null;
  #path = '';
  #context: Context | null = null;

  /** Begins a file; its blocks follow. */
  openFile(path: string, context: Context): void {
    this.#files++;
    this.#path = path;
    this.#context = context;
    this.#instruments.declare(context.instruments.values());
  }

  /**
   * Adds a block of the file.
   * @param firstLine number of the block’s first line in its file, counted from 0
   */
  block(analysis: BlockAnalysis, firstLine: number): void {
    const { order, evaluation } = analysis;
    const context = this.#context;
    if (!order || !evaluation || !context) return;
    const where = { order: order.name, path: this.#path, line: firstLine + order.place.line + 1 };
    const seen: Seen = { analysis, order, evaluation, context, where, first: firstPassOf(analysis, context) };
    this.#orders++;
    this.#readings += order.readings.length;
    for (const { date } of order.readings) this.#widen(usableDay(date));
    this.#standards.add(evaluation.set ? (evaluation.standard ?? evaluation.set.id) : '');
    if (evaluation.evidence) this.#evidence.add(evaluation.evidence);
    for (const part of this.#parts) part.add(seen);
  }

  /** Adds a file that could not be read. */
  unreadable(path: string, error: string): void {
    this.#files++;
    this.#unread++;
    if (this.#unreadable.length < MOST_NAMED) this.#unreadable.push({ path, error });
  }

  /** The report on everything added up to now. */
  result({ date = null }: ReportOptions = {}): ReportJson {
    const today = date ?? this.#to;
    return {
      lentil: 1,
      scope: {
        files: this.#files,
        filesUnreadable: this.#unread,
        orders: this.#orders,
        readings: this.#readings,
        from: this.#from,
        to: this.#to,
        date: today,
        dateGiven: date !== null,
        standards: this.#standards
          .ranked()
          .map(({ name, count }) => ({ name: name === '' ? null : name, orders: count })),
        evidence: this.#evidence.ranked().map(({ name, count }) => ({ evidence: name, orders: count })),
      },
      firstPass: this.#verdicts.result(),
      failures: this.#failures.result(),
      deviations: this.#deviations.result(),
      instruments: this.#instruments.result(today),
      repeatability: this.#repeats.result(),
      operators: this.#operators.result(),
      open: this.#open.result(today),
      remakes: this.#remakes.result(),
      unreadable: this.#unreadable,
      cautions: CAUTIONS,
    };
  }

  #widen(day: string | null): void {
    if (day === null) return;
    if (this.#from === null || day < this.#from) this.#from = day;
    if (this.#to === null || day > this.#to) this.#to = day;
  }
}
