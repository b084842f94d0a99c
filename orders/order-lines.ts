/** What each line of an order says about the order. */
import type {
  DesignNode,
  Eye,
  EyeFigure,
  EyeOrBoth,
  EyeWord,
  Figure,
  ForEye,
  LineNode,
  MaterialNode,
  PdNode,
  PowerEntry,
  PrismComponent,
  Setting,
  Span,
} from '../grammar';
import { materials } from '../tables';
import type { Key, Owner } from './draft';
import type { Place } from './finding';
import {
  BASE_SIGNS,
  type Compensation,
  type Confirmation,
  type Decentration,
  type Decision,
  type Design,
  EYES,
  type LensMaterial,
  type PrismUnclear,
  type Purpose,
  type Slab,
  type Split,
  type Supply,
} from './model';
import { asPower, formOf, prismOf, typedPower } from './values';

/** Where the values of a line go: into the order, or behind it as defaults. */
export interface Sink {
  put(owner: Owner, key: Key, value: unknown, place: Place, eye?: Eye | null): void;
}

export type At = (span: Span) => Place;

const eyesOf = (word: EyeWord | null): readonly Eye[] => eyesNamed(word?.eye ?? 'both');
export const eyesNamed = (eye: EyeOrBoth): readonly Eye[] => (eye === 'both' ? EYES : [eye]);

/** Whether a line speaks of the upper one of two segments. */
const isOfUpper = ({ qualifiers }: LineNode): boolean => qualifiers?.at?.word === 'upper-segment';

/** What may end a line of a reading and has no place on this line of an order, or null. */
export function misplacedEnding(node: LineNode): Span | null {
  // Two figures of a lens measure are read, never ordered.
  if (node.kind === 'slab') return node.entries.find(({ clock }) => clock) ?? endingOf(node);
  return endingOf(node);
}

function endingOf(node: LineNode): Span | null {
  if (!node.qualifiers) return null;
  const { at, with: instrument, corrected } = node.qualifiers;
  const isUpper = isOfUpper(node) && (node.kind === 'add' || (node.kind === 'eye-figure' && node.which === 'height'));
  const isNear = node.kind === 'pd' && at?.word === 'near-point';
  return (isUpper || isNear ? null : at) ?? instrument ?? corrected;
}

/** Reads one line of an order. Returns false when the line is not one that an order holds. */
export function orderLine(node: LineNode, at: At, sink: Sink): boolean {
  switch (node.kind) {
    case 'power':
      powerEntries(node.entries, null, at, sink);
      return true;
    case 'powers':
      powerEntries(node.entries, node.which, at, sink);
      if (node.which === 'kept' || node.which === 'balance') roles(node.entries, node.which, at, sink);
      return true;
    case 'add':
      for (const { eye, value } of node.entries) {
        for (const side of eyesOf(eye)) {
          figure(value.value, side, isOfUpper(node) ? 'upper-add' : 'add', at, sink, side);
          figure(value.intermediate, side, 'intermediate', at, sink, side);
        }
      }
      return true;
    case 'prism':
      for (const { eye, value, start, end } of node.entries) {
        for (const side of eyesOf(eye)) {
          // A total is shared by the lab; until it says how, half of it is expected in each lens.
          const prism = prismOf(value, side);
          const unclear = prismUnclear(value, eye);
          if (unclear) sink.put(side, 'prism-unclear', unclear, at({ start, end }), side);
          if (!prism || unclear) continue;
          const share = node.total ? { right: prism.right / 2, up: prism.up / 2 } : prism;
          sink.put(side, 'prism', share, at({ start, end }), side);
          if (node.total) sink.put('order', 'prism-total', true, at({ start, end }));
        }
      }
      return true;
    case 'decentre':
      for (const { eye, value, start, end } of node.entries) {
        const moved = decentrationOf(value);
        if (moved) for (const side of eyesOf(eye)) sink.put(side, 'decentre', moved, at({ start, end }), side);
      }
      return true;
    case 'pd':
      distances(node.distance, node.qualifiers?.at?.word === 'near-point' ? 'near' : 'pd', at, sink);
      distances(node.near, 'near', at, sink);
      return true;
    case 'eye-figure':
      if (node.which === 'thinning') thinning(node.entries, at, sink);
      else if (node.which === 'height' && isOfUpper(node))
        for (const { eye, value } of node.entries)
          for (const side of eyesOf(eye)) figure(value, side, 'upper-height', at, sink, side);
      else eyeFigures(node.entries, node.which, node.belowDatum !== null, at, sink);
      return true;
    case 'design':
      for (const entry of node.entries) {
        const design = designOf(entry.value);
        if (design) for (const side of eyesOf(entry.eye)) sink.put(side, 'design', design, at(entry), side);
      }
      return true;
    case 'lens':
      for (const entry of node.entries) {
        for (const side of eyesOf(entry.eye)) sink.put(side, 'material', materialOf(entry.value), at(entry), side);
      }
      return true;
    case 'settings':
      for (const entry of node.entries) settings(entry, node.which, at, sink);
      return true;
    case 'choice':
      return choice(node.which, node.choice, at, sink);
    case 'eyes':
      if (node.which !== 'make') return false;
      for (const { eye, ...span } of node.eyes)
        for (const side of eyesNamed(eye)) sink.put(side, 'make', true, at(span), side);
      return true;
    case 'slab':
      for (const { eye, value, start, end } of node.entries) {
        const slab: Slab = { reverse: node.reverse, amount: amountOf(value) };
        for (const side of eyesOf(eye)) sink.put(side, 'slab', slab, at({ start, end }), side);
      }
      return true;
    case 'standard':
      if (node.name) sink.put('order', 'standard', node.name.text, at(node.name));
      return true;
    default:
      return OTHER_ORDER_LINES.has(node.kind);
  }
}

/** Lines that an order may hold and that no measure rests on yet. */
const OTHER_ORDER_LINES = new Set<LineNode['kind']>(['tint', 'text', 'remake-of', 'dated', 'confirmed']);

/** @param beside the word of a power stated beside the order, or null for that of the order itself */
function powerEntries(entries: readonly PowerEntry[], beside: string | null, at: At, sink: Sink): void {
  const lastAdd = entries.at(-1)?.add;
  const sharedAdd =
    entries.length > 1 && lastAdd && entries.slice(0, -1).every(({ add }) => add === null) ? lastAdd : null;
  for (const entry of entries) {
    const typed = typedPower(entry.power);
    for (const side of eyesOf(entry.eye)) {
      const owner: Owner = beside === null ? side : `${beside}.${side}`;
      if (entry.eye) sink.put(owner, 'named', true, at(entry.eye));
      if (typed && entry.power)
        sink.put(owner, 'power', { power: asPower(typed), form: formOf(typed) }, at(entry.power), side);
      const add = entry.add ?? sharedAdd;
      figure(add?.value ?? null, owner, 'add', at, sink, side);
      figure(add?.intermediate ?? null, owner, 'intermediate', at, sink, side);
      const prism = entry.prism.length > 0 ? prismOf(entry.prism, side) : null;
      const [first, last] = [entry.prism[0], entry.prism.at(-1)];
      const unclear = prismUnclear(entry.prism, entry.eye);
      if (!first || !last) continue;
      const place = at({ start: first.start, end: last.end });
      if (unclear) sink.put(owner, 'prism-unclear', unclear, place, side);
      else if (prism) sink.put(owner, 'prism', prism, place, side);
    }
  }
}

/** Why a prism cannot be taken as it stands; null where it can, and where a figure in it could not be read. */
export function prismUnclear(components: readonly PrismComponent[], eye: EyeWord | null): PrismUnclear | null {
  const some = components.filter(({ amount }) => amount.value !== null && amount.value !== 0);
  if (some.length === 0) return null;
  if (some.some(({ relative }) => relative)) return 'relative';
  if (some.some(({ base, degrees }) => base === null && degrees === null)) return 'base-missing';
  const isForBoth = eye === null || eye.eye === 'both';
  return isForBoth && some.some(({ degrees }) => degrees !== null) ? 'angle-for-both' : null;
}

function roles(entries: readonly PowerEntry[], role: 'kept' | 'balance', at: At, sink: Sink): void {
  for (const { eye } of entries)
    if (eye) for (const side of eyesNamed(eye.eye)) sink.put(side, 'role', role, at(eye), side);
}

function figure(node: Figure | null, owner: Owner, key: Key, at: At, sink: Sink, eye: Eye | null = null): void {
  if (node && node.value !== null) sink.put(owner, key, node.value, at(node), eye);
}

function distances({ binocular, right, left }: PdNode, key: 'pd' | 'near', at: At, sink: Sink): void {
  figure(binocular, 'order', key, at, sink);
  figure(right, 'R', key, at, sink, 'R');
  figure(left, 'L', key, at, sink, 'L');
}

function eyeFigures(
  entries: readonly ForEye<Figure | null>[],
  which: 'height' | 'base-curve' | 'inset' | 'blank',
  belowDatum: boolean,
  at: At,
  sink: Sink,
): void {
  for (const { eye, value } of entries) {
    for (const side of eyesOf(eye)) {
      if (belowDatum) figure(value, side, 'below-datum', at, sink, side);
      else figure(value, side, which, at, sink, side);
    }
  }
}

/** Thinning without a base is base down, as it nearly always is. Common practice, no source. */
function thinning(entries: readonly EyeFigure[], at: At, sink: Sink): void {
  for (const { eye, value, base } of entries) {
    if (value === null || value.value === null) continue;
    const up = base === 'up' ? value.value : 0 - value.value;
    for (const side of eyesOf(eye)) sink.put(side, 'thinning', up, at(value), side);
  }
}

type FrameKey = 'a' | 'b' | 'dbl' | 'ed';

const isFrameKey = (word: string): word is FrameKey => word === 'a' || word === 'b' || word === 'dbl' || word === 'ed';
const WORN_KEYS: Readonly<Record<string, 'vertex' | 'panto' | 'wrap'>> = {
  vertex: 'vertex',
  bvd: 'vertex',
  panto: 'panto',
  tilt: 'panto',
  wrap: 'wrap',
};
const THICKNESS_KEYS: Readonly<Record<string, 'centre' | 'edge' | 'min'>> = {
  centre: 'centre',
  center: 'centre',
  ct: 'centre',
  edge: 'edge',
  et: 'edge',
  min: 'min',
};

export const thicknessKey = (word: string): 'centre' | 'edge' | 'min' | undefined => THICKNESS_KEYS[word];

function settings({ eye, value }: ForEye<readonly Setting[]>, which: string, at: At, sink: Sink): void {
  for (const { key, figure: amount } of value) {
    const { word } = key;
    const worn = WORN_KEYS[word];
    if (which === 'frame' && isFrameKey(word)) figure(amount, 'order', word, at, sink);
    else if (which === 'as-worn' && worn) figure(amount, 'order', worn, at, sink);
    else if (which === 'tested' && worn === 'vertex') figure(amount, 'order', 'tested', at, sink);
    else if (which === 'thickness') {
      const part = thicknessKey(word);
      if (part) for (const side of eyesOf(eye)) figure(amount, side, part, at, sink, side);
    }
  }
}

const SUPPLIES = new Set<string>(['glazed', 'edged', 'uncut'] satisfies Supply[]);
const SPLITS = new Set<string>(['free', 'equal', 'as-written'] satisfies Split[]);
const PURPOSES = new Set<string>(['general', 'safety', 'child'] satisfies Purpose[]);
const COMPENSATIONS = new Set<string>(['none', 'done', 'vertex', 'by-maker'] satisfies Compensation[]);

function choice(
  which: string,
  word: { readonly word: string; readonly start: number; readonly end: number } | null,
  at: At,
  sink: Sink,
): boolean {
  if (!word) return true;
  if (which === 'supply' && SUPPLIES.has(word.word)) sink.put('order', 'supply', word.word, at(word));
  if (which === 'compensation' && COMPENSATIONS.has(word.word)) sink.put('order', 'compensation', word.word, at(word));
  if (which === 'split' && word.word === 'yoked') sink.put('order', 'yoked', true, at(word));
  else if (which === 'split' && SPLITS.has(word.word)) sink.put('order', 'split', word.word, at(word));
  if (which === 'purpose' && PURPOSES.has(word.word)) sink.put('order', 'purpose', word.word, at(word));
  return true;
}

/** The base words name directions here. A direction by its angle is not written, so it makes no value. */
function decentrationOf(parts: readonly PrismComponent[]): Decentration | null {
  const moved = { in: 0, up: 0 };
  for (const { amount, base } of parts) {
    if (amount.value === null || (base === null && amount.value !== 0)) return null;
    const sign = base ? BASE_SIGNS[base] : { in: 0, up: 0 };
    moved.in += amount.value * sign.in;
    moved.up += amount.value * sign.up;
  }
  return parts.length > 0 ? { in: moved.in + 0, up: moved.up + 0 } : null;
}

const amountOf = (node: Figure | null): number | null => node?.value ?? null;

function designOf(node: DesignNode): Design | null {
  if (!node.type) return null;
  return {
    type: node.type,
    use: node.use,
    shape: node.shape,
    width: amountOf(node.width),
    depth: amountOf(node.depth),
    gap: amountOf(node.gap),
    corridor: amountOf(node.corridor),
    degression: node.degression?.value == null ? null : Math.abs(node.degression.value),
    working: amountOf(node.working),
    intermediate: amountOf(node.intermediate),
  };
}

/** A material by its name, or by an index written alone; a known one fills in what is not said. */
function materialOf(node: MaterialNode): LensMaterial {
  const name = node.name?.text ?? null;
  const spelled = (name ?? (node.index?.value != null ? node.index.value.toFixed(2) : '')).toLowerCase();
  const known = materials.find(({ id, spellings }) => id === spelled || spellings.includes(spelled));
  return {
    name,
    index: amountOf(node.index) && name ? amountOf(node.index) : (known?.indexD.value ?? amountOf(node.index)),
    abbe: amountOf(node.abbe) ?? known?.abbe.value ?? null,
    density: amountOf(node.density) ?? known?.density.value ?? null,
    known: known?.id ?? null,
  };
}

export function confirmationOf(node: Extract<LineNode, { kind: 'confirmed' }>, at: At): readonly Confirmation[] {
  if (!node.code || !node.quote) return [];
  const { code, quote, why, by } = node;
  return [{ code: code.text, quote: quote.text, why: why?.text ?? null, by: by?.text ?? null, place: at(code) }];
}

const VERDICTS = new Set(['accept', 'reject', 'remake']);

export function decisionOf(node: LineNode, at: At): Decision | null {
  if (node.kind !== 'decided' || !node.verdict || !VERDICTS.has(node.verdict.word)) return null;
  return {
    verdict: node.verdict.word as Decision['verdict'],
    by: node.by?.text ?? null,
    why: node.why?.text ?? null,
    place: at(node.verdict),
  };
}
