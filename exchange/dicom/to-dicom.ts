/** Readings out, as Lensometry Measurements of DICOM. */
import type { Analysis, BlockAnalysis, Instrument, Order, Reading } from '../../orders';
import { designInText } from '../../orders/write';
import type { SaidLine } from '../../orders/write/said';
import type { Conversion, Loss, LossReason } from '../conversion';
import { uidOf } from '../identity';
import { groupBy } from '../parts/group';
import { lossesOf, lossesOutside } from '../parts/lost';
import type { Part } from '../parts/part';
import { type ReadLens, readParts } from '../parts/read';
import { type DicomDataSet, dataSetOf } from './data-set';
import { type Equipment, type InstanceElements, instanceOf } from './instance';
import { isHeld, lacksItsOther, lensItem } from './lens-item';

/** What an instance needs and an order does not hold. */
export interface DicomOptions {
  /** Only the orders of this name. */
  readonly order?: string;
  /** By the name of the instrument; the empty name is that of a reading without one. */
  readonly equipment?: Readonly<Record<string, Equipment>>;
}

/**
 * Returns a data set in the DICOM JSON model for every reading and repeat that has what the standard requires: a date, a
 * time and a sphere. Powers in dioptres, prism in prism dioptres with its base, axes in degrees. The name of the order
 * stands as Patient ID, since the bench knows no patient. Trailing zeros are not kept, since the standard holds numbers.
 * Source: DICOM PS3.3 A.60.1 and C.8.25.6 to C.8.25.8, PS3.18 Annex F.
 */
export function toDicomJson(analysis: Analysis, options: DicomOptions = {}): Conversion<readonly DicomDataSet[]> {
  const result: DicomDataSet[] = [];
  const losses: Loss[] = [];
  for (const [at, block] of analysis.blocks.entries()) {
    if (options.order !== undefined && block.order?.name !== options.order) continue;
    const firstLine = analysis.document.starts[at] as number;
    const converted = block.order
      ? convert(block, block.order, firstLine, analysis.context.instruments, options)
      : { result: [], losses: lossesOutside(block, firstLine) };
    result.push(...identified(converted.result, result.length));
    losses.push(...converted.losses);
  }
  return { result, losses };
}

interface Unnamed {
  readonly elements: InstanceElements;
  readonly reading: Reading;
}

/** Gives the instances of one order their identities: one study, a series for each reading. */
function identified(instances: readonly Unnamed[], before: number): readonly DicomDataSet[] {
  const content = instances.map(({ elements }) => dataSetOf(elements));
  // Worked out once; the identities below it are of its own.
  const study = uidOf(JSON.stringify([before, content]));
  const seen = new Map<Reading, { readonly series: number; instances: number }>();
  return instances.map(({ elements, reading }, at) => {
    const own = seen.get(reading) ?? { series: seen.size + 1, instances: 0 };
    own.instances++;
    seen.set(reading, own);
    const { series } = own;
    return dataSetOf({
      ...elements,
      StudyInstanceUID: study,
      SeriesInstanceUID: uidOf(`series ${series} ${study}`),
      SOPInstanceUID: uidOf(`instance ${at} ${study}`),
      SeriesNumber: series,
      InstanceNumber: own.instances,
    });
  });
}

function convert(
  block: BlockAnalysis,
  order: Order,
  firstLine: number,
  instruments: ReadonlyMap<string, Instrument>,
  { equipment = {} }: DicomOptions,
): Conversion<readonly Unnamed[]> {
  const fates = new Map<Part, LossReason | null>();
  const losses: Loss[] = [];
  const instances: Unnamed[] = [];
  const design = sharedDesign(order);
  for (const reading of order.readings) {
    const lose = (what: string, why: LossReason): void => {
      losses.push({ what, why, order: order.name, eye: null, line: firstLine + reading.place.line });
    };
    const missing = (['date', 'time'] as const).filter((part) => reading[part] === null);
    const lenses = readParts(reading, block.block, instruments);
    for (const lens of lenses) for (const part of lens.parts) fates.set(part, isHeld(part) ? 'needed' : 'no-place');
    if (lenses.length === 0) continue;
    for (const part of missing) lose(part, 'needed');
    if (reading.stage !== 'final') lose(`stage ${reading.stage}`, 'no-place');
    if (missing.length > 0) continue;
    for (const group of groupsOf(lenses)) {
      const item = (eye: 'R' | 'L') => {
        const parts = group.find((one) => one.eye === eye)?.parts ?? [];
        const made = lensItem(parts, order.lenses[eye].design?.value ?? null);
        if (made)
          for (const part of parts)
            if (isHeld(part) && !lacksItsOther(part, parts)) fates.set(part, part.workedOut ? 'worked-out' : null);
        return made ?? undefined;
      };
      const [right, left] = [item('R'), item('L')];
      if (!right && !left) continue;
      const instrument = group[0]?.with ?? null;
      instances.push({
        reading,
        elements: instanceOf({ order, reading, instrument, design, equipment, right, left }, lose),
      });
    }
  }
  const line = (said: SaidLine): LossReason | null => fateOf(said, design !== null && instances.length > 0);
  const told = lossesOf(block, firstLine, { parts: [...fates.keys()], part: (part) => fates.get(part) ?? null, line });
  return { result: instances, losses: [...told, ...distinct(losses)] };
}

/** Both lenses of one repeat, read on one instrument. */
const groupsOf = (lenses: readonly ReadLens[]): readonly (readonly ReadLens[])[] => [
  ...groupBy(lenses, (lens) => JSON.stringify([lens.repeat, lens.with])).values(),
];

/** The design in words where it is that of both lenses, since there is one description for the pair. */
function sharedDesign({ lenses }: Order): string | null {
  const [right, left] = [lenses.R.design, lenses.L.design].map((design) => design && designInText(design.value));
  return right && right === left ? right : null;
}

function fateOf({ kind, word, section }: SaidLine, hasDesign: boolean): LossReason | null {
  if (kind === 'order' || kind === 'reading' || kind === 'end') return null;
  if (section === 'reading' && word === 'zero') return null;
  return word === 'design' && hasDesign ? null : 'no-place';
}

/** Several instances of one reading lack the same thing; it is told once. */
const distinct = (losses: readonly Loss[]): readonly Loss[] => [
  ...new Map(losses.map((loss) => [JSON.stringify([loss.what, loss.line]), loss])).values(),
];
