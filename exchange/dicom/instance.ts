/** The elements of one instance of Lensometry Measurements, without its identities. */
import type { Order, Reading } from '../../orders';
import type { LossReason } from '../conversion';
import type { DicomDataSet, dataSetOf } from './data-set';
import { LENSOMETRY } from './tags';
import { fitting, TEXT_LENGTHS } from './texts';

/** What DICOM requires of an instrument and an order file does not say. */
export interface Equipment {
  readonly manufacturer: string;
  readonly model: string;
  readonly serial: string;
  readonly software: string;
}

/** Stands where the standard wants a value and nobody knows one; each time it is told. */
const UNKNOWN: Equipment = { manufacturer: 'UNKNOWN', model: 'UNKNOWN', serial: 'UNKNOWN', software: 'UNKNOWN' };

export type InstanceElements = Parameters<typeof dataSetOf>[0];

export interface Instance {
  readonly order: Order;
  /** With a date and a time. */
  readonly reading: Reading;
  readonly instrument: string | null;
  readonly design: string | null;
  readonly equipment: Readonly<Record<string, Equipment>>;
  readonly right: DicomDataSet | undefined;
  readonly left: DicomDataSet | undefined;
}

export function instanceOf(
  { order, reading, instrument, design, equipment, right, left }: Instance,
  lose: (what: string, why: LossReason) => void,
): InstanceElements {
  const known = Object.hasOwn(equipment, instrument ?? '') ? equipment[instrument ?? ''] : undefined;
  if (!known) lose(`maker, model, serial number and software of ${instrument ?? 'the instrument'}`, 'needed');
  const { manufacturer, model, serial, software } = known ?? UNKNOWN;
  const text = (value: string | null, vr: keyof typeof TEXT_LENGTHS): string => {
    const fit = fitting(value ?? '', TEXT_LENGTHS[vr]);
    if (fit !== (value ?? '')) lose(`“${value}”`, 'rounded');
    return fit;
  };
  const by = text(reading.by, 'PN');
  return {
    SpecificCharacterSet: 'ISO_IR 192',
    SOPClassUID: LENSOMETRY,
    StudyDate: '',
    ContentDate: (reading.date ?? '').replaceAll('-', ''),
    StudyTime: '',
    ContentTime: timeOf(reading.time ?? ''),
    AccessionNumber: '',
    Modality: 'LEN',
    Manufacturer: text(manufacturer, 'LO'),
    ReferringPhysicianName: '',
    StationName: instrument === null ? undefined : text(instrument, 'SH'),
    OperatorsName: by === '' ? undefined : { Alphabetic: by },
    ManufacturerModelName: text(model, 'LO'),
    PatientName: '',
    PatientID: text(order.name, 'LO'),
    PatientBirthDate: '',
    PatientSex: '',
    DeviceSerialNumber: text(serial, 'LO'),
    SoftwareVersions: text(software, 'LO'),
    StudyID: '',
    MeasurementLaterality: right && left ? 'B' : right ? 'R' : 'L',
    LensDescription: text(design, 'LO'),
    RightLensSequence: right,
    LeftLensSequence: left,
  };
}

/** `14:30` is 1430 and `14:30:12` is 143012. */
const timeOf = (time: string): string =>
  time
    .split(':')
    .map((part) => part.padStart(2, '0'))
    .join('');
