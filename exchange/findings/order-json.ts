import {
  type ComputedLens,
  computeLens,
  type Evaluation,
  type Eye,
  type Measure,
  type Order,
  prismBeforeEye,
  type Reading,
  type Worked,
  workedLens,
  workedPair,
} from '../../orders';
import { measureInJson } from './measure-json';
import { code, json, list, plain, plainPower, plainRange, said } from './plain';
import { workedInJson } from './worked-json';

export interface JsonOptions {
  /** Leaves out the figures worked out from the order; they make most of the text. */
  readonly brief?: boolean;
}

/** An order with its lenses, readings and measures as the text of an `OrderJson`. */
export function orderInJson(
  order: Order,
  evaluation: Evaluation,
  firstLine: number,
  { brief = false }: JsonOptions = {},
): string {
  const { verdict, reservations, unresolved, standard, guard, evidence, measures } = evaluation;
  const { decided } = order;
  const lenses = `{"R":${lensInJson(order, 'R', brief)},"L":${lensInJson(order, 'L', brief)}}`;
  const readings = list(order.readings, (reading, at) => readingInJson(reading, at, evaluation, firstLine));
  return (
    `{"name":${json(order.name)},"range":${plainRange(order.place, firstLine)},"verdict":"${verdict}"` +
    `,"reservations":${list(reservations, said)},"unresolved":${list(unresolved, said)},"standard":${said(standard)},"guard":"${guard}","evidence":${code(evidence)}` +
    `,"lenses":${lenses},"worked":${allWorked(brief ? [] : workedPair(order))}` +
    `,"readings":${readings},"measures":${allMeasures(measures, firstLine)}` +
    `,"decided":${json(decided && { verdict: decided.verdict, by: decided.by, why: decided.why })}}`
  );
}

const allWorked = (worked: readonly Worked[]): string => list(worked, workedInJson);

const allMeasures = (measures: readonly Measure[], firstLine: number): string =>
  list(measures, (measure) => measureInJson(measure, firstLine));

function lensInJson(order: Order, eye: Eye, brief: boolean): string {
  const lens = order.lenses[eye];
  if (lens.role === 'absent') return 'null';
  const computed = computeLens(order, eye);
  const prism = lens.prism && prismBeforeEye(lens.prism.value, eye);
  const prismText = prism ? `{"in":${plain(prism.in)},"up":${plain(prism.up)}}` : 'null';
  const worked = allWorked(brief ? [] : workedLens(order, eye));
  return `{"role":"${lens.role}","prism":${prismText},${computed ? figuresOf(computed) : NO_FIGURES},"worked":${worked}}`;
}

const NO_FIGURES =
  '"ordered":null,"made":null,"minus":null,"plus":null,"meridians":[],"sphericalEquivalent":null,"near":null' +
  ',"decentration":null,"segment":null,"blank":null';

function figuresOf({ ordered, add, made, minus, plus, near, decentration, segment, ...rest }: ComputedLens): string {
  const power = plainPower(ordered);
  const written = add === null ? power : `${power.slice(0, -1)},"add":${plain(add)}}`;
  const meridians = list(
    rest.meridians,
    ({ meridian, power }) => `{"meridian":${plain(meridian)},"power":${plain(power)}}`,
  );
  const up = decentration?.up == null ? '' : `,"up":${plain(decentration.up)}`;
  const moved = decentration ? `{"in":${plain(decentration.in)}${up}}` : 'null';
  const placed = segment ? `{"drop":${plain(segment.drop)},"inset":${plain(segment.inset)}}` : 'null';
  return (
    `"ordered":${written},"made":${plainPower(made)},"minus":${plainPower(minus)},"plus":${plainPower(plus)}` +
    `,"meridians":${meridians},"sphericalEquivalent":${plain(rest.sphericalEquivalent)},"near":${plainPower(near)}` +
    `,"decentration":${moved},"segment":${placed},"blank":${plain(rest.blank)}`
  );
}

function readingInJson(
  { date, time, by, with: instrument, stage, place }: Reading,
  index: number,
  { earlier }: Evaluation,
  firstLine: number,
): string {
  const replaced = earlier.filter((measure) => measure.reading === index);
  const measures = replaced.length > 0 ? `,"measures":${allMeasures(replaced, firstLine)}` : '';
  return (
    `{"date":${json(date)},"time":${json(time)},"by":${json(by)},"with":${json(instrument)},"stage":"${stage}"` +
    `,"range":${plainRange(place, firstLine)}${measures}}`
  );
}
