/** An order as lines of the notation. */
import type { Eye } from '../../grammar';
import { type Distances, EYES, type Order, type OrderedLens, type Placed } from '../model';
import { decimal, dioptres, nameInText, plainly, quoted } from './figures';
import { designInText, materialInText, powerInText, prismInText, statedInText } from './powers';

type Lines = readonly (string | null | false | undefined)[];

/** The lines of an order without its readings and decision; what the model keeps no figures of is left out. */
export function orderInText(order: Order): readonly string[] {
  const { R, L } = order.lenses;
  const lenses = [R, L];
  const perEye = <V>(word: string, of: (lens: OrderedLens) => V | null, inText: (value: V, eye: Eye) => string) =>
    pairLine(
      word,
      lenses.map((lens) => {
        const value = of(lens);
        return value === null ? null : inText(value, lens.eye);
      }),
    );
  const figures = (word: string, of: (lens: OrderedLens) => Placed<number> | null, inText = plainly) =>
    perEye(word, of, ({ value }) => inText(value));
  return said([
    order.standard && `standard ${nameInText(order.standard.value)}`,
    ...lenses.map(({ eye, written }) => written && `${eye} ${powerInText(written.value, written.form)}`),
    ...EYES.map((eye) => order.make[eye] && `make ${eye}`),
    ...lenses.flatMap(statedLines),
    perEye('add', (lens) => (lens.add ? lens : null), addInText),
    prismLine(order),
    order.split && `split ${order.split.value}`,
    order.yoked && 'yoked',
    distancesInText('pd', order.pd),
    distancesInText('near-pd', order.nearPd),
    figures('height', (lens) => (lens.belowDatum ? null : lens.height)),
    ...EYES.map((eye) => {
      const below = order.lenses[eye].belowDatum;
      return below && `height ${eye} ${plainly(below.value)} below datum`;
    }),
    ...lenses.flatMap(({ eye, upperAdd, upperHeight }) => [
      upperAdd && `add ${eye} ${dioptres(upperAdd.value)} at upper-segment`,
      upperHeight && `height ${eye} ${plainly(upperHeight.value)} at upper-segment`,
    ]),
    perEye(
      'design',
      ({ design }) => design,
      ({ value }) => designInText(value),
    ),
    perEye(
      'lens',
      ({ material }) => material,
      ({ value }) => materialInText(value),
    ),
    figures(
      'base-curve',
      ({ baseCurve }) => baseCurve,
      (value) => decimal(value, 2),
    ),
    figures('blank', ({ blank }) => blank),
    figures('inset', ({ inset }) => inset),
    perEyeLine('thickness', lenses.map(thicknessInText)),
    ...lenses.map(({ eye, decentre }) => {
      const moved =
        decentre &&
        prismInText({ right: eye === 'R' ? decentre.value.in : -decentre.value.in, up: decentre.value.up }, eye);
      return moved && `decentre ${eye} ${moved.replace(/BI|BO|BU|BD/g, (base) => DIRECTIONS[base] ?? base)}`;
    }),
    perEyeLine('thinning', lenses.map(thinningInText)),
    ...lenses.map(
      ({ eye, slab }) =>
        slab &&
        `${slab.value.reverse ? 'reverse-slab' : 'slab-off'} ${eye} ${slab.value.amount === null ? '' : decimal(slab.value.amount, 2)}`,
    ),
    keyed('frame', [
      ['A', order.frame.a],
      ['B', order.frame.b],
      ['DBL', order.frame.dbl],
      ['ED', order.frame.ed],
    ]),
    keyed('as-worn', [
      ['vertex', order.asWorn.vertex],
      ['panto', order.asWorn.panto],
      ['wrap', order.asWorn.wrap],
    ]),
    keyed('tested', [['vertex', order.tested]]),
    order.compensation && `compensation ${order.compensation.value}`,
    order.supplyFrom === 'said' && `supply ${order.supply}`,
    order.purpose && `purpose ${order.purpose.value}`,
    ...order.confirmed.map(
      ({ code, quote, why, by }) =>
        `confirmed ${code} ${quoted(quote)}${why === null ? '' : ` ${quoted(why)}`}${by === null ? '' : ` by ${nameInText(by)}`}`,
    ),
  ]);
}

const DIRECTIONS: Readonly<Record<string, string>> = { BI: 'in', BO: 'out', BU: 'up', BD: 'down' };

const said = (lines: Lines): string[] => lines.filter((line): line is string => Boolean(line));

/** One word for both eyes where they agree, else each eye by itself. */
function pairLine(word: string, [right, left]: readonly (string | null | undefined)[]): string | null {
  return right && right === left ? `${word} ${right}` : perEyeLine(word, [right, left]);
}

function perEyeLine(word: string, [right, left]: readonly (string | null | undefined)[]): string | null {
  const parts = [right && `R ${right}`, left && `L ${left}`].filter(Boolean);
  return parts.length > 0 ? `${word} ${parts.join(' ')}` : null;
}

/** A whole is kept as half of it before each eye, each with the same base. */
function prismLine({ lenses: { R, L }, isPrismTotal }: Order): string | null {
  if (!isPrismTotal || !R.prism)
    return perEyeLine(
      'prism',
      [R, L].map(({ eye, prism }) => prism && prismInText(prism.value, eye)),
    );
  const { right, up } = R.prism.value;
  return `prism total ${prismInText({ right: 2 * right, up: 2 * up }, 'R')}`;
}

function statedLines({ eye, role, rx, previous, kept, balance, verification }: OrderedLens): Lines {
  return [
    rx && `rx ${eye} ${statedInText(rx, eye)}`,
    previous && `previous ${eye} ${statedInText(previous, eye)}`,
    role === 'kept' && `kept ${eye} ${kept ? statedInText(kept, eye) : ''}`,
    role === 'balance' && `balance ${eye} ${balance ? statedInText(balance, eye) : ''}`,
    verification && `verification ${eye} ${statedInText(verification, eye)}`,
  ];
}

function addInText({ add, intermediate }: OrderedLens): string {
  const middle = intermediate ? ` intermediate ${dioptres(intermediate.value)}` : '';
  return `${dioptres(add?.value ?? 0)}${middle}`;
}

function distancesInText(word: string, { binocular, R, L }: Distances): string | null {
  const parts = [
    binocular && plainly(binocular.value),
    R && `R ${plainly(R.value)}`,
    L && `L ${plainly(L.value)}`,
  ].filter(Boolean);
  return parts.length > 0 ? `${word} ${parts.join(' ')}` : null;
}

function thicknessInText({ thickness }: OrderedLens): string {
  const keys = ['centre', 'edge', 'min'] as const;
  return keys.flatMap((key) => (thickness[key] ? [`${key} ${plainly(thickness[key].value)}`] : [])).join(' ');
}

const thinningInText = ({ thinning }: OrderedLens): string | null =>
  thinning && `${decimal(Math.abs(thinning.value), 2)} ${thinning.value > 0 ? 'BU' : 'BD'}`;

function keyed(word: string, keys: readonly (readonly [string, Placed<number> | null])[]): string | null {
  const parts = keys.flatMap(([key, figure]) => (figure ? [`${key} ${plainly(figure.value)}`] : []));
  return parts.length > 0 ? `${word} ${parts.join(' ')}` : null;
}
