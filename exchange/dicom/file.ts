/**
 * Data sets as files of DICOM Part 10, explicit VR little endian. Written by hand: such a data set holds short texts and
 * numbers only, and the general libraries bring a dictionary many times the size of everything here.
 */
import type { Conversion, Loss } from '../conversion';
import { uidOf } from '../identity';
import type { DicomDataSet, DicomElement, DicomPersonName, DicomValue } from './data-set';
import { keywordOf, tagOf } from './tags';
import { utf8 } from './utf-8';

const EXPLICIT_LITTLE_ENDIAN = '1.2.840.10008.1.2.1';

/** Says which program wrote a file; it is the same for all versions, so that files do not change with them. */
const IMPLEMENTATION = uidOf('implementation');

/** Value representations whose length takes four bytes, after two that are reserved (PS3.5, 7.1.2). */
const LONG = new Set(['SQ', 'UT', 'UC', 'UR']);
const TEXTS = new Set([
  'AE',
  'AS',
  'CS',
  'DA',
  'DS',
  'DT',
  'IS',
  'LO',
  'LT',
  'PN',
  'SH',
  'ST',
  'TM',
  'UC',
  'UI',
  'UR',
  'UT',
]);

/** Bytes and writer of each binary number. */
const NUMBERS: Readonly<Record<string, readonly [size: number, write: (view: DataView, value: number) => void]>> = {
  FD: [8, (view, value) => view.setFloat64(0, value, true)],
  FL: [4, (view, value) => view.setFloat32(0, value, true)],
  SL: [4, (view, value) => view.setInt32(0, value, true)],
  SS: [2, (view, value) => view.setInt16(0, value, true)],
  UL: [4, (view, value) => view.setUint32(0, value, true)],
  US: [2, (view, value) => view.setUint16(0, value, true)],
};

/**
 * Returns a data set of the DICOM JSON model as the bytes of a file. Elements whose value representation is none of texts,
 * numbers and sequences, or that point to data elsewhere, are told as losses.
 * Source: DICOM PS3.10, 7.1; PS3.5, 7.1.2 and 7.5.
 */
export function toDicomFile(dataSet: DicomDataSet): Conversion<Uint8Array> {
  const losses: Loss[] = [];
  const uid = (keyword: 'SOPClassUID' | 'SOPInstanceUID'): DicomElement => ({
    vr: 'UI',
    Value: dataSet[tagOf(keyword)]?.Value ?? [],
  });
  const meta = encodeSet(
    {
      '00020002': uid('SOPClassUID'),
      '00020003': uid('SOPInstanceUID'),
      '00020010': { vr: 'UI', Value: [EXPLICIT_LITTLE_ENDIAN] },
      '00020012': { vr: 'UI', Value: [IMPLEMENTATION] },
    },
    losses,
  );
  const version = [...header('00020001', 'OB', 2), 0, 1];
  const length = encodeSet({ '00020000': { vr: 'UL', Value: [version.length + meta.length] } }, losses);
  const own = Object.fromEntries(Object.entries(dataSet).filter(([tag]) => !tag.startsWith('0002')));
  const bytes = [...utf8('\0'.repeat(128)), ...utf8('DICM'), ...length, ...version, ...meta, ...encodeSet(own, losses)];
  return { result: Uint8Array.from(bytes), losses };
}

function encodeSet(dataSet: DicomDataSet, losses: Loss[]): readonly number[] {
  return Object.keys(dataSet)
    .sort()
    .flatMap((tag) => {
      const element = dataSet[tag] as DicomElement;
      const value = bytesOf(element, losses);
      // Most representations count their bytes in two, so a longer text cannot stand there.
      if (value && (LONG.has(element.vr) || value.length < 0xffff))
        return [...header(tag, element.vr, value.length), ...value];
      losses.push({ what: `${keywordOf(tag)} (${element.vr})`, why: 'no-place', order: null, eye: null, line: null });
      return [];
    });
}

function header(tag: string, vr: string, length: number): readonly number[] {
  const [group, element] = [Number.parseInt(tag.slice(0, 4), 16), Number.parseInt(tag.slice(4), 16)];
  const isLong = LONG.has(vr) || vr === 'OB';
  const size = isLong ? [0, 0, ...little(length, 4)] : little(length, 2);
  return [...little(group, 2), ...little(element, 2), ...utf8(vr), ...size];
}

const little = (value: number, bytes: number): readonly number[] =>
  Array.from({ length: bytes }, (_, at) => Math.floor(value / 256 ** at) % 256);

/** The bytes of all values, or null where they cannot be written. */
function bytesOf(
  { vr, Value = [], BulkDataURI, InlineBinary }: DicomElement,
  losses: Loss[],
): readonly number[] | null {
  if (BulkDataURI !== undefined || InlineBinary !== undefined) return null;
  if (vr === 'SQ') return Value.flatMap((item) => itemOf(item as DicomDataSet, losses));
  const number = Object.hasOwn(NUMBERS, vr) ? NUMBERS[vr] : undefined;
  if (number) {
    const [size, write] = number;
    return Value.flatMap((value) => {
      const view = new DataView(new ArrayBuffer(size));
      write(view, Number(value));
      return [...new Uint8Array(view.buffer)];
    });
  }
  if (!TEXTS.has(vr)) return null;
  const bytes = utf8(Value.map((value) => textOf(vr, value)).join('\\'));
  return bytes.length % 2 === 0 ? bytes : [...bytes, vr === 'UI' ? 0 : 0x20];
}

function itemOf(item: DicomDataSet, losses: Loss[]): readonly number[] {
  const content = encodeSet(item, losses);
  return [...little(0xfffe, 2), ...little(0xe000, 2), ...little(content.length, 4), ...content];
}

function textOf(vr: string, value: DicomValue): string {
  if (value === null) return '';
  if (vr !== 'PN' || typeof value !== 'object') return String(value);
  const { Alphabetic = '', Ideographic = '', Phonetic = '' } = value as DicomPersonName;
  return [Alphabetic, Ideographic, Phonetic].join('=').replace(/=+$/, '');
}
