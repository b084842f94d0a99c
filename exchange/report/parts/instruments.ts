/** Each instrument over time: its zero, its test lenses, how it reads against the others, and whether its check is due. */
import { linearRegression } from 'simple-statistics';
import {
  type Instrument,
  type Measure,
  type Quantity,
  type Reading,
  tidy,
  type Unit,
  uncertaintyOf,
} from '../../../orders';
import { daysBetween, mondayOf, weekOf } from '../calendar';
import { firstReading, type Seen, usableDay } from '../seen';
import { type Difference, differenceOf } from '../statistics/difference';
import { Named } from '../statistics/named';
import { Sample, together } from '../statistics/sample';
import { SMALL } from '../statistics/small';
import type { Spread } from './deviations';
import { instrumentNameOf } from './reader';

export interface ZeroWeek {
  readonly week: string;
  readonly from: string;
  readonly readings: number;
  readonly mean: number;
  readonly least: number;
  readonly most: number;
}

export interface ZeroJson extends Spread {
  readonly readings: number;
  readonly small: boolean;
  readonly weeks: readonly ZeroWeek[];
  /** Dioptres in thirty days, by a straight line through the means of the weeks; null below three weeks. */
  readonly drift: number | null;
}

export interface ReferenceJson {
  /** Day of the calibration, where the file says one. */
  readonly day: string | null;
  readonly nominal: number;
  readonly read: number;
  readonly error: number;
  /** How far the instrument may be off at that power: as stated for it, or the indication limit of ISO 8598:1996. */
  readonly allowed: number | null;
}

export interface BiasJson extends Difference {
  readonly quantity: Quantity;
  readonly unit: Unit;
  /** First readings taken on this instrument, and the mean of their deviations. */
  readonly readings: number;
  readonly mean: number;
  readonly otherReadings: number;
  readonly otherMean: number;
}

export interface InstrumentJson {
  readonly name: string;
  readonly kind: string | null;
  readonly readings: number;
  /** The latest day on which a check is due, as declared anywhere. */
  readonly due: string | null;
  readonly overdue: boolean;
  /** Readings taken after the day that held for them. */
  readonly readingsOverdue: number;
  readonly zero: ZeroJson | null;
  readonly reference: readonly ReferenceJson[];
  readonly bias: readonly BiasJson[];
}

/** What a focimeter reads with a sign, so that a mean of it shows to which side an instrument leans. */
const LEANING: readonly Quantity[] = ['power', 'cylinder', 'axis', 'add'];

/** Test readings of one instrument that are kept. */
const MOST_REFERENCE = 400;

class Device {
  kind: string | null = null;
  readings = 0;
  due: string | null = null;
  readingsOverdue = 0;
  readonly zero = new Sample();
  readonly zeroWeeks = new Map<string, Sample>();
  readonly reference = new Map<string, ReferenceJson>();
  readonly leaning = new Map<Quantity, { readonly unit: Unit; readonly sample: Sample }>();
}

export class Instruments {
  readonly #devices = new Named(() => new Device());
  readonly #declared = new WeakSet<Instrument>();

  /** Takes what a file or the bench file above it says of its instruments. */
  declare(instruments: Iterable<Instrument>): void {
    for (const one of instruments) {
      if (this.#declared.has(one)) continue;
      this.#declared.add(one);
      const device = this.#devices.of(one.name);
      device.kind ??= one.kind;
      if (one.due !== null && (device.due === null || one.due > device.due)) device.due = one.due;
      for (const { nominal, read } of one.testLenses) {
        const key = `${one.calibrated} ${nominal} ${read}`;
        if (device.reference.size >= MOST_REFERENCE) break;
        const allowed = uncertaintyOf(one, 'D', nominal);
        device.reference.set(key, { day: one.calibrated, nominal, read, error: tidy(read - nominal), allowed });
      }
    }
  }

  add(seen: Seen): void {
    for (const reading of seen.order.readings) this.#reading(reading, seen.context.instruments);
    const first = firstReading(seen);
    if (first && seen.first) this.#lean(seen.first.evaluation.measures, seen.order.readings);
  }

  #reading({ with: own, date, zero, measurements }: Reading, declared: ReadonlyMap<string, Instrument>): void {
    const used = new Set([own, ...measurements.map((one) => one.with)]);
    for (const name of used) {
      if (name === null) continue;
      const device = this.#devices.of(name);
      device.readings++;
      const due = declared.get(name)?.due;
      if (date !== null && due && date > due) device.readingsOverdue++;
    }
    if (own === null || !zero) return;
    const device = this.#devices.of(own);
    device.zero.add(zero.value);
    const day = usableDay(date);
    if (day === null) return;
    const monday = mondayOf(day);
    const week = device.zeroWeeks.get(monday) ?? new Sample();
    device.zeroWeeks.set(monday, week);
    week.add(zero.value);
  }

  /** One figure for each quantity of a reading: its lenses share the instrument’s error, and are not several witnesses of it. */
  #lean(measures: readonly Measure[], readings: readonly Reading[]): void {
    const sums = new Map<string, { name: string; quantity: Quantity; unit: Unit; sum: number; count: number }>();
    for (const measure of measures) {
      const { quantity, deviation, unit } = measure;
      if (deviation === null || unit === null || !LEANING.includes(quantity)) continue;
      const name = instrumentNameOf(measure, readings);
      if (name === null) continue;
      const key = `${quantity} ${name}`;
      const kept = sums.get(key) ?? { name, quantity, unit, sum: 0, count: 0 };
      sums.set(key, { ...kept, sum: kept.sum + deviation, count: kept.count + 1 });
    }
    for (const { name, quantity, unit, sum, count } of sums.values()) {
      const { leaning } = this.#devices.of(name);
      const kept = leaning.get(quantity) ?? { unit, sample: new Sample() };
      leaning.set(quantity, kept);
      kept.sample.add(sum / count);
    }
  }

  /** @param today the day of the report */
  result(today: string | null): readonly InstrumentJson[] {
    const all = this.#devices.sorted();
    return all.map(([name, device]) => ({
      name,
      kind: device.kind,
      readings: device.readings,
      due: device.due,
      overdue: device.due !== null && today !== null && device.due < today,
      readingsOverdue: device.readingsOverdue,
      zero: zeroOf(device),
      reference: [...device.reference.values()].sort(
        (a, b) => (a.day ?? '').localeCompare(b.day ?? '', 'en') || a.nominal - b.nominal,
      ),
      bias: biasOf(
        device,
        all.map(([, one]) => one),
      ),
    }));
  }
}

function zeroOf({ zero, zeroWeeks }: Device): ZeroJson | null {
  const moments = zero.moments();
  if (!moments) return null;
  const weeks = [...zeroWeeks]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([from, sample]): ZeroWeek[] => {
      const week = sample.moments();
      if (!week) return [];
      const { count, mean, least, most } = week;
      return [{ week: weekOf(from), from, readings: count, mean: tidy(mean), least: tidy(least), most: tidy(most) }];
    });
  const start = weeks[0]?.from;
  const line =
    weeks.length < 3 || !start
      ? null
      : linearRegression(weeks.map(({ from, mean }) => [daysBetween(start, from), mean]));
  return {
    readings: moments.count,
    small: moments.count < SMALL,
    mean: tidy(moments.mean),
    sd: moments.sd === null ? null : tidy(moments.sd),
    least: tidy(moments.least),
    most: tidy(moments.most),
    weeks,
    drift: line && tidy(line.m * 30),
  };
}

function biasOf(device: Device, all: readonly Device[]): readonly BiasJson[] {
  return LEANING.flatMap((quantity) => {
    const own = device.leaning.get(quantity);
    const mine = own?.sample.moments();
    const others = together(
      all.flatMap((one) => (one === device ? [] : (one.leaning.get(quantity)?.sample.moments() ?? []))),
    );
    if (!own || !mine || !others) return [];
    return [
      {
        quantity,
        unit: own.unit,
        readings: mine.count,
        mean: tidy(mine.mean),
        otherReadings: others.count,
        otherMean: tidy(others.mean),
        ...differenceOf(mine, others),
      },
    ];
  });
}
