/**
 * The two examples of VisionPrescription that HL7 publishes with FHIR R4 (4.0.1), `visionprescription-example` of the
 * numbers 33123 and 33124. Their values are transcribed from an account of them made for this project, not from the
 * files themselves; names of people are left out.
 */
const PRODUCT = 'http://terminology.hl7.org/CodeSystem/ex-visionprescriptionproduct';
const lens = (code: string) => ({ coding: [{ system: PRODUCT, code }] });

export const GLASSES = `{
  "resourceType": "VisionPrescription",
  "id": "33123",
  "text": { "status": "generated", "div": "<div xmlns=\\"http://www.w3.org/1999/xhtml\\">Sample</div>" },
  "identifier": [{ "system": "https://example.org/prescription", "value": "15013" }],
  "status": "active",
  "created": "2014-06-15",
  "patient": { "reference": "Patient/example" },
  "dateWritten": "2014-06-15",
  "prescriber": { "reference": "Practitioner/example" },
  "lensSpecification": [
    { "product": ${JSON.stringify(lens('lens'))}, "eye": "right", "sphere": -2.00,
      "prism": [{ "amount": 0.5, "base": "down" }], "add": 2.00 },
    { "product": ${JSON.stringify(lens('lens'))}, "eye": "left", "sphere": -1.00, "cylinder": -0.50, "axis": 180,
      "prism": [{ "amount": 0.5, "base": "up" }], "add": 2.00 }
  ]
}`;

const contact = (eye: string, cylinder: number) => ({
  product: lens('contact'),
  eye,
  cylinder,
  axis: 160,
  add: 1.75,
  power: -2.75,
  backCurve: 8.7,
  diameter: 14.0,
  duration: { value: 1, unit: 'month', system: 'http://unitsofmeasure.org', code: 'mo' },
  color: 'green',
  note: [{ text: 'a note' }],
});

export const CONTACT = JSON.stringify({
  resourceType: 'VisionPrescription',
  id: '33124',
  identifier: [{ value: '15014' }],
  status: 'active',
  created: '2014-06-15',
  patient: { reference: 'Patient/example' },
  encounter: { reference: 'Encounter/f001' },
  dateWritten: '2014-06-15',
  prescriber: { reference: 'Practitioner/example' },
  lensSpecification: [contact('right', -2.25), contact('left', -3.5)],
});
