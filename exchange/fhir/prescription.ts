/** An order as a VisionPrescription of HL7 FHIR R4. */
import type { Eye, Order } from '../../orders';
import { EYES } from '../../orders/model';
import { designInText } from '../../orders/write';
import { PART_UNITS, type Part, type PartCode, type PartUnit } from '../parts/part';
import { DATA_ABSENT, extensionOf, LENS_EXTENSIONS, PAIR_EXTENSIONS, PRODUCT_CODES, unitOf } from './codes';
import { decimalOf, given, type Resource } from './json';

/** What a health record knows of a prescription and an order file does not say. */
export interface PrescriptionFacts {
  /** Reference to the patient, such as `Patient/p7`. */
  readonly patient?: string;
  /** Reference to the prescriber, such as `Practitioner/a2`. */
  readonly prescriber?: string;
  /** When it was authorised: a FHIR dateTime. */
  readonly dateWritten?: string;
  /** When the record was made: a FHIR dateTime. */
  readonly created?: string;
}

/** Facts that the lens specification has elements for. */
const ELEMENTS: readonly PartCode[] = ['sphere', 'cylinder', 'axis', 'prism-in', 'prism-up', 'add'];

/** Whether a prescription holds a fact of an order, in an element or in an extension. */
export const isHeld = ({ code, eye }: Part): boolean =>
  eye === null ? PAIR_EXTENSIONS.includes(code) : ELEMENTS.includes(code) || LENS_EXTENSIONS.includes(code);

/** The eyes that get a lens specification: those that something is said of. */
export const specifiedEyes = (order: Order, parts: readonly Part[]): readonly Eye[] =>
  EYES.filter(
    (eye) =>
      order.lenses[eye].role === 'balance' ||
      parts.some((part) => part.eye === eye && isHeld(part) && !isNoPrism(part)),
  );

/** A prism of nothing is no prism, and a prescription has no entry for it. */
const isNoPrism = ({ code, text }: Part): boolean => PART_UNITS[code] === 'prism' && Number(text) === 0;

/**
 * The resource without its id. What FHIR requires and nobody said is told as absent, never made up.
 * @param notes free words that belong to both lenses
 */
export function prescriptionOf(
  order: Order,
  parts: readonly Part[],
  notes: readonly string[],
  facts: PrescriptionFacts,
): Resource {
  return given({
    resourceType: 'VisionPrescription',
    extension: parts.filter((part) => part.eye === null && isHeld(part)).map(extended),
    identifier: order.name === null ? undefined : [{ value: order.name }],
    status: 'active',
    ...dated('created', facts.created),
    patient: referenced(facts.patient),
    ...dated('dateWritten', facts.dateWritten),
    prescriber: referenced(facts.prescriber),
    lensSpecification: specifiedEyes(order, parts).map((eye) =>
      specified(
        order,
        eye,
        parts.filter((part) => part.eye === eye),
        notes,
      ),
    ),
  });
}

const ABSENT = { extension: [{ url: DATA_ABSENT, valueCode: 'unknown' }] };

const dated = (element: string, value: string | undefined): Resource =>
  value === undefined ? { [`_${element}`]: ABSENT } : { [element]: value };

const referenced = (reference: string | undefined): Resource => (reference === undefined ? ABSENT : { reference });

function specified(order: Order, eye: Eye, parts: readonly Part[], notes: readonly string[]): Resource {
  const { design, role } = order.lenses[eye];
  const figure = (code: PartCode) => {
    const part = parts.find((one) => one.code === code);
    return part && decimalOf(part.text);
  };
  const words = role === 'balance' ? ['balance lens', ...notes] : notes;
  return given({
    extension: parts.filter(({ code }) => LENS_EXTENSIONS.includes(code)).map(extended),
    product: given({
      coding: [{ system: PRODUCT_CODES, code: 'lens' }],
      text: design ? designInText(design.value) : undefined,
    }),
    eye: eye === 'R' ? 'right' : 'left',
    sphere: figure('sphere'),
    cylinder: figure('cylinder'),
    axis: figure('axis'),
    prism: [...prism(parts, 'prism-in', 'in', 'out'), ...prism(parts, 'prism-up', 'up', 'down')],
    add: figure('add'),
    note: words.map((text) => ({ text })),
  });
}

/** One entry for each direction; an amount is never negative. */
function prism(parts: readonly Part[], code: PartCode, plus: string, minus: string): readonly Resource[] {
  const part = parts.find((one) => one.code === code);
  if (!part || isNoPrism(part)) return [];
  const { text } = part;
  const isMinus = text.startsWith('-');
  return [{ amount: decimalOf(isMinus ? text.slice(1) : text), base: isMinus ? minus : plus }];
}

const extended = ({ code, text }: Part): Resource => ({
  url: extensionOf(code),
  valueQuantity: { value: decimalOf(text), ...unitOf(PART_UNITS[code] as Exclude<PartUnit, 'words'>) },
});
