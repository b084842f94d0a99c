/** The elements of Lensometry Measurements that the conversions use: DICOM PS3.3 A.60.1 and C.8.25, PS3.6. */

export const LENSOMETRY = '1.2.840.10008.5.1.4.1.1.78.1';

/** Keyword, tag and value representation. */
const ELEMENTS = [
  ['SpecificCharacterSet', '00080005', 'CS'],
  ['SOPClassUID', '00080016', 'UI'],
  ['SOPInstanceUID', '00080018', 'UI'],
  ['StudyDate', '00080020', 'DA'],
  ['ContentDate', '00080023', 'DA'],
  ['StudyTime', '00080030', 'TM'],
  ['ContentTime', '00080033', 'TM'],
  ['AccessionNumber', '00080050', 'SH'],
  ['Modality', '00080060', 'CS'],
  ['Manufacturer', '00080070', 'LO'],
  ['ReferringPhysicianName', '00080090', 'PN'],
  ['StationName', '00081010', 'SH'],
  ['OperatorsName', '00081070', 'PN'],
  ['ManufacturerModelName', '00081090', 'LO'],
  ['PatientName', '00100010', 'PN'],
  ['PatientID', '00100020', 'LO'],
  ['PatientBirthDate', '00100030', 'DA'],
  ['PatientSex', '00100040', 'CS'],
  ['DeviceSerialNumber', '00181000', 'LO'],
  ['SoftwareVersions', '00181020', 'LO'],
  ['StudyInstanceUID', '0020000D', 'UI'],
  ['SeriesInstanceUID', '0020000E', 'UI'],
  ['StudyID', '00200010', 'SH'],
  ['SeriesNumber', '00200011', 'IS'],
  ['InstanceNumber', '00200013', 'IS'],
  ['CylinderAxis', '00220009', 'FL'],
  ['MeasurementLaterality', '00240113', 'CS'],
  ['LensDescription', '00460012', 'LO'],
  ['RightLensSequence', '00460014', 'SQ'],
  ['LeftLensSequence', '00460015', 'SQ'],
  ['UnspecifiedLateralityLensSequence', '00460016', 'SQ'],
  ['CylinderSequence', '00460018', 'SQ'],
  ['PrismSequence', '00460028', 'SQ'],
  ['HorizontalPrismPower', '00460030', 'FD'],
  ['HorizontalPrismBase', '00460032', 'CS'],
  ['VerticalPrismPower', '00460034', 'FD'],
  ['VerticalPrismBase', '00460036', 'CS'],
  ['LensSegmentType', '00460038', 'CS'],
  ['OpticalTransmittance', '00460040', 'FD'],
  ['ChannelWidth', '00460042', 'FD'],
  ['AddNearSequence', '00460100', 'SQ'],
  ['AddIntermediateSequence', '00460101', 'SQ'],
  ['AddPower', '00460104', 'FD'],
  ['ViewingDistance', '00460106', 'FD'],
  ['SpherePower', '00460146', 'FD'],
  ['CylinderPower', '00460147', 'FD'],
] as const;

export type Keyword = (typeof ELEMENTS)[number][0];

const BY_KEYWORD = new Map(ELEMENTS.map(([keyword, tag, vr]) => [keyword, { tag, vr }]));
const BY_TAG: ReadonlyMap<string, Keyword> = new Map(ELEMENTS.map(([keyword, tag]) => [tag, keyword]));

export const elementOf = (keyword: Keyword): { readonly tag: string; readonly vr: string } =>
  BY_KEYWORD.get(keyword) as { readonly tag: string; readonly vr: string };

export const tagOf = (keyword: Keyword): string => elementOf(keyword).tag;

/** `SpherePower`, or the tag itself of an element that nobody here knows. */
export const keywordOf = (tag: string): string => BY_TAG.get(tag) ?? tag;
