/** From the lines of a block to an order. Never throws on any text: what cannot be understood is told and left out. */
import {
  type Block,
  type Eye,
  type Line,
  type LineNode,
  type LineSection,
  misplacedLines,
  type Span,
  sectionsOf,
} from '../grammar';
import { Draft, type Key, type Owner, type SaidOfLens, type SaidOfOrder } from './draft';
import { tidy } from './exact';
import type { Finding, Place } from './finding';
import {
  type AsWorn,
  type Confirmation,
  type Decision,
  EYES,
  type Frame,
  type Measurement,
  type Order,
  type OrderedLens,
  otherEye,
  type Placed,
  type Reading,
  type Stage,
  type Stated,
  type Verification,
  type WrittenPower,
} from './model';
import { type At, confirmationOf, decisionOf, misplacedEnding, orderLine } from './order-lines';
import { readingLine } from './reading-lines';
import { slotOf } from './reading-places';

export interface Resolved {
  readonly order: Order;
  readonly findings: readonly Finding[];
  /** Lines of the `defaults` block of which something holds for this order, counted from its first line. */
  readonly inherited: readonly number[];
}

/**
 * Resolves one order block.
 * @param defaults the file’s `defaults` block; its values hold where the order says nothing
 */
export function resolveOrder(block: Block, defaults: Block | null): Resolved {
  const draft = new Draft();
  const readings: ReadingDraft[] = [];
  const confirmed: Confirmation[] = [];
  const sections = sectionsOf(block);
  let decided: Decision | null = null;
  let current: ReadingDraft | null = null;
  let place: Place = { line: 0, start: 0, end: 0 };
  let name: string | null = null;

  let number = 0;
  const at: At = ({ start, end }) => ({ line: number, start, end });
  for (; number < block.lines.length; number++) {
    const { node } = (block.lines[number] as Line).parsed(block.kind);
    const { kind, belowReading, unclear } = sections[number] as LineSection;
    if (kind === 'none' || kind === 'file' || node.kind === 'end') continue;
    const head = at(node.head as Span);
    if (node.kind === 'order') {
      name = node.name?.text ?? null;
      place = at((node.name ?? node.head) as Span);
      if (!node.name) draft.tell('name-missing', 'error', place);
    } else if (node.kind === 'reading') {
      current = new ReadingDraft(node, at);
      readings.push(current);
    } else if (node.kind === 'decided') decided = decisionOf(node, at) ?? decided;
    else if (node.kind === 'confirmed') confirmed.push(...confirmationOf(node, at));
    else if (kind === 'reading') {
      if (unclear) draft.tell('block-unclear', 'warning', head, { word: node.head?.word });
      current?.take(node, at, draft);
    } else if (!orderLine(node, at, draft)) draft.tell('reading-missing', 'error', head, { word: node.head?.word });
    else if (misplacedEnding(node)) draft.tell('unexpected-text', 'error', at(misplacedEnding(node) as Span));
    else if (belowReading) draft.tell('order-line-below-reading', 'hint', head, { word: node.head?.word });
  }
  const inherited = defaults ? takeDefaults(defaults, draft, place) : NOTHING_INHERITED;
  const order = build(
    draft,
    name,
    place,
    readings.map((reading) => reading.build()),
    confirmed,
    decided,
  );
  return { order, findings: draft.findings, inherited };
}

const NOTHING_INHERITED: readonly number[] = [];

function takeDefaults(defaults: Block, draft: Draft, place: Place): readonly number[] {
  // A default has no place in the order; findings about it are shown at the order’s name.
  const at: At = () => place;
  const misplaced = new Set(misplacedLines(defaults));
  return sectionsOf(defaults).flatMap(({ kind }, number) => {
    if (kind !== 'body' || misplaced.has(number)) return [];
    let isTaken = false;
    const put = (owner: Owner, key: Key, value: unknown): void => {
      isTaken = draft.putDefault(owner, key, value, place) || isTaken;
    };
    orderLine((defaults.lines[number] as Line).parsed('defaults').node, at, { put });
    return isTaken ? [number] : [];
  });
}

class ReadingDraft {
  readonly #measurements: Measurement[] = [];
  readonly #replaced: Placed<Eye>[] = [];
  #zero: Placed<number> | null = null;
  readonly #head: Omit<Reading, 'measurements' | 'replaced' | 'zero'>;

  constructor(node: Extract<LineNode, { kind: 'reading' }>, at: At) {
    const stage = node.stage?.word;
    this.#head = {
      date: node.date?.iso ?? null,
      time: node.time?.text ?? null,
      by: node.by?.text ?? null,
      with: node.with?.text ?? null,
      withPlace: node.with && at(node.with),
      stage: stage === 'uncut' || stage === 'edged' ? (stage satisfies Stage) : 'final',
      place: at((node.date ?? node.head) as Span),
    };
  }

  take(node: LineNode, at: At, draft: Draft): void {
    if (node.kind === 'figure' && node.which === 'zero') {
      if (node.figure?.value != null) this.#zero = { value: node.figure.value, place: at(node.figure) };
      return;
    }
    if (node.kind === 'eyes' && node.which === 'replaced') {
      for (const { eye, ...span } of node.eyes) {
        for (const side of eye === 'both' ? EYES : [eye]) this.#replaced.push({ value: side, place: at(span) });
      }
      return;
    }
    const measured = readingLine(node, at);
    if (!measured) {
      draft.tell('unknown-line', 'error', at(node.head as Span), { word: node.head?.word });
      return;
    }
    for (const one of measured) this.#add(one, draft);
  }

  build(): Reading {
    const { date, time, by, with: instrument, withPlace, stage, place } = this.#head;
    const [zero, measurements, replaced] = [this.#zero, this.#measurements, this.#replaced];
    return { date, time, by, with: instrument, withPlace, stage, place, zero, measurements, replaced };
  }

  #add(one: Measurement, draft: Draft): void {
    if (!one.again) {
      // What stands above the word is of another lens; below it the same thing said twice is told as anywhere.
      const since = this.#replaced.findLast(({ value }) => one.eye === null || value === one.eye)?.place.line ?? -1;
      const first = this.#measurements.find((other) => other.place.line > since && isOfSame(other, one));
      if (first && JSON.stringify(first.value) !== JSON.stringify(one.value)) {
        draft.tell('said-twice', 'warning', one.place, { in: 'reading' }, one.eye, [first.place]);
      }
    }
    this.#measurements.push(one);
  }
}

const isOfSame = (a: Measurement, b: Measurement): boolean =>
  a.quantity === b.quantity && a.eye === b.eye && slotOf(a) === slotOf(b);

function build(
  draft: Draft,
  name: string | null,
  place: Place,
  readings: readonly Reading[],
  confirmed: readonly Confirmation[],
  decided: Decision | null,
): Order {
  const { order: said, R, L } = draft;
  const frame: Frame = { a: said.a, b: said.b, dbl: said.dbl, ed: said.ed };
  const asWorn: AsWorn = { vertex: said.vertex, panto: said.panto, wrap: said.wrap };
  return {
    name,
    place,
    lenses: { R: lensOf(draft, 'R'), L: lensOf(draft, 'L') },
    pd: { binocular: said.pd, R: R.pd, L: L.pd },
    nearPd: { binocular: said.near, R: R.near, L: L.near },
    frame,
    asWorn,
    supply: said.supply?.value ?? (isMounted(draft) ? 'glazed' : 'uncut'),
    supplyFrom: said.supply ? 'said' : isMounted(draft) ? 'frame' : 'assumed',
    purpose: said.purpose,
    tested: said.tested,
    compensation: said.compensation,
    standard: said.standard,
    yoked: said.yoked !== null,
    isPrismTotal: said['prism-total'] !== null && isHalved(R, L),
    split: said.split,
    make: { R: R.make?.place ?? null, L: L.make?.place ?? null },
    readings,
    confirmed,
    decided,
  };
}

/** A whole is kept as half of it before each eye, with the same bases; a prism written for one eye beside it undoes that. */
const isHalved = ({ prism: right }: SaidOfLens, { prism: left }: SaidOfLens): boolean =>
  right !== null && left !== null && right.value.right === -left.value.right && right.value.up === left.value.up;

/** Whether something is said that is only said of lenses which go into a frame. */
const isMounted = ({ order, R, L }: Draft): boolean =>
  (order.a ?? order.pd ?? order.near) !== null || isPlaced(R) || isPlaced(L);

const isPlaced = (said: SaidOfLens): boolean => (said.pd ?? said.near ?? said.height ?? said['below-datum']) !== null;

function lensOf(draft: Draft, eye: Eye): OrderedLens {
  const [said, other] = [draft[eye], draft[otherEye(eye)]];
  const onlyOther = other.make && !said.make;
  return {
    eye,
    role: said.role?.value ?? (onlyOther ? 'absent' : 'made'),
    named: said.named?.place ?? null,
    written: powerOf(said),
    add: said.add,
    upperAdd: said['upper-add'],
    intermediate: said.intermediate,
    prism: said.prism,
    prismUnclear: said['prism-unclear'],
    design: said.design,
    material: said.material,
    height: said.height ?? heightFromDatum(said, draft.order),
    upperHeight: said['upper-height'],
    belowDatum: said['below-datum'],
    inset: said.inset,
    decentre: said.decentre,
    blank: said.blank,
    baseCurve: said['base-curve'],
    thickness: { centre: said.centre, edge: said.edge, min: said.min },
    verification: verificationOf(draft.beside('verification', eye)),
    slab: said.slab,
    thinning: said.thinning,
    rx: statedOf(draft.beside('rx', eye)),
    previous: statedOf(draft.beside('previous', eye)),
    kept: statedOf(draft.beside('kept', eye)),
    balance: statedOf(draft.beside('balance', eye)),
  };
}

/** A height below the datum line, which runs through the middle of the boxed lens. */
function heightFromDatum(said: SaidOfLens, { b }: SaidOfOrder): Placed<number> | null {
  const below = said['below-datum'];
  return below && b && { value: tidy(b.value / 2 - below.value), place: below.place };
}

function statedOf(said: SaidOfLens | null): Stated | null {
  if (!said) return null;
  const power = powerOf(said);
  const { add, prism } = said;
  return power || add || prism ? { power, add, prism } : null;
}

function powerOf({ power }: SaidOfLens): WrittenPower | null {
  return power && { value: power.value.power, form: power.value.form, place: power.place };
}

function verificationOf(said: SaidOfLens | null): Verification | null {
  const power = said && powerOf(said);
  return power && { power, add: said.add, prism: said.prism };
}
