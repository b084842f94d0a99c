import { type Measure, tidy } from '../../orders';
import { code, json, list, plain, plainRange, plainSteps, said } from './plain';

/** A measure as the text of a `MeasureJson`. What the library does not know stays null. */
export function measureInJson(measure: Measure, firstLine: number): string {
  const { quantity, meridian, eye, limit, outcome, reading, place, steps } = measure;
  const { tooCoarse, because, spread, uncertainty, house, beside } = measure;
  let text = `{"quantity":"${quantity}"`;
  if (meridian) text += `,"meridian":${meridian}`;
  text += `,"eye":${code(eye)},"ordered":${plain(measure.ordered)},"read":${plain(measure.read)},"deviation":${plain(measure.deviation)},"reading":${reading}`;
  text += `,"limit":${plain(limit?.amount ?? null)}`;
  if (AT_LEAST.has(quantity) && measure.ordered !== null) text += `,"low":${plain(measure.ordered)}`;
  text += `,"unit":${code(measure.unit)},"outcome":"${outcome}"`;
  text += limit
    ? `,"standard":${said(limit.set)},"evidence":${code(limit.evidence)},"source":${said(limit.source)},"row":${said(limit.row)}`
    : ',"standard":null,"evidence":null,"source":null,"row":null';
  text += `,"range":${place ? plainRange(place, firstLine) : 'null'},"steps":${plainSteps(steps)}`;
  if (tooCoarse) text += ',"tooCoarse":true';
  if (because) text += `,"because":${json(because)}`;
  if (spread !== null)
    text += `,"spread":${plain(spread)},"repeats":${list(measure.repeats, ({ read }) => plain(read))}`;
  if (uncertainty !== null) text += `,"uncertainty":${plain(uncertainty)}`;
  if (house) text += `,"house":${json({ set: house.set, limit: tidy(house.amount), breached: house.breached })}`;
  if (beside) text += `,"beside":{"amount":${plain(beside.amount)},"unit":${code(beside.unit)}}`;
  return `${text}}`;
}

/** What was ordered is the least that will do. */
const AT_LEAST: ReadonlySet<Measure['quantity']> = new Set(['edge-thickness', 'min-thickness']);
