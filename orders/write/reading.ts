/** A reading as lines of the notation. */
import type { Eye } from '../../grammar';
import type { AddReading, Measurement, Placed, Reading, Ring, SlabReading } from '../model';
import { decimal, dioptres, nameInText, plainly } from './figures';
import { powerInText, readPrismInText } from './powers';

/** The header and the lines below it. A warp is kept as a difference, whose two figures are gone; it is left out. */
export function readingInText(reading: Reading): readonly string[] {
  const { date, time, by, stage, zero, measurements, replaced } = reading;
  const header = [
    'reading',
    date,
    time,
    by && `by ${nameInText(by)}`,
    reading.with && `with ${nameInText(reading.with)}`,
    stage === 'final' ? null : `stage ${stage}`,
  ];
  return [
    header.filter(Boolean).join(' '),
    ...(zero ? [`zero ${dioptres(zero.value)}`] : []),
    ...inOrder(groupsOf(measurements), replaced),
  ];
}

/** What is said of a new lens holds from its line on, so it stays between the lines where it stood. */
function inOrder(groups: readonly (readonly Measurement[])[], replaced: readonly Placed<Eye>[]): string[] {
  const lines: string[] = [];
  const waiting = [...replaced];
  for (const group of groups) {
    while (waiting[0] && waiting[0].place.line < (group[0] as Measurement).place.line)
      lines.push(`replaced ${waiting.shift()?.value}`);
    const line = lineOf(group);
    if (line) lines.push(line);
  }
  return [...lines, ...waiting.map(({ value }) => `replaced ${value}`)];
}

/** Lines that hold one figure for each eye. */
const PAIRED = new Set<Measurement['quantity']>([
  'pd',
  'near-pd',
  'optical-centres',
  'height',
  'base-curve',
  'prism',
  'centre-thickness',
  'edge-thickness',
  'min-thickness',
]);

/** Measurements that share a line: both eyes of one quantity, an add with its intermediate. */
function groupsOf(measurements: readonly Measurement[]): readonly (readonly Measurement[])[] {
  const groups: Measurement[][] = [];
  for (const one of measurements) {
    const before = groups.at(-1);
    if (before?.length === 1 && belongTogether(before[0] as Measurement, one)) before.push(one);
    else groups.push([one]);
  }
  return groups;
}

function belongTogether(first: Measurement, second: Measurement): boolean {
  const isSameSite = (['again', 'with', 'at', 'corrected'] as const).every((key) => first[key] === second[key]);
  if (!isSameSite) return false;
  if (second.quantity === 'intermediate') return first.quantity === 'add' && first.eye === second.eye;
  return first.quantity === second.quantity && PAIRED.has(first.quantity) && first.eye === 'R' && second.eye === 'L';
}

function lineOf(group: readonly Measurement[]): string | null {
  const [one, other] = group as [Measurement, Measurement | undefined];
  const said = other && other.quantity !== 'intermediate' ? `${saidOf(one)} ${saidOf(other)}` : saidOf(one);
  const word = wordOf(one);
  if (!said || word === null) return null;
  return [
    one.again ? 'again' : null,
    word,
    said,
    other?.quantity === 'intermediate' ? `intermediate ${dioptres(other.value)}` : null,
    one.at && `at ${one.at}`,
    one.with && `with ${nameInText(one.with)}`,
    one.corrected ? 'corrected' : null,
  ]
    .filter(Boolean)
    .join(' ');
}

/** The first word of the line, empty where the eye is the first; null where the notation has no such line. */
function wordOf(one: Measurement): string | null {
  switch (one.quantity) {
    case 'power':
      return '';
    case 'add':
      return one.value.kind === 'clock' ? 'clock' : 'add';
    case 'segment-width':
    case 'segment-tilt':
      return 'segment';
    case 'centre-thickness':
    case 'edge-thickness':
    case 'min-thickness':
      return 'thickness';
    case 'slab':
      return isReverse(one.value) ? 'reverse-slab' : 'slab-off';
    case 'intermediate':
    case 'warp':
      return null;
    default:
      return one.quantity;
  }
}

function saidOf(one: Measurement): string {
  const eye = one.eye === null ? '' : `${one.eye} `;
  switch (one.quantity) {
    case 'power':
      return eye + powerInText(one.value, one.value.form);
    case 'add':
      return eye + addInText(one.value);
    case 'prism':
      if (!one.eye) return '';
      return eye + (one.ring ? baseInText(one.ring) : readPrismInText(one.value, one.eye, one.unsaid));
    case 'slab':
      return one.value.kind === 'clock'
        ? `${eye}clock ${dioptres(one.value.from)} -> ${dioptres(one.value.to)}`
        : `${eye}${decimal(Math.abs(one.value.value), 2)}`;
    case 'segment-tilt':
      return `${eye}tilt ${plainly(Math.abs(one.value))}${endOf(one)}`;
    case 'base-curve':
      return eye + dioptres(one.value).replace('+', '');
    case 'centre-thickness':
    case 'edge-thickness':
    case 'min-thickness':
      return `${eye}${one.quantity.replace('-thickness', '')} ${plainly(one.value)}`;
    case 'impact':
    case 'cosmetic':
    case 'marking':
      return eye + one.value;
    default:
      return eye + plainly(one.value);
  }
}

const isReverse = (slab: SlabReading): boolean => (slab.kind === 'clock' ? slab.reverse : slab.value < 0);

const endOf = ({ value, unsided }: Extract<Measurement, { quantity: 'segment-tilt' }>): string =>
  unsided || value === 0 ? '' : value > 0 ? ' nasal-up' : ' nasal-down';

/** `2.06 base 014`, as it is read on a ring of the target. */
const baseInText = ({ amount, degrees }: Ring): string =>
  `${decimal(amount, 2)} base ${plainly(degrees).padStart(3, '0')}`;

function addInText(add: AddReading): string {
  if (add.kind === 'value') return `${dioptres(add.value)}${add.engraved ? ' engraved' : ''}`;
  const surface = add.kind === 'drum' && add.surface ? ` ${add.surface}` : '';
  return `${dioptres(add.from)} -> ${dioptres(add.to)}${surface}`;
}
