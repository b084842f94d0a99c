/** Orders and readings out, as one Bundle of HL7 FHIR R4. */
import type { Analysis, BlockAnalysis, Instrument, Order, Reading } from '../../orders';
import { type SaidLine, saidLines } from '../../orders/write/said';
import type { Conversion, Loss, LossReason } from '../conversion';
import { uuidOf } from '../identity';
import { lossesOf, lossesOutside } from '../parts/lost';
import { orderedParts } from '../parts/ordered';
import type { Part } from '../parts/part';
import { readParts } from '../parts/read';
import { type Resource, textOf } from './json';
import { observationOf } from './observation';
import { isHeld, type PrescriptionFacts, prescriptionOf, specifiedEyes } from './prescription';

/** What a resource may name and an order does not hold. */
export interface FhirOptions extends PrescriptionFacts {
  /** Only the orders of this name. */
  readonly order?: string;
}

interface Entry {
  readonly fullUrl: string;
  readonly resource: Resource;
}

/**
 * Returns the orders of a text as VisionPrescription resources and their readings as Observations, in one Bundle as JSON
 * text: a decimal of FHIR keeps its written digits, which a number of JavaScript cannot. Lengths are millimetres, powers
 * dioptres, prism prism dioptres with its base in words before each eye, angles degrees.
 * Source: HL7 FHIR R4 (4.0.1), VisionPrescription, Observation, Bundle.
 */
export function toFhir(analysis: Analysis, { order, ...facts }: FhirOptions = {}): Conversion<string> {
  const entries: Entry[] = [];
  const losses: Loss[] = [];
  for (const [at, block] of analysis.blocks.entries()) {
    if (order !== undefined && block.order?.name !== order) continue;
    const converted = convert(block, analysis.document.starts[at] as number, analysis.context.instruments, facts);
    entries.push(...identified(converted.result, entries.length));
    losses.push(...converted.losses);
  }
  return {
    result: textOf({ resourceType: 'Bundle', type: 'collection', entry: entries.length > 0 ? entries : undefined }),
    losses,
  };
}

type Made = (about: string | undefined) => Resource;

/** A prescription with its readings; what is made later may name what was made first. */
function identified(resources: readonly Made[], before: number): readonly Entry[] {
  const entries: Entry[] = [];
  let about: string | undefined;
  for (const make of resources) {
    const resource = make(about);
    // The place in the file tells two orders apart that say the same.
    const id = uuidOf(`${before + entries.length} ${textOf(resource)}`);
    const fullUrl = `urn:uuid:${id}`;
    if (resource.resourceType === 'VisionPrescription') about = fullUrl;
    const { resourceType, ...rest } = resource;
    entries.push({ fullUrl, resource: { resourceType, id, ...rest } });
  }
  return entries;
}

function convert(
  block: BlockAnalysis,
  firstLine: number,
  instruments: ReadonlyMap<string, Instrument>,
  facts: PrescriptionFacts,
): Conversion<readonly Made[]> {
  const { order } = block;
  if (!order) return { result: [], losses: lossesOutside(block, firstLine) };
  const said = saidLines(block.block);
  const ordered = orderedParts(order, block.block);
  const hasLens = specifiedEyes(order, ordered).length > 0;
  const notes = said.filter(({ section, word }) => section === 'body' && NOTES.has(word ?? '')).map(noteOf);
  const made: Made[] = hasLens ? [() => prescriptionOf(order, ordered, notes, facts)] : [];
  const readNotes = notesByReading(order, said);
  const read: Part[] = [];
  for (const reading of order.readings) {
    const own = readNotes.get(reading) ?? [];
    for (const lens of readParts(reading, block.block, instruments)) {
      read.push(...lens.parts);
      made.push((about) =>
        observationOf(reading, lens, own, { ...(about ? { reference: about } : {}), name: order.name }),
      );
    }
  }
  const isRead = new Set(read);
  const losses = lossesOf(block, firstLine, {
    parts: [...ordered, ...read],
    part: (part) =>
      isRead.has(part) || (hasLens && isHeld(part)) ? (part.workedOut ? 'worked-out' : null) : 'no-place',
    line: (line) => fateOf(line, hasLens),
  });
  return { result: made, losses: [...losses, ...headerLosses(order, firstLine)] };
}

/** Lines of an order that a lens specification takes as notes. */
const NOTES = new Set(['note', 'coating', 'tint', 'lens', 'ref']);

const noteOf = ({ word, rest, text }: SaidLine): string => (word === 'note' ? rest : text);

/** The notes below each reading. */
function notesByReading({ readings }: Order, said: readonly SaidLine[]): ReadonlyMap<Reading, readonly string[]> {
  const notes = new Map<Reading, string[]>();
  let at = -1;
  for (const { section, word, line, rest } of said) {
    while ((readings[at + 1]?.place.line ?? Number.POSITIVE_INFINITY) <= line) at++;
    const reading = readings[at];
    if (!reading || section !== 'reading' || word !== 'note') continue;
    notes.set(reading, [...(notes.get(reading) ?? []), rest]);
  }
  return notes;
}

function fateOf({ kind, word, section }: SaidLine, hasLens: boolean): LossReason | null {
  // What is said of the zero and of the end of a reading is in the figures and in the order of the resources.
  if (kind === 'order' || kind === 'reading' || kind === 'end' || word === 'zero') return null;
  if (section === 'reading') return word === 'note' ? null : 'no-place';
  if (word === 'design' || word === 'note') return hasLens ? null : 'needed';
  if (NOTES.has(word ?? '') || word === 'balance') return hasLens ? 'as-words' : 'needed';
  return 'no-place';
}

function headerLosses({ name, readings }: Order, firstLine: number): readonly Loss[] {
  return readings.flatMap(({ time, stage, place }) => {
    const loss = (what: string): Loss => ({
      what,
      why: 'no-place',
      order: name,
      eye: null,
      line: firstLine + place.line,
    });
    return [...(time === null ? [] : [loss(`time ${time}`)]), ...(stage === 'final' ? [] : [loss(`stage ${stage}`)])];
  });
}
