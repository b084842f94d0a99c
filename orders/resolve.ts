/** From the lines of a block to an order. Never throws on any text: what cannot be understood is told and left out. */
import { type Block, type Eye, type Line, type LineNode, type LineSection, type Span, sectionsOf } from '../grammar';
import type { Power, PrismVector } from '../optics';
import { Draft, type Owner, type Said } from './draft';
import { tidy } from './exact';
import type { Finding, Place } from './finding';
import {
  type AsWorn,
  type Compensation,
  type Confirmation,
  type CylinderForm,
  type Decentration,
  type Decision,
  type Design,
  EYES,
  type Frame,
  type LensMaterial,
  type Measurement,
  type Order,
  type OrderedLens,
  otherEye,
  type Placed,
  type PrismUnclear,
  type Purpose,
  type Reading,
  type Slab,
  type Split,
  type Stage,
  type Stated,
  type Supply,
  type Verification,
  type WrittenPower,
} from './model';
import { type At, confirmationOf, decisionOf, orderLine } from './order-lines';
import { readingLine } from './reading-lines';
import { slotOf } from './reduce';

export interface Resolved {
  readonly order: Order;
  readonly findings: readonly Finding[];
  /** For each line of the block whether it stands in a reading. */
  readonly inReading: readonly boolean[];
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

  for (const [number, line] of block.lines.entries()) {
    const { node } = line.parsed(block.kind);
    const { kind, belowReading, unclear } = sections[number] as LineSection;
    const at: At = ({ start, end }) => ({ line: number, start, end });
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
  const inReading = sections.map(({ kind }) => kind === 'reading' || kind === 'reading-header');
  return { order, findings: draft.findings, inReading, inherited };
}

const NOTHING_INHERITED: readonly number[] = [];

function takeDefaults(defaults: Block, draft: Draft, place: Place): readonly number[] {
  // A default has no place in the order; findings about it are shown at the order’s name.
  const at: At = () => place;
  return sectionsOf(defaults).flatMap(({ kind }, number) => {
    if (kind !== 'body') return [];
    let isTaken = false;
    const put = (owner: Owner, key: string, value: unknown): void => {
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
      const replaced = this.#replaced.some(
        ({ value, place }) => (one.eye === null || value === one.eye) && place.line < one.place.line,
      );
      const first = replaced ? undefined : this.#measurements.find((other) => isOfSame(other, one));
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
  const [said, R, L] = [draft.of('order'), draft.of('R'), draft.of('L')];
  const frame: Frame = { a: said.get('a'), b: said.get('b'), dbl: said.get('dbl'), ed: said.get('ed') };
  const asWorn: AsWorn = { vertex: said.get('vertex'), panto: said.get('panto'), wrap: said.get('wrap') };
  const isMounted = frame.a !== null || [said, R, L].some(speaksOfMounting);
  return {
    name,
    place,
    lenses: { R: lensOf(draft, 'R', frame), L: lensOf(draft, 'L', frame) },
    pd: { binocular: said.get('pd'), R: R.get('pd'), L: L.get('pd') },
    nearPd: { binocular: said.get('near'), R: R.get('near'), L: L.get('near') },
    frame,
    asWorn,
    supply: said.get<Supply>('supply')?.value ?? (isMounted ? 'glazed' : 'uncut'),
    purpose: said.get<Purpose>('purpose'),
    tested: said.get('tested'),
    compensation: said.get<Compensation>('compensation'),
    standard: said.get('standard'),
    yoked: said.get('yoked') !== null,
    split: said.get<Split>('split'),
    make: { R: R.get('make')?.place ?? null, L: L.get('make')?.place ?? null },
    readings,
    confirmed,
    decided,
  };
}

/** What is only said of lenses that go into a frame. */
const MOUNTED = ['pd', 'near', 'height', 'below-datum'];

const speaksOfMounting = (said: Said): boolean => MOUNTED.some((key) => said.get(key));

function lensOf(draft: Draft, eye: Eye, frame: Frame): OrderedLens {
  const [said, other] = [draft.of(eye), draft.of(otherEye(eye))];
  const onlyOther = other.get('make') && !said.get('make');
  const role = said.get<'kept' | 'balance'>('role')?.value ?? (onlyOther ? 'absent' : 'made');
  return {
    eye,
    role,
    named: said.get('named')?.place ?? null,
    written: powerOf(said),
    add: said.get('add'),
    intermediate: said.get('intermediate'),
    prism: said.get<PrismVector>('prism'),
    prismUnclear: said.get<PrismUnclear>('prism-unclear'),
    design: said.get<Design>('design'),
    material: said.get<LensMaterial>('material'),
    height: said.get<number>('height') ?? heightFromDatum(said, frame),
    belowDatum: said.get('below-datum'),
    inset: said.get('inset'),
    decentre: said.get<Decentration>('decentre'),
    blank: said.get('blank'),
    baseCurve: said.get('base-curve'),
    thickness: { centre: said.get('centre'), edge: said.get('edge'), min: said.get('min') },
    verification: verificationOf(draft.of(`verification.${eye}`)),
    slab: said.get<Slab>('slab'),
    thinning: said.get('thinning'),
    rx: statedOf(draft.of(`rx.${eye}`)),
    previous: statedOf(draft.of(`previous.${eye}`)),
    kept: statedOf(draft.of(`kept.${eye}`)),
    balance: statedOf(draft.of(`balance.${eye}`)),
  };
}

/** A height below the datum line, which runs through the middle of the boxed lens. */
function heightFromDatum(said: Said, { b }: Frame): Placed<number> | null {
  const below = said.get<number>('below-datum');
  return below && b && { value: tidy(b.value / 2 - below.value), place: below.place };
}

function statedOf(said: Said): Stated | null {
  const [power, add, prism] = [powerOf(said), said.get<number>('add'), said.get<PrismVector>('prism')];
  return power || add || prism ? { power, add, prism } : null;
}

function powerOf(said: Said): WrittenPower | null {
  const power = said.get<{ power: Power; form: CylinderForm }>('power');
  return power && { value: power.value.power, form: power.value.form, place: power.place };
}

function verificationOf(said: Said): Verification | null {
  const power = powerOf(said);
  return power && { power, add: said.get('add'), prism: said.get<PrismVector>('prism') };
}
