/** One data set of Lensometry Measurements as a reading. */
import { type Eye, isDay, type Reading } from '../../orders';
import { oneLine, quoted } from '../../orders/write';
import type { Loss, LossReason } from '../conversion';
import { checkedFigure, isLonely, powerProblem } from '../parts/checked';
import { isDesign } from '../parts/design-words';
import type { PartCode } from '../parts/part';
import type { Fact, ReadFacts } from '../parts/to-order';
import type { JsonObject } from '../safe-json';
import { NotTaken, ReadSet } from './read-set';
import { type Keyword, LENSOMETRY } from './tags';

export interface ReadInstance {
  readonly order: string | null;
  readonly head: Pick<Reading, 'date' | 'time' | 'by' | 'with'>;
  readonly lenses: readonly Omit<ReadFacts, 'again'>[];
  /** Lines of the order. */
  readonly lines: readonly string[];
  readonly losses: readonly Loss[];
}

/** What a data set says of itself, or is said again by what is read. */
const OF_ITSELF: readonly Keyword[] = [
  'SpecificCharacterSet',
  'SOPInstanceUID',
  'StudyInstanceUID',
  'SeriesInstanceUID',
  'SeriesNumber',
  'InstanceNumber',
  'MeasurementLaterality',
];

/** Throws NotTaken where it is no measurement of lenses, or could be taken for another one. */
export function readInstance(set: JsonObject): ReadInstance {
  const read = new ReadSet(set);
  refuseOthers(read);
  read.pass(...OF_ITSELF);
  const order = read.text('PatientID');
  const losses: Loss[] = [];
  const lose = (what: string, why: LossReason, eye: Loss['eye'] = null): void => {
    losses.push({ what, why, order, eye, line: null });
  };
  const station = read.text('StationName');
  const head = {
    date: dateOf(read.text('ContentDate')),
    time: timeOf(read.text('ContentTime'), lose),
    by: read.text('OperatorsName'),
    with: station ?? known(read.text('ManufacturerModelName')),
  };
  // What nobody knew was written as unknown, and is nothing to tell of.
  for (const keyword of ['Manufacturer', 'ManufacturerModelName', 'DeviceSerialNumber', 'SoftwareVersions'] as const) {
    const value = known(read.text(keyword));
    if (value !== null && value !== head.with) lose(`${keyword} ${value}`, 'no-place');
  }
  const description = read.text('LensDescription');
  const hasDesign = description !== null && isDesign(description);
  const lines =
    description === null ? [] : [hasDesign ? `design ${oneLine(description)}` : `note ${quoted(description)}`];
  const lenses = (['R', 'L'] as const).flatMap((eye) => {
    const item = read.item(eye === 'R' ? 'RightLensSequence' : 'LeftLensSequence');
    return item ? [{ eye, facts: readLens(item, eye, hasDesign, lose) }] : [];
  });
  if (lenses.length === 0) throw new NotTaken('it measures no lens');
  read.rest(lose);
  return { order, head, lenses, lines, losses };
}

function refuseOthers(read: ReadSet): void {
  const sopClass = read.text('SOPClassUID');
  const modality = read.text('Modality');
  const isLensometry = sopClass === null ? modality === 'LEN' : sopClass === LENSOMETRY;
  if (!isLensometry) throw new NotTaken('it is no Lensometry Measurement of DICOM');
  if (read.item('UnspecifiedLateralityLensSequence')) throw new NotTaken('it does not say which eye the lens is for');
}

type Lose = (what: string, why: LossReason, eye?: Loss['eye']) => void;

function readLens(item: ReadSet, eye: Eye, hasDesign: boolean, lose: Lose): readonly Fact[] {
  const values = new Map<PartCode, number>();
  const take = (code: PartCode, set: ReadSet | null, keyword: Keyword, sign: 1 | -1 = 1): void => {
    const digits = set?.digits(keyword);
    if (digits == null) return;
    // Single precision makes 14.300000190734863 of 14.3.
    const checked = checkedFigure(code, code === 'axis' ? String(Math.round(Number(digits) * 100) / 100) : digits);
    if ('error' in checked) throw new NotTaken(checked.error);
    if (checked.rounded) lose(`${keyword} ${digits}`, 'rounded', eye);
    values.set(code, sign * checked.value + 0);
  };
  take('sphere', item, 'SpherePower');
  if (!values.has('sphere')) throw new NotTaken('a lens has no sphere');
  const cylinder = item.item('CylinderSequence');
  take('cylinder', cylinder, 'CylinderPower');
  take('axis', cylinder, 'CylinderAxis');
  const problem = powerProblem(values);
  if (problem) throw new NotTaken(problem);
  if (!values.get('cylinder')) values.delete('axis');
  const near = item.item('AddNearSequence');
  const middle = item.item('AddIntermediateSequence');
  take('add', near, 'AddPower');
  take('intermediate', middle, 'AddPower');
  const prism = item.item('PrismSequence');
  if (prism) {
    take('prism-in', prism, 'HorizontalPrismPower', signOf(prism, 'HorizontalPrismBase', 'IN', 'OUT'));
    take('prism-up', prism, 'VerticalPrismPower', signOf(prism, 'VerticalPrismBase', 'UP', 'DOWN'));
  }
  const segment = item.text('LensSegmentType');
  // A design in words says more than the type; without one the type alone is no line of an order.
  if (segment !== null && !hasDesign) lose(`LensSegmentType ${segment}`, 'no-place', eye);
  for (const [set, path] of [
    [item, ''],
    [cylinder, 'CylinderSequence.'],
    [near, 'AddNearSequence.'],
    [middle, 'AddIntermediateSequence.'],
    [prism, 'PrismSequence.'],
  ] as const)
    set?.rest(lose, path, eye);
  return [...values].flatMap(([code, value]) => {
    if (!isLonely(code, values)) return { code, eye, value };
    lose(`AddIntermediateSequence ${value}`, 'unclear', eye);
    return [];
  });
}

function signOf(prism: ReadSet, keyword: Keyword, plus: string, minus: string): 1 | -1 {
  const base = prism.text(keyword);
  if (base === plus) return 1;
  if (base === minus) return -1;
  throw new NotTaken(`there is no ${keyword} called ${base ?? 'nothing'}`);
}

const known = (text: string | null): string | null => (text === 'UNKNOWN' ? null : text);

function dateOf(text: string | null): string | null {
  const parts = text === null ? null : /^(\d{4})\.?(\d\d)\.?(\d\d)$/.exec(text);
  if (!parts) {
    if (text !== null) throw new NotTaken(`ContentDate ${text} is no date`);
    return null;
  }
  const iso = parts.slice(1).join('-');
  if (!isDay(iso)) throw new NotTaken(`ContentDate ${text} is no day of the calendar`);
  return iso;
}

/** Hours and minutes, and seconds where they are given; parts of a second are told. */
function timeOf(text: string | null, lose: Lose): string | null {
  if (text === null) return null;
  const parts = /^([01]\d|2[0-3]):?([0-5]\d)(?::?([0-5]\d)(\.\d{1,6})?)?$/.exec(text);
  if (!parts) {
    lose(`ContentTime ${text}`, 'unclear');
    return null;
  }
  const [, hours, minutes, seconds, rest] = parts;
  if (rest !== undefined && Number(rest) !== 0) lose(`ContentTime ${text}`, 'rounded');
  return [hours, minutes, seconds].filter((part) => part !== undefined).join(':');
}
