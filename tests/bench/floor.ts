/**
 * The least that the same work could cost: `JSON.parse` of the orders as plain data, put into the shape that is judged,
 * and the same evaluation; nothing is looked for beyond it and nothing is said. A process of its own with the path of the
 * file, so that its start counts as well. With `yaml` as second word the `yaml` package reads instead.
 */
import { readFileSync } from 'node:fs';
import { parse as parseYaml } from 'yaml';
import { parseDocument } from '../../grammar';
import { contextOf } from '../../orders/context';
import { evaluate } from '../../orders/evaluate';
import type { Measurement, Order, OrderedLens, Reading } from '../../orders/model';
import { resolveOrder } from '../../orders/resolve';
import { type DataOfJob, jobs, type Lens, lentilText } from './work';

const sample = parseDocument(lentilText(jobs(1)));
const context = contextOf(sample);
/** Everything that all orders of the work have in common. */
const common = resolveOrder(sample.blocks.at(-1) as (typeof sample.blocks)[number], null).order;
const { place } = common;

const placed = (value: number) => ({ value, place });
const powerOf = ({ sphere, cylinder, axis }: Lens) => ({ sphere, cylinder, axis: cylinder === 0 ? 180 : axis });

function orderOf({ name, ordered, read }: DataOfJob): Order {
  const lens = (eye: 'R' | 'L'): OrderedLens => ({
    ...common.lenses[eye],
    written: { value: powerOf(ordered[eye]), form: ordered[eye].cylinder === 0 ? 'sphere' : 'minus', place },
    add: placed(ordered.add),
    height: placed(ordered.height),
  });
  const none = { place, again: false, with: null, withPlace: null, at: null, corrected: false };
  const power = (eye: 'R' | 'L'): Measurement => ({
    quantity: 'power',
    value: { ...powerOf(read[eye]), form: read[eye].cylinder === 0 ? 'sphere' : 'minus' },
    eye,
    ...none,
  });
  const figure = (quantity: 'pd' | 'near-pd' | 'height', eye: 'R' | 'L' | null, value: number): Measurement => ({
    quantity,
    value,
    eye,
    ...none,
  });
  const add = (eye: 'R' | 'L'): Measurement => ({
    quantity: 'add',
    value: { kind: 'value', value: read.add[eye], engraved: false },
    eye,
    ...none,
  });
  const prism = (eye: 'R' | 'L'): Measurement => ({
    quantity: 'prism',
    value: { right: read.prism[eye], up: 0 },
    ring: null,
    eye,
    ...none,
  });
  const measurements: Measurement[] = [
    power('R'),
    power('L'),
    add('R'),
    add('L'),
    figure('pd', null, read.pd.distance),
    figure('near-pd', null, read.pd.near),
    prism('R'),
    prism('L'),
    figure('height', 'R', read.height.R),
    figure('height', 'L', read.height.L),
    { quantity: 'cosmetic', value: read.cosmetic, eye: null, ...none },
  ];
  return {
    ...common,
    name,
    lenses: { R: lens('R'), L: lens('L') },
    pd: { ...common.pd, binocular: placed(ordered.pd.distance) },
    nearPd: { ...common.nearPd, binocular: placed(ordered.pd.near) },
    readings: [{ ...(common.readings[0] as Reading), measurements }],
  };
}

const [path = '', form = 'json'] = process.argv.slice(2);
const text = readFileSync(path, 'utf8');
const { orders } = (form === 'yaml' ? parseYaml(text) : JSON.parse(text)) as { orders: readonly DataOfJob[] };
let rejected = 0;
for (const one of orders) if (evaluate(orderOf(one), context).verdict === 'reject') rejected++;
console.log(rejected);
