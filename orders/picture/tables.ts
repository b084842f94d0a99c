/** The facts of the pictures as tables: what was ordered and read, each measure with its limit, what is worked out. */
import type { Eye } from '../../grammar';
import { prismBeforeEye } from '../../optics';
import { attempt } from '../attempt';
import { type Worked, type WorkedCode, workedPair } from '../computed';
import type { Evaluation } from '../evaluate';
import { deviationInWords, reasonInWords, subjectInWords } from '../measure-words';
import { addAsRead } from '../measures/add-as-read';
import type { Measure } from '../measures/measure';
import { type Distances, EYES, type OrderedLens } from '../model';
import type { ReadValues } from '../reduce';
import { amountInWords, beforeEyeInWords, powerInWords, quantityInWords, signed, valueInWords } from '../words';
import { workedInWords } from '../worked-words';
import { asSvg } from './drawing';
import { limitBar, OUTCOMES, signOf } from './limit-bar';
import { type Child, element, type Markup } from './markup';
import { orderedPower } from './power-cross';
import type { LensScene, Scene } from './scene';

const head = (scope: 'col' | 'row' | 'colgroup', words: Child, span?: number): Markup =>
  element('th', { scope, colspan: span }, words);
const cell = (words: Child, className?: string, span?: number): Markup =>
  element('td', { class: className, colspan: span }, words);
/** What is not there is said by a dash that is read out as words. */
const NOTHING = element('span', { class: 'nothing', 'aria-label': 'nothing', role: 'img' }, '–');

/** A quantity, in words, for each eye or for the pair. */
type Said = { readonly R: string | null; readonly L: string | null } | { readonly pair: string };

interface Row {
  readonly what: string;
  readonly ordered: Said;
  readonly read: Said;
}

/** Ordered and read, side by side for each eye; what belongs to the pair spans both. */
export function orderedAndRead(scene: Scene): Markup {
  const rows = rowsOf(scene).filter(({ ordered, read }) => isSaid(ordered) || isSaid(read));
  return element(
    'table',
    { class: 'facts' },
    element('caption', {}, 'Ordered and read'),
    element(
      'thead',
      {},
      element('tr', {}, cell(''), head('colgroup', 'ordered', 2), head('colgroup', 'read', 2)),
      element(
        'tr',
        {},
        cell(''),
        ['R', 'L', 'R', 'L'].map((eye) => head('col', eye)),
      ),
    ),
    element(
      'tbody',
      {},
      rows.map(({ what, ordered, read }) =>
        element('tr', {}, head('row', what), saidCells(ordered, 'ordered'), saidCells(read, 'read')),
      ),
    ),
  );
}

const isSaid = (said: Said): boolean => 'pair' in said || said.R !== null || said.L !== null;

const saidCells = (said: Said, className: string): Markup[] =>
  'pair' in said ? [cell(said.pair, `${className} pair`, 2)] : EYES.map((eye) => cell(said[eye] ?? NOTHING, className));

function rowsOf({ order, lenses, values }: Scene): readonly Row[] {
  const eyes = (say: (one: LensScene) => string | null): Said => ({ R: say(lenses.R), L: say(lenses.L) });
  const lens = (say: (one: OrderedLens) => string | null): Said => eyes((one) => say(one.lens));
  const measured = (say: (eye: Eye) => string | null): Said => ({ R: say('R'), L: say('L') });
  const mm = (value: number | undefined | null): string | null =>
    value === undefined || value === null ? null : amountInWords(value, 'mm');
  const figures = (name: keyof ReadValues['figures']): Said =>
    distanceInWords(values.figures[name]?.pair?.value, (eye) => values.figures[name]?.[eye]?.value);
  return [
    {
      what: 'power',
      ordered: eyes((one) => inWords(orderedPower(one), powerInWords)),
      read: measured((eye) => inWords(values.power[eye]?.value, powerInWords)),
    },
    {
      what: 'add',
      ordered: lens(({ add }) => inWords(add?.value, signed)),
      read: measured((eye) => inWords((addAsRead(values, eye) ?? values.engravedAdd[eye])?.value, signed)),
    },
    {
      what: 'prism',
      ordered: lens(({ prism, eye }) =>
        inWords(prism && attempt(() => prismBeforeEye(prism.value, eye)), beforeEyeInWords),
      ),
      read: measured((eye) => {
        const read = values.prism[eye];
        return inWords(read && attempt(() => prismBeforeEye(read.value, eye)), beforeEyeInWords);
      }),
    },
    { what: 'PD', ordered: orderedDistance(order.pd), read: figures('pd') },
    { what: 'near PD', ordered: orderedDistance(order.nearPd), read: figures('near-pd') },
    { what: 'optical centres', ordered: NONE, read: figures('optical-centres') },
    { what: 'height', ordered: lens(({ height }) => mm(height?.value)), read: figures('height') },
    {
      what: quantityInWords('base-curve'),
      ordered: lens(({ baseCurve }) => inWords(baseCurve?.value, signed)),
      read: measured((eye) => inWords(values.figures['base-curve']?.[eye]?.value, signed)),
    },
    {
      what: quantityInWords('centre-thickness'),
      ordered: lens(({ thickness }) => mm(thickness.centre?.value)),
      read: figures('centre-thickness'),
    },
    {
      what: quantityInWords('segment-width'),
      ordered: lens(({ design }) => mm(design?.value.width)),
      read: figures('segment-width'),
    },
  ];
}

const NONE: Said = { R: null, L: null };

const inWords = <V>(value: V | null | undefined, words: (value: V) => string): string | null =>
  value === null || value === undefined ? null : words(value);

function distanceInWords(pair: number | undefined, of: (eye: Eye) => number | undefined): Said {
  const [R, L] = [of('R'), of('L')];
  if (R === undefined && L === undefined && pair !== undefined) return { pair: amountInWords(pair, 'mm') };
  const words = (value: number | undefined) => inWords(value, (one) => amountInWords(one, 'mm'));
  return { R: words(R), L: words(L) };
}

const orderedDistance = (distances: Distances): Said =>
  distanceInWords(distances.binocular?.value, (eye) => distances[eye]?.value);

/** Every measure that the verdict rests on, with a bar of its limit. */
export function measuresTable({ measures }: Evaluation, id: string): Markup {
  return element(
    'table',
    { class: 'measures' },
    element('caption', {}, 'Each measure against its limit'),
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        ['measure', 'ordered', 'read', 'off by', 'limit', 'against the limit', 'outcome', 'row of the standard'].map(
          (words) => head('col', words),
        ),
      ),
    ),
    element(
      'tbody',
      {},
      measures.map((one, at) => measureRow(one, `${id}-${at}`)),
    ),
  );
}

function measureRow(one: Measure, id: string): Markup {
  const { ordered, read, unit, limit, outcome, because, house, deviation } = one;
  const bar = limitBar(one);
  const off = deviation === null ? NOTHING : unit === 'prism' ? amountInWords(deviation, unit) : deviationInWords(one);
  const most = limit?.amount == null ? NOTHING : amountInWords(limit.amount, limit.unit);
  return element(
    'tr',
    { class: outcome },
    head('row', subjectInWords(one)),
    cell(ordered === null ? NOTHING : valueInWords(ordered, unit), 'number'),
    cell(read === null ? NOTHING : valueInWords(read, unit), 'number'),
    cell(off, 'number'),
    cell(most, 'number'),
    cell(bar ? asSvg(bar, id, `${subjectInWords(one)}: ${OUTCOMES[outcome]}`, barInWords(one)) : NOTHING, 'bar'),
    cell([icon(outcome), ' ', OUTCOMES[outcome]], 'outcome'),
    cell(
      [
        limit ? `${limit.row}; ${limit.evidence}` : '',
        house ? houseInWords(house) : '',
        because ? ` ${reasonInWords(because)}.` : '',
      ],
      'row',
    ),
  );
}

const houseInWords = ({ set, amount, breached }: NonNullable<Measure['house']>): string =>
  `; limit of ${set} ${amount}${breached ? ', exceeded' : ''}`;

function barInWords({ deviation, limit, unit }: Measure): string {
  const most = limit?.amount == null ? 'no limit' : `limit ${amountInWords(limit.amount, limit.unit)}`;
  return deviation === null ? `Not read, ${most}.` : `Off by ${amountInWords(deviation, unit)}, ${most}.`;
}

/** The sign beside the word; the word says it, so the sign is not read out. */
export const icon = (outcome: Measure['outcome']): Markup =>
  element(
    'svg',
    { class: 'picture icon', viewBox: '0 0 18 18', width: 18, height: 18, 'aria-hidden': 'true' },
    signOf(outcome, 9, 9),
  );

/** The figures that somebody at the bench lays a lens out by. */
const SHOWN: readonly WorkedCode[] = [
  'forms',
  'near-power',
  'intermediate-power',
  'power-for-vertex',
  'drum',
  'decentration',
  'raise',
  'segment-drop',
  'segment-inset',
  'near-inset',
  'total-inset',
  'blank',
  'prism-resultant',
  'decentration-for-prism',
  'image-jump',
  'thickness',
  'weight',
];

/** Both lenses beside each other, then the pair; with everything that was taken as usual. */
export function workedTable({ lenses, order }: Scene): Markup | null {
  const said = SHOWN.flatMap((what) => {
    const found = EYES.map((eye) => lenses[eye].worked.find((one) => one.what === what) ?? null);
    const any = found.find((one) => one !== null);
    return any ? [{ title: workedInWords(any).title, found }] : [];
  });
  const pair = workedPair(order);
  if (said.length === 0 && pair.length === 0) return null;
  const all = [...EYES.flatMap((eye) => lenses[eye].worked.filter(({ what }) => SHOWN.includes(what))), ...pair];
  const assumed = [...new Set(all.flatMap((one) => one.assumed))];
  return element(
    'section',
    { class: 'worked' },
    element(
      'table',
      { class: 'facts' },
      element('caption', {}, 'Worked out from the order'),
      element('thead', {}, element('tr', {}, cell(''), head('col', 'R'), head('col', 'L'))),
      element(
        'tbody',
        {},
        said.map(({ title, found }) => element('tr', {}, head('row', title), workedCells(found))),
        pair.map((one) => element('tr', {}, head('row', titleOf(one)), cell(workedInWords(one).value, 'pair', 2))),
      ),
    ),
    assumed.length > 0
      ? element('p', { class: 'assumed' }, `Assumed where the order is silent: ${assumed.join('; ')}.`)
      : null,
  );
}

const titleOf = (one: Worked): string => `${workedInWords(one).title}${one.eye ? ` ${one.eye}` : ''}`;

function workedCells(found: readonly (Worked | null)[]): Markup[] {
  const [right, left] = found.map((one) => one && workedInWords(one).value);
  if (right && right === left) return [cell(right, 'pair', 2)];
  return [right, left].map((value) => cell(value ?? NOTHING));
}
