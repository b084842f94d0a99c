import {
  type ComputedLens,
  computeLens,
  type Evaluation,
  type Eye,
  type Order,
  prismBeforeEye,
  type Reading,
  tidy,
  workedLens,
  workedPair,
} from '../../orders';
import { measureInJson } from './measure-json';
import { plain, plainPower, rangeOf } from './plain';
import type { LensJson, OrderJson, ReadingJson } from './shape';
import { workedInJson } from './worked-json';

export interface JsonOptions {
  /** Leaves out the figures worked out from the order; they make most of the text. */
  readonly brief?: boolean;
}

/** An order with its lenses, readings and measures for JSON. */
export function orderInJson(
  order: Order,
  evaluation: Evaluation,
  firstLine: number,
  { brief = false }: JsonOptions = {},
): OrderJson {
  const { verdict, reservations, standard, evidence, measures } = evaluation;
  const { decided } = order;
  return {
    name: order.name,
    range: rangeOf(order.place, firstLine),
    verdict,
    reservations,
    standard,
    evidence,
    lenses: { R: lensInJson(order, 'R', brief), L: lensInJson(order, 'L', brief) },
    worked: brief ? [] : workedPair(order).map(workedInJson),
    readings: order.readings.map((reading, index) => readingInJson(reading, index, evaluation, firstLine)),
    measures: measures.map((measure) => measureInJson(measure, firstLine)),
    decided: decided && { verdict: decided.verdict, by: decided.by, why: decided.why },
  };
}

function lensInJson(order: Order, eye: Eye, brief: boolean): LensJson | null {
  const lens = order.lenses[eye];
  if (lens.role === 'absent') return null;
  const computed = computeLens(order, eye);
  const prism = lens.prism && prismBeforeEye(lens.prism.value, eye);
  const base = { role: lens.role, prism: prism && { in: tidy(prism.in), up: tidy(prism.up) } };
  const worked = brief ? [] : workedLens(order, eye).map(workedInJson);
  return { ...base, ...(computed ? figuresOf(computed) : NO_FIGURES), worked };
}

type Figures = Omit<LensJson, 'role' | 'prism' | 'worked'>;

const NO_FIGURES: Figures = {
  ordered: null,
  made: null,
  minus: null,
  plus: null,
  meridians: [],
  sphericalEquivalent: null,
  near: null,
  decentration: null,
  segment: null,
  blank: null,
};

function figuresOf({ ordered, add, made, minus, plus, near, decentration, segment, ...rest }: ComputedLens): Figures {
  return {
    ordered: { ...plainPower(ordered), ...(add === null ? {} : { add: tidy(add) }) },
    made: made && plainPower(made),
    minus: plainPower(minus),
    plus: plainPower(plus),
    meridians: rest.meridians.map(({ meridian, power }) => ({ meridian: tidy(meridian), power: tidy(power) })),
    sphericalEquivalent: plain(rest.sphericalEquivalent),
    near: near && plainPower(near),
    decentration: decentration && {
      in: tidy(decentration.in),
      ...(decentration.up === null ? {} : { up: tidy(decentration.up) }),
    },
    segment: segment && { drop: plain(segment.drop), inset: plain(segment.inset) },
    blank: plain(rest.blank),
  };
}

function readingInJson(reading: Reading, index: number, { earlier }: Evaluation, firstLine: number): ReadingJson {
  const { date, time, by, stage, place } = reading;
  const replaced = earlier.filter((measure) => measure.reading === index);
  return {
    date,
    time,
    by,
    with: reading.with,
    stage,
    range: rangeOf(place, firstLine),
    ...(replaced.length > 0 ? { measures: replaced.map((measure) => measureInJson(measure, firstLine)) } : {}),
  };
}
