/** From the lines of a block to an order. Never throws on any text: what cannot be understood is told and left out. */
import { type Block, type Eye, type Line, type LineNode, type LineSection, type Span, sectionsOf } from '../grammar';
import type { Power, PrismVector } from '../optics';
import { Draft } from './draft';
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
  type Distances,
  EYES,
  type Frame,
  type LensMaterial,
  type Measurement,
  type Order,
  type OrderedLens,
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
    const put = (key: string, value: unknown): void => {
      isTaken = draft.putDefault(key, value, place) || isTaken;
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
    return { zero: this.#zero, measurements: this.#measurements, replaced: this.#replaced, ...this.#head };
  }

  #add(one: Measurement, draft: Draft): void {
    if (!one.again) {
      const replaced = this.#replaced.some(
        ({ value, place }) => (one.eye === null || value === one.eye) && place.line < one.place.line,
      );
      const first = replaced
        ? undefined
        : this.#measurements.find((other) => slotOf(other) === slotOf(one) && other.eye === one.eye);
      if (first && JSON.stringify(first.value) !== JSON.stringify(one.value)) {
        draft.tell('said-twice', 'warning', one.place, { in: 'reading' }, one.eye, [first.place]);
      }
    }
    this.#measurements.push(one);
  }
}

function build(
  draft: Draft,
  name: string | null,
  place: Place,
  readings: readonly Reading[],
  confirmed: readonly Confirmation[],
  decided: Decision | null,
): Order {
  const frame: Frame = {
    a: draft.get('frame.a'),
    b: draft.get('frame.b'),
    dbl: draft.get('frame.dbl'),
    ed: draft.get('frame.ed'),
  };
  const asWorn: AsWorn = {
    vertex: draft.get('worn.vertex'),
    panto: draft.get('worn.panto'),
    wrap: draft.get('worn.wrap'),
  };
  const supply = draft.get<Supply>('supply')?.value ?? (MOUNTED.some((key) => draft.get(key)) ? 'glazed' : 'uncut');
  return {
    name,
    place,
    lenses: { R: lensOf(draft, 'R'), L: lensOf(draft, 'L') },
    pd: distancesOf(draft, 'pd'),
    nearPd: distancesOf(draft, 'near'),
    frame,
    asWorn,
    supply,
    purpose: draft.get<Purpose>('purpose'),
    tested: draft.get('tested'),
    compensation: draft.get<Compensation>('compensation'),
    standard: draft.get('standard'),
    yoked: draft.get('yoked') !== null,
    split: draft.get<Split>('split'),
    make: { R: draft.get('make.R')?.place ?? null, L: draft.get('make.L')?.place ?? null },
    readings,
    confirmed,
    decided,
  };
}

/** What is only said of lenses that go into a frame. */
const MOUNTED = ['frame.a', 'pd', 'near', 'height', 'below-datum'].flatMap((key) => [key, `R.${key}`, `L.${key}`]);

const distancesOf = (draft: Draft, key: string): Distances => ({
  binocular: draft.get(key),
  R: draft.get(`R.${key}`),
  L: draft.get(`L.${key}`),
});

function lensOf(draft: Draft, eye: Eye): OrderedLens {
  const power = powerOf(draft, `${eye}.power`);
  const onlyOther = draft.get(`make.${eye === 'R' ? 'L' : 'R'}`) && !draft.get(`make.${eye}`);
  const role = draft.get<'kept' | 'balance'>(`${eye}.role`)?.value ?? (onlyOther ? 'absent' : 'made');
  return {
    eye,
    role,
    named: draft.get(`${eye}.named`)?.place ?? null,
    written: power,
    add: draft.get(`${eye}.add`),
    intermediate: draft.get(`${eye}.intermediate`),
    prism: draft.get<PrismVector>(`${eye}.prism`),
    prismUnclear: draft.get<PrismUnclear>(`${eye}.prism-unclear`),
    design: draft.get<Design>(`${eye}.design`),
    material: draft.get<LensMaterial>(`${eye}.material`),
    height: draft.get<number>(`${eye}.height`) ?? heightFromDatum(draft, eye),
    belowDatum: draft.get(`${eye}.below-datum`),
    inset: draft.get(`${eye}.inset`),
    decentre: draft.get<Decentration>(`${eye}.decentre`),
    blank: draft.get(`${eye}.blank`),
    baseCurve: draft.get(`${eye}.base-curve`),
    thickness: {
      centre: draft.get(`${eye}.thickness.centre`),
      edge: draft.get(`${eye}.thickness.edge`),
      min: draft.get(`${eye}.thickness.min`),
    },
    verification: verificationOf(draft, eye),
    slab: draft.get<Slab>(`${eye}.slab`),
    thinning: draft.get(`${eye}.thinning`),
    rx: statedOf(draft, `rx.${eye}`),
    previous: statedOf(draft, `previous.${eye}`),
    kept: statedOf(draft, `kept.${eye}`),
    balance: statedOf(draft, `balance.${eye}`),
  };
}

/** A height below the datum line, which runs through the middle of the boxed lens. */
function heightFromDatum(draft: Draft, eye: Eye): Placed<number> | null {
  const below = draft.get<number>(`${eye}.below-datum`);
  const b = draft.get<number>('frame.b');
  return below && b && { value: tidy(b.value / 2 - below.value), place: below.place };
}

function statedOf(draft: Draft, key: string): Stated | null {
  const [power, add, prism] = [
    powerOf(draft, `${key}.power`),
    draft.get<number>(`${key}.add`),
    draft.get<PrismVector>(`${key}.prism`),
  ];
  return power || add || prism ? { power, add, prism } : null;
}

function powerOf(draft: Draft, key: string): WrittenPower | null {
  const power = draft.get<{ power: Power; form: CylinderForm }>(key);
  return power && { value: power.value.power, form: power.value.form, place: power.place };
}

function verificationOf(draft: Draft, eye: Eye): Verification | null {
  const power = powerOf(draft, `verification.${eye}.power`);
  return (
    power && {
      power,
      add: draft.get(`verification.${eye}.add`),
      prism: draft.get<PrismVector>(`verification.${eye}.prism`),
    }
  );
}
