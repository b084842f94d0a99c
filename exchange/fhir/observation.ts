/** What was read of one lens as an Observation of HL7 FHIR R4. */
import type { Reading } from '../../orders';
import { PART_UNITS, type Part } from '../parts/part';
import type { ReadLens } from '../parts/read';
import { BASE_CODES, DICOM_CODES, DICOM_CONCEPTS, OWN_CODES, unitOf } from './codes';
import { decimalOf, given, type Resource } from './json';

const SIDES = { R: 'right', L: 'left' } as const;

/**
 * The resource without its id. A date goes over; a time does not, since FHIR asks for its offset from UTC.
 * @param about reference to the prescription and the name of the order, where there are any
 */
export function observationOf(
  reading: Reading,
  { eye, repeat, parts, with: instrument }: ReadLens,
  notes: readonly string[],
  about: { readonly reference?: string; readonly name: string | null },
): Resource {
  const what = eye ? `${SIDES[eye]} lens` : 'pair';
  const text = `focimeter reading, ${what}${repeat > 0 ? `, repeat ${repeat}` : ''}`;
  const focus = given({ reference: about.reference, display: about.name ?? undefined });
  return given({
    resourceType: 'Observation',
    identifier: about.name === null ? undefined : [{ value: about.name }],
    status: 'final',
    code: { coding: [{ system: DICOM_CODES, code: 'LEN' }], text },
    focus: Object.keys(focus).length > 0 ? [focus] : undefined,
    effectiveDateTime: reading.date ?? undefined,
    performer: reading.by === null ? undefined : [{ display: reading.by }],
    note: notes.map((note) => ({ text: note })),
    bodySite: eye ? { text: `${SIDES[eye]} eye` } : undefined,
    device: instrument === null ? undefined : { display: instrument },
    component: parts.flatMap(components),
  });
}

function components(part: Part): readonly Resource[] {
  const { code, text, at } = part;
  if (code === 'prism-in') return prism(part, 'horizontal', 'in', 'out');
  if (code === 'prism-up') return prism(part, 'vertical', 'up', 'down');
  const unit = PART_UNITS[code];
  if (unit === 'words') return [{ code: coded(code, at), valueString: text }];
  // The concepts of DICOM for distances between the pupils are those of both eyes.
  const isPerEye = (code === 'pd' || code === 'near-pd') && part.eye !== null;
  return [{ code: coded(code, at, !isPerEye), valueQuantity: { value: decimalOf(text), ...unitOf(unit) } }];
}

function prism({ text, at }: Part, which: string, plus: string, minus: string): readonly Resource[] {
  const isMinus = text.startsWith('-');
  const value = decimalOf(isMinus ? text.slice(1) : text);
  const amount = { code: coded(`${which}-prism`, at), valueQuantity: { value, ...unitOf('prism') } };
  if (Number(text) === 0) return [amount];
  const base = isMinus ? minus : plus;
  const concept = { coding: [{ system: BASE_CODES, code: base }], text: base };
  return [amount, { code: coded(`${which}-base`, at), valueCodeableConcept: concept }];
}

/** A figure read at another point of the lens is another fact, so its code says the point. */
function coded(code: string, at: string | null, hasConcept = true): Resource {
  const own = { system: OWN_CODES, code: at === null ? code : `${code}-at-${at}` };
  const concept = hasConcept && at === null ? DICOM_CONCEPTS[code] : undefined;
  const coding = concept === undefined ? [own] : [own, { system: DICOM_CODES, code: concept }];
  const words = code.replaceAll('-', ' ');
  return { coding, text: at === null ? words : `${words} at the ${at.replaceAll('-', ' ')}` };
}
