/** Addresses, codes and units of FHIR R4, UCUM and the DICOM ontology that the conversions use. */
import type { PartCode, PartUnit } from '../parts/part';

/** Codes and extensions of our own. The name is reserved for examples, so it will never be anyone else's. */
const OWN = 'https://lentil.example/fhir';
export const OWN_CODES = `${OWN}/fact`;

/** Address of the extension that holds a fact which a prescription has no element for. */
export const extensionOf = (code: PartCode): string => `${OWN}/${code}`;

/** HL7 FHIR R4 4.0.1, code systems and extensions of the specification. */
export const PRODUCT_CODES = 'http://terminology.hl7.org/CodeSystem/ex-visionprescriptionproduct';
export const BASE_CODES = 'http://hl7.org/fhir/vision-base-codes';
export const DATA_ABSENT = 'http://hl7.org/fhir/StructureDefinition/data-absent-reason';

const UCUM = 'http://unitsofmeasure.org';
export const DICOM_CODES = 'http://dicom.nema.org/resources/ontology/DCM';

/** Units as UCUM writes them: `[diop]` and `[p'diop]`, never `D`. */
const UNITS: Readonly<Record<Exclude<PartUnit, 'words'>, readonly [unit: string, code: string]>> = {
  D: ['D', '[diop]'],
  prism: ['prism D', "[p'diop]"],
  deg: ['deg', 'deg'],
  mm: ['mm', 'mm'],
};

export const unitOf = (unit: Exclude<PartUnit, 'words'>) => {
  const [name, code] = UNITS[unit];
  return { unit: name, system: UCUM, code };
};

/** UCUM code of a unit. */
export const ucumOf = (unit: Exclude<PartUnit, 'words'>): string => UNITS[unit][1];

/** Concepts of DICOM PS3.16, TID 2020 and 2021, for what a component says. */
export const DICOM_CONCEPTS: Readonly<Record<string, string>> = {
  add: '111672',
  intermediate: '111673',
  'horizontal-prism': '111675',
  'horizontal-base': '111676',
  'vertical-prism': '111677',
  'vertical-base': '111678',
  pd: '111679',
  'near-pd': '111680',
};

/** Facts of a lens that are carried in an extension of its specification. */
export const LENS_EXTENSIONS: readonly PartCode[] = ['pd', 'near-pd', 'height', 'base-curve'];

/** Facts of the pair that are carried in an extension of the prescription. */
export const PAIR_EXTENSIONS: readonly PartCode[] = [
  'pd',
  'near-pd',
  'frame-a',
  'frame-b',
  'frame-dbl',
  'frame-ed',
  'vertex',
  'panto',
  'wrap',
];
