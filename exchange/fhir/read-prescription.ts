/** One VisionPrescription as an order. */
import type { Eye } from '../../orders';
import { writeOrder } from '../../orders/write';
import type { Loss } from '../conversion';
import { orderFrom } from '../parts/to-order';
import { inWords, isList, isObject, type Json, type JsonObject } from '../safe-json';
import { PAIR_EXTENSIONS } from './codes';
import { readExtensions } from './read-extensions';
import { readLens } from './read-lens';
import { NotTaken, Taking } from './taking';

export type ReadOrder =
  | { readonly text: string; readonly losses: readonly Loss[] }
  | { readonly refused: string; readonly losses: readonly [] };

/** What a resource says of itself or is read here; `text` is the same once more in words. */
const KNOWN = new Set(['resourceType', 'id', 'meta', 'text', 'identifier', 'status', 'lensSpecification', 'extension']);

export function readPrescription(resource: JsonObject, where: string | null): ReadOrder {
  const path = where === null ? '' : `${where}.`;
  try {
    return taken(resource, path);
  } catch (error) {
    if (error instanceof NotTaken) return { refused: error.message, losses: [] };
    throw error;
  }
}

function taken(resource: JsonObject, path: string): ReadOrder {
  const { lensSpecification, extension, status } = resource;
  const { name, more } = nameOf(resource);
  refuseOthers(resource);
  const taking = new Taking(name);
  for (const one of more) taking.lose(`${path}identifier ${inWords(one)}`, 'no-place');
  if (status !== 'active' && status !== undefined) taking.lose(`${path}status ${inWords(status)}`, 'no-place');
  const seen = new Set<Eye>();
  for (const [at, lens] of (lensSpecification as readonly Json[]).entries()) {
    const eye = readLens(lens, `${path}lensSpecification[${at}].`, taking);
    if (seen.has(eye)) throw new NotTaken(`the ${eye === 'R' ? 'right' : 'left'} eye is specified twice`);
    seen.add(eye);
  }
  readExtensions(extension, path, null, PAIR_EXTENSIONS, taking);
  taking.rest(resource, path, KNOWN);
  return {
    text: writeOrder(orderFrom(name, taking.facts), [...taking.designs, ...taking.lines]),
    losses: taking.losses,
  };
}

/** The first identifier is the number of the order; without one the id of the resource is. */
function nameOf({ identifier, id }: JsonObject): { readonly name: string | null; readonly more: readonly Json[] } {
  const all = isList(identifier) ? identifier : [];
  const first = all.find((one) => isObject(one) && typeof one.value === 'string' && one.value.trim() !== '');
  const value = isObject(first) ? first.value : id;
  const name = typeof value === 'string' && value.trim() !== '' ? value.trim() : null;
  return { name, more: all.filter((one) => one !== first) };
}

function refuseOthers(resource: JsonObject): void {
  const { status, lensSpecification, modifierExtension, implicitRules } = resource;
  if (resource.dispense !== undefined)
    throw new NotTaken('it has the shape of FHIR before R4 (“dispense”); only R4, R4B and R5 are read');
  if (status === 'entered-in-error') throw new NotTaken('it is marked as entered in error');
  if (status === 'cancelled') throw new NotTaken('it is marked as cancelled');
  if (modifierExtension !== undefined || implicitRules !== undefined)
    throw new NotTaken(
      'it says that something unknown here changes its meaning (a modifier extension or implicit rules)',
    );
  if (!isList(lensSpecification) || lensSpecification.length === 0) throw new NotTaken('it specifies no lens');
}
