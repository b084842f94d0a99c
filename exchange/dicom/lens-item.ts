/** One lens as an item of a lens sequence. */
import type { Design } from '../../orders';
import { PART_UNITS, type Part, type PartCode } from '../parts/part';
import { type DicomDataSet, dataSetOf } from './data-set';

/** Facts that an item holds, and the points of the lens at which it means them to be read. */
const HELD: Partial<Record<PartCode, readonly (string | null)[]>> = {
  sphere: [null, 'distance-point'],
  cylinder: [null, 'distance-point'],
  axis: [null, 'distance-point'],
  add: [null, 'near-point'],
  intermediate: [null],
  'prism-in': [null, 'prism-point'],
  'prism-up': [null, 'prism-point'],
};

export const isHeld = ({ code, at }: Part): boolean => HELD[code]?.includes(at) ?? false;

/** Whether the item cannot hold a fact, since the other part of the prism was not read. */
export const lacksItsOther = ({ code }: Part, parts: readonly Part[]): boolean =>
  PART_UNITS[code] === 'prism' && parts.filter((part) => PART_UNITS[part.code] === 'prism' && isHeld(part)).length < 2;

/** The item, or null where there is no sphere, without which the standard has none. */
export function lensItem(parts: readonly Part[], design: Design | null): DicomDataSet | null {
  const figure = (code: PartCode): number | undefined => {
    const part = parts.find((one) => one.code === code && isHeld(one));
    return part && Number(part.text) + 0;
  };
  const [sphere, cylinder, axis] = [figure('sphere'), figure('cylinder'), figure('axis')];
  if (sphere === undefined) return null;
  return dataSetOf({
    CylinderSequence:
      cylinder === undefined || axis === undefined
        ? undefined
        : dataSetOf({ CylinderPower: cylinder, CylinderAxis: axis }),
    PrismSequence: prismItem(figure('prism-in'), figure('prism-up')),
    LensSegmentType: segmentType(design),
    AddNearSequence: addItem(figure('add')),
    AddIntermediateSequence: addItem(figure('intermediate')),
    SpherePower: sphere,
  });
}

const addItem = (add: number | undefined): DicomDataSet | undefined =>
  add === undefined ? undefined : dataSetOf({ AddPower: add });

/** All four members stand together, so a prism of which one part was not read cannot be written. */
function prismItem(inwards: number | undefined, up: number | undefined): DicomDataSet | undefined {
  if (inwards === undefined || up === undefined) return undefined;
  return dataSetOf({
    HorizontalPrismPower: Math.abs(inwards),
    HorizontalPrismBase: inwards < 0 ? 'OUT' : 'IN',
    VerticalPrismPower: Math.abs(up),
    VerticalPrismBase: up < 0 ? 'DOWN' : 'UP',
  });
}

function segmentType(design: Design | null): string | undefined {
  if (design?.type === 'progressive') return 'PROGRESSIVE';
  const isSegment = design?.type === 'bifocal' || design?.type === 'trifocal' || design?.type === 'double';
  return isSegment ? 'NONPROGRESSIVE' : undefined;
}
