/** Prescriptions of HL7 FHIR R4 in, as text of the notation. */
import { type Import, type Loss, type Refusal, refuse } from '../conversion';
import { inWords, isList, isObject, type Json, type JsonObject, parseJson } from '../safe-json';
import { readPrescription } from './read-prescription';

/**
 * Returns every VisionPrescription of a resource or a Bundle (JSON text) as an order. An element that the notation has no
 * place for is told as a loss; a resource that is no spectacle prescription, or contradicts itself, is refused whole, and
 * the others are taken. Never throws on any text.
 * Source: HL7 FHIR R4 (4.0.1), VisionPrescription; the same resource is valid in R4B and R5.
 */
export function fromFhir(text: string): Import {
  const parsed = parseJson(text);
  if ('error' in parsed) return refuse(parsed.error);
  const { value } = parsed;
  if (!isObject(value)) return refuse('it is JSON, but not a resource of FHIR');
  const losses: Loss[] = [];
  const refused: Refusal[] = [];
  const orders: string[] = [];
  for (const { resource, where } of resourcesIn(value, losses)) {
    const read = readPrescription(resource, where);
    losses.push(...read.losses);
    if ('refused' in read) refused.push({ message: read.refused, where });
    else orders.push(read.text);
  }
  if (orders.length === 0 && refused.length === 0) return { ...refuse(nothingIn(value)), losses };
  return { result: orders.join('\n'), losses, refused };
}

const nothingIn = ({ resourceType }: JsonObject): string =>
  typeof resourceType === 'string'
    ? `it is a ${inWords(resourceType)} of FHIR and holds no VisionPrescription`
    : 'it is JSON, but not a resource of FHIR';

interface Found {
  readonly resource: JsonObject;
  readonly where: string | null;
}

/** The prescriptions of a Bundle, or the one resource; any other resource of a Bundle is told. */
function resourcesIn(value: JsonObject, losses: Loss[]): readonly Found[] {
  if (value.resourceType === 'VisionPrescription') return [{ resource: value, where: null }];
  if (value.resourceType !== 'Bundle' || !isList(value.entry)) return [];
  return value.entry.flatMap((entry: Json, at) => {
    const resource = isObject(entry) ? entry.resource : undefined;
    const where = `entry[${at}].resource`;
    if (isObject(resource) && resource.resourceType === 'VisionPrescription') return [{ resource, where }];
    const type = isObject(resource) ? inWords(resource.resourceType) : 'without a resource';
    losses.push({ what: `${where} ${type}`, why: 'no-place', order: null, eye: null, line: null });
    return [];
  });
}
