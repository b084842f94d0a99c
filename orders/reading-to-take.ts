/** The reading an order calls for, line by line in the order in which a person measures, with what to expect in each. */
import type { Eye } from '../grammar';
import { toleranceSets } from '../tables';
import { type Context, type Standard, standardOf } from './context';
import { evaluateBy } from './evaluate';
import { isManual, isPowerInstrument } from './instrument';
import {
  addLine,
  type Blank,
  blank,
  eyeLine,
  type LineToTake,
  millimetres,
  pdLine,
  powerLine,
  prismLine,
  thicknessLine,
  topLine,
} from './lines-to-take';
import { classOfLens, type Measure, type Quantity } from './measures/measure';
import { EYES, type Order } from './model';
import { placingPd } from './placing-pd';
import { TESTS } from './test-results';
import { figure, signed } from './words';

/**
 * The lines of a new reading, its header first: what `not-read` would name, and everything once nothing is missing any
 * more. Empty where the order calls for nothing. Expected values are those of a lens exactly as ordered: dioptres,
 * prism dioptres with their base before the eye, millimetres, degrees. Where no known tolerance set is named, what is
 * called for follows the first set for this supply; nothing is judged by it. The order of the lines is common practice,
 * no source.
 */
export function readingToTake(order: Order, context: Context): readonly LineToTake[] {
  const called = calledFor(order, context);
  const instruments = [...context.instruments.values()].filter(isPowerInstrument);
  const isDrum = instruments.length > 0 && instruments.every(isManual);
  const lines = [
    ...powers(order, called, isDrum),
    ...adds(order, called),
    ...uppers(called),
    ...prisms(order, called),
    ...slabs(called),
    ...distances(order, called),
    ...heights(order, called),
    ...curves(called),
    ...thicknesses(called),
    ...tests(called),
  ];
  if (lines.length === 0) return [];
  const zero = isDrum && called.some(({ quantity }) => quantity === 'power') ? [ZERO] : [];
  return [header(instruments.map(({ name }) => name)), ...zero, ...lines];
}

const ZERO: LineToTake = {
  parts: ['zero ', { what: 'value', expected: '0.00', choices: [] }],
  comment: 'the drum with nothing on the stop; expect 0.00',
};

function header(names: readonly string[]): LineToTake {
  const date = { what: 'date', expected: null, choices: [] } as const;
  const written = names.map((name) => (/[\s"#]/.test(name) ? `"${name.replaceAll('"', '""')}"` : name));
  if (written.length === 0) return { parts: ['reading ', date], comment: null };
  const instrument = { what: 'instrument', expected: written[0] ?? null, choices: written } as const;
  return {
    parts: ['reading ', date, ' with ', written.length === 1 ? (written[0] as string) : instrument],
    comment: null,
  };
}

/** What was not read; of a complete order everything it called for. */
function calledFor(order: Order, context: Context): readonly Measure[] {
  const standard = known(standardOf(order, context), order);
  const now = evaluateBy(standard, order, context).measures.filter(isCalledFor);
  if (now.length > 0 || order.readings.length === 0) return now;
  return evaluateBy(standard, { ...order, readings: [] }, context).measures.filter(isCalledFor);
}

/** A power that cannot be judged, since the order does not say what it should be, has to be read all the same. */
const isCalledFor = ({ outcome, reading }: Measure): boolean =>
  outcome === 'not-read' || (outcome === 'not-judged' && reading === null);

function known(standard: Standard, { supply }: Order): Standard {
  if (standard.set) return standard;
  return { ...standard, set: toleranceSets.find(({ scope }) => scope.some((one) => one === supply)) ?? null };
}

const eyesOf = (called: readonly Measure[], ...quantities: readonly Quantity[]): readonly Eye[] =>
  EYES.filter((eye) => called.some((one) => one.eye === eye && quantities.includes(one.quantity)));

const has = (called: readonly Measure[], ...quantities: readonly Quantity[]): boolean =>
  called.some(({ quantity }) => quantities.includes(quantity));

function powers(order: Order, called: readonly Measure[], isDrum: boolean): LineToTake[] {
  return EYES.flatMap((eye) => {
    const lens = order.lenses[eye];
    const own = called.filter((one) => one.eye === eye);
    const degression = own.find(({ quantity }) => quantity === 'degression')?.ordered ?? null;
    return [
      ...(has(own, 'power', 'cylinder', 'axis') ? [powerLine(order, lens, isDrum)] : []),
      ...(degression === null ? [] : [topLine(order, lens, degression, isDrum)]),
    ];
  });
}

function adds(order: Order, called: readonly Measure[]): LineToTake[] {
  return eyesOf(called, 'add', 'intermediate').flatMap((eye) => {
    const lens = order.lenses[eye];
    const add = lens.verification?.add ?? lens.add;
    const between = called.find((one) => one.quantity === 'intermediate' && one.eye === eye)?.ordered ?? null;
    if (!add) return [];
    const isEngraved = classOfLens(lens) === 'progressive';
    return [addLine(order, lens, add.value, { isEngraved, intermediate: between })];
  });
}

/** The upper one of two segments, where the order says something of it. */
function uppers(called: readonly Measure[]): LineToTake[] {
  return called.flatMap(({ quantity, eye, ordered }) => {
    if (!eye || ordered === null || (quantity !== 'upper-add' && quantity !== 'upper-height')) return [];
    const [word, expected] = quantity === 'upper-add' ? ['add', signed(ordered)] : ['height', millimetres(ordered)];
    return [
      { parts: [`${word} ${eye} `, blank(expected as string), ' at upper-segment'], comment: `expect ${expected}` },
    ];
  });
}

function slabs(called: readonly Measure[]): LineToTake[] {
  return called.flatMap(({ quantity, eye, ordered }) => {
    if (quantity !== 'slab' || !eye || ordered === null) return [];
    const expected = figure(ordered);
    return [
      {
        parts: [`${ordered < 0 ? 'reverse-slab' : 'slab-off'} ${eye} `, blank(expected)],
        comment: `expect ${expected}`,
      },
    ];
  });
}

/** Tests that one lens has and the other has not. */
function tests(called: readonly Measure[]): LineToTake[] {
  return called.flatMap(({ quantity, eye }) => {
    if (!(TESTS as readonly string[]).includes(quantity)) return [];
    const place: Blank = { what: 'value', expected: 'passed', choices: ['passed', 'failed'] };
    return [{ parts: [eye ? `${quantity} ${eye} ` : `${quantity} `, place], comment: 'passed or failed' }];
  });
}

/** On a progressive prism counts at its own point only. */
function prisms(order: Order, called: readonly Measure[]): LineToTake[] {
  const ofPair = called.some(({ quantity, eye }) => eye === null && PRISMS.includes(quantity));
  const eyes = ofPair ? EYES : eyesOf(called, ...PRISMS);
  if (eyes.length === 0) return [];
  const isProgressive = EYES.some((eye) => classOfLens(order.lenses[eye]) === 'progressive');
  return [prismLine(order, eyes, isProgressive ? ' at prism-point' : '')];
}

const PRISMS: readonly Quantity[] = ['prism', 'prism-horizontal', 'prism-vertical'];

/** The horizontal place may be called for as prism; the distance the wearer is fitted to is looked at all the same. */
function distances(order: Order, called: readonly Measure[]): LineToTake[] {
  const ofPair = called.some(
    ({ quantity, eye }) => eye === null && (quantity === 'pd' || quantity === 'prism-horizontal'),
  );
  const eyes = ofPair ? EYES : eyesOf(called, 'pd', 'prism-horizontal');
  const placing = placingPd(order);
  const isPlaced = placing.of.binocular !== null || eyes.some((eye) => placing.of[eye] !== null);
  const far = eyes.length > 0 && isPlaced ? { of: placing.of, eyes } : null;
  const near = has(called, 'near-pd') ? { of: order.nearPd, eyes: EYES } : null;
  if (!far && !near) return [];
  return [placing.isNear ? pdLine(null, far) : pdLine(far, near)];
}

/** The heights of single vision say where the optical centres stand, and are no measure of their own. */
function heights({ lenses }: Order, called: readonly Measure[]): LineToTake[] {
  const isCentre = has(called, 'prism-vertical');
  const eyes = EYES.filter((eye) => {
    const { height, design, role } = lenses[eye];
    const isSingle = (design?.value.type ?? 'single-vision') === 'single-vision';
    return height && role === 'made' && isSingle && isCentre;
  });
  const all = EYES.filter((eye) => eyes.includes(eye) || eyesOf(called, 'height').includes(eye));
  const figures = all.flatMap((eye) => {
    const height = lenses[eye].height;
    return height ? [{ eye, expected: millimetres(height.value) }] : [];
  });
  return figures.length > 0 ? [eyeLine('height', figures)] : [];
}

function curves(called: readonly Measure[]): LineToTake[] {
  const figures = called.flatMap(({ quantity, eye, ordered }) =>
    quantity === 'base-curve' && eye && ordered !== null ? [{ eye, expected: figure(ordered) }] : [],
  );
  return figures.length > 0 ? [eyeLine('base-curve', figures)] : [];
}

const WHERE: Readonly<Partial<Record<Quantity, string>>> = {
  'centre-thickness': 'centre',
  'edge-thickness': 'edge',
  'min-thickness': 'min',
};

function thicknesses(called: readonly Measure[]): LineToTake[] {
  const figures = called.flatMap(({ quantity, eye, ordered }) => {
    const where = WHERE[quantity];
    if (!where || !eye) return [];
    return [{ eye, where, expected: ordered === null ? null : millimetres(ordered), bound: where !== 'centre' }];
  });
  return figures.length > 0 ? [thicknessLine(figures)] : [];
}
