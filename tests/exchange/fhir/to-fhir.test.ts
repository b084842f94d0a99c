import { describe, expect, test } from 'vitest';
import { toFhir } from '../../../exchange';
import { analyse } from '../../../orders';
import { analysisOf, examplePaths } from '../support/examples';
import { packageErrors, schemaErrors } from '../support/fhir-oracles';
import { lossesTold } from '../support/round-trip';

interface Resource {
  readonly resourceType: string;
  readonly id: string;
  readonly [element: string]: unknown;
}

interface Bundle {
  readonly entry: readonly { readonly fullUrl: string; readonly resource: Resource }[];
}

/** What a health record adds; with it the resource is complete to every checker. */
const FACTS = {
  patient: 'Patient/p7',
  prescriber: 'Practitioner/a2',
  dateWritten: '2026-11-20',
  created: '2026-11-20',
};

const bundleOf = (text: string): Bundle => JSON.parse(toFhir(analyse(text), FACTS).result);
const resourcesOf = (text: string): readonly Resource[] => bundleOf(text).entry.map(({ resource }) => resource);

const PAIR = `order T0412
  R -3.25 -0.75 x 015
  L -2.50
  add +1.75
`;

/** The first lens specification of an order with this line, or an element of it. */
function lensWith(line: string, element: string, eye: 'right' | 'left' = 'right'): unknown {
  const [prescription] = resourcesOf(`${PAIR}  ${line}\n`);
  const lenses = prescription?.lensSpecification as readonly Record<string, unknown>[];
  return lenses.find((lens) => lens.eye === eye)?.[element];
}

describe('a prescription', () => {
  test('has the elements of each lens', () => {
    const [prescription] = resourcesOf(PAIR);
    expect(prescription).toMatchObject({
      resourceType: 'VisionPrescription',
      identifier: [{ value: 'T0412' }],
      status: 'active',
      lensSpecification: [
        { eye: 'right', sphere: -3.25, cylinder: -0.75, axis: 15, add: 1.75 },
        { eye: 'left', sphere: -2.5, add: 1.75 },
      ],
    });
  });

  // HL7 FHIR R4, datatypes, decimal: no plus, a digit before the point, and trailing zeros say how precise a figure is.
  test.each([
    ['-2.00', '"sphere": -2.00'],
    ['+2.125', '"sphere": 2.125'],
    ['plano', '"sphere": 0.00'],
    ['-0.00', '"sphere": 0.00'],
    ['+.5', '"sphere": 0.5'],
    ['-450', '"sphere": -4.5'],
    ['-4,5', '"sphere": -4.5'],
    ['+0.12', '"sphere": 0.12'],
    ['-2', '"sphere": -2,'],
  ])('writes %s with its digits', (sphere, written) => {
    expect(toFhir(analyse(`order A\n  R ${sphere}\n  L ${sphere} add 1\n`)).result).toContain(written);
  });

  // Base in is towards the nose: at 0 degrees for the right eye and at 180 for the left, ISO 8429.
  test.each([
    ['prism R 1.50 BI', 'right', [{ amount: 1.5, base: 'in' }]],
    [
      'prism L 1.50 BO 0.50 BD',
      'left',
      [
        { amount: 1.5, base: 'out' },
        { amount: 0.5, base: 'down' },
      ],
    ],
    [
      'prism R 1.58 base 18',
      'right',
      [
        { amount: 1.5, base: 'in' },
        { amount: 0.49, base: 'up' },
      ],
    ],
    [
      'prism L 1.58 base 162',
      'left',
      [
        { amount: 1.5, base: 'in' },
        { amount: 0.49, base: 'up' },
      ],
    ],
    ['prism L 1.50 base 0', 'left', [{ amount: 1.5, base: 'out' }]],
    [
      'prism R 1.41 base 225',
      'right',
      [
        { amount: 1, base: 'out' },
        { amount: 1, base: 'down' },
      ],
    ],
    ['prism R 0', 'right', undefined],
  ] as const)('%s: %s', (line, eye, prism) => {
    expect(lensWith(line, 'prism', eye)).toEqual(prism);
  });

  test('tells what is required and not said as absent', () => {
    const { result } = toFhir(analyse(PAIR));
    const absent = { url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason', valueCode: 'unknown' };
    expect(JSON.parse(result).entry[0].resource).toMatchObject({
      _created: { extension: [absent] },
      _dateWritten: { extension: [absent] },
      patient: { extension: [absent] },
      prescriber: { extension: [absent] },
    });
  });
});

describe('a reading', () => {
  const read = (...lines: readonly string[]) =>
    resourcesOf(`${PAIR}  reading 2026-11-24 14:30 by KO with FOC-A\n    ${lines.join('\n    ')}\n`).slice(1);

  const components = (resource: Resource | undefined): readonly unknown[] =>
    (
      resource as unknown as {
        component: readonly { code: { text: string }; valueQuantity?: { value: number; code: string } }[];
      }
    ).component.map(({ code, valueQuantity }) =>
      valueQuantity ? [code.text, valueQuantity.value, valueQuantity.code] : code.text,
    );

  test('is an observation of each lens, about its prescription', () => {
    const { entry } = bundleOf(`${PAIR}  reading 2026-11-24 14:30 by KO with FOC-A\n    R -3.22 -0.74 x 014\n`);
    expect(entry[1]?.resource).toMatchObject({
      resourceType: 'Observation',
      status: 'final',
      focus: [{ reference: entry[0]?.fullUrl, display: 'T0412' }],
      effectiveDateTime: '2026-11-24',
      performer: [{ display: 'KO' }],
      device: { display: 'FOC-A' },
      bodySite: { text: 'right eye' },
    });
  });

  test.each([
    [
      'R -3.22 -0.74 x 014',
      [
        ['sphere', -3.22, '[diop]'],
        ['cylinder', -0.74, '[diop]'],
        ['axis', 14, 'deg'],
      ],
    ],
    [
      'L lines -2.50 / -3.25 x 010',
      [
        ['sphere', -2.5, '[diop]'],
        ['cylinder', -0.75, '[diop]'],
        ['axis', 10, 'deg'],
      ],
    ],
    ['add R -4.50 -> -2.50', [['add', 2, '[diop]']]],
    ['add R +2.00 engraved', [['engraved add', 2, '[diop]']]],
    [
      'prism R 1.48 BI 0 BU',
      [['horizontal prism', 1.48, "[p'diop]"], 'horizontal base', ['vertical prism', 0, "[p'diop]"]],
    ],
    [
      'pd 63.5 near 60',
      [
        ['pd', 63.5, 'mm'],
        ['near pd', 60, 'mm'],
      ],
    ],
    ['impact passed', ['impact']],
    ['R -1.50 at near-point', [['sphere at the near point', -1.5, '[diop]']]],
  ])('%s', (line, wanted) => {
    expect(components(read(line)[0])).toEqual(wanted);
  });

  test('takes the zero of the drum off, and says so', () => {
    const text = `${PAIR}  reading 2026-11-24\n    zero +0.03\n    R -3.22\n    L -2.50 corrected\n`;
    const { result, losses } = toFhir(analyse(text));
    expect(result).toContain('"value": -3.25');
    expect(result).toContain('"value": -2.50');
    expect(lossesTold(losses)).toEqual([
      'T0412, R: sphere -3.25: it was worked out and does not stand there as written',
    ]);
  });

  test('gives each repeat an observation of its own', () => {
    const repeats = read('R -3.22', 'again R -3.24', 'again R -3.23');
    expect(repeats.map(({ code }) => (code as { text: string }).text)).toEqual([
      'focimeter reading, right lens',
      'focimeter reading, right lens, repeat 1',
      'focimeter reading, right lens, repeat 2',
    ]);
  });
});

test('what is lost is told line by line, and nothing else', () => {
  const text = `# slip of Monday
standard z80.1-2015
order T0412  # urgent
  R -3.25 -0.75 x 015
  L 2.50
  add +1.75 intermediate +0.87
  prism R 1.58 base 18
  pd R 31.5 L 32 near R 30 L 30
  height 17
  design progressive corridor 14
  lens resin-1.60
  thickness centre 2.0
  frame A 52 B 36 DBL 18
  tint brown absorbs 80
  due 2026-12-01
  note "call before noon"
  supply glazed
  reading 2026-11-24 14:30 stage edged
    R -3.25 -0.74 x 014
    replaced R "scratch"
    decided accept by MT
`;
  const told = toFhir(analyse(text)).losses.map(({ line, what, why }) => `${(line ?? 0) + 1} ${what} | ${why}`);
  expect(told).toEqual([
    '1 # slip of Monday | no-place',
    '2 standard z80.1-2015 | no-place',
    '3 # urgent | no-place',
    '5 L 2.50 | unclear',
    '6 intermediate 0.87 | no-place',
    '6 intermediate 0.87 | no-place',
    '7 prism in 1.50 | worked-out',
    '7 prism up 0.49 | worked-out',
    '11 lens resin-1.60 | as-words',
    '12 centre thickness 2.0 | no-place',
    '12 centre thickness 2.0 | no-place',
    '14 tint brown absorbs 80 | as-words',
    '15 due 2026-12-01 | no-place',
    '17 supply glazed | no-place',
    '20 replaced R "scratch" | no-place',
    '21 decided accept by MT | no-place',
    '18 time 14:30 | no-place',
    '18 stage edged | no-place',
  ]);
});

describe('outside judges', () => {
  test.each(examplePaths)('accept every resource of %s', (path) => {
    const { entry } = JSON.parse(toFhir(analysisOf(path), FACTS).result) as Partial<Bundle>;
    for (const { resource } of entry ?? []) {
      expect(schemaErrors(resource.resourceType, resource)).toEqual([]);
      expect(packageErrors(resource)).toEqual([]);
    }
  });

  test('accept the Bundle, and the absent dates by the schema', () => {
    const bundle = JSON.parse(toFhir(analyse(PAIR)).result);
    expect(schemaErrors('VisionPrescription', bundle.entry[0].resource)).toEqual([]);
    // The package holds an element for missing whose absence has a reason; only that is held against it.
    const complete = JSON.parse(toFhir(analyse(PAIR), FACTS).result);
    expect(packageErrors(complete)).toEqual([]);
  });

  // What each of them catches, so that a new version that is blind is noticed.
  test.each([
    ['a sphere in quotes', { sphere: '-3.25' }],
    ['no such eye', { eye: 'both' }],
    ['an element that nobody knows', { pd: 63 }],
  ])('refuse %s', (_, spoilt) => {
    const resource = resourcesOf(PAIR)[0] as Resource & { lensSpecification: readonly object[] };
    const lenses = resource.lensSpecification.map((lens) => ({ ...lens, ...spoilt }));
    expect(schemaErrors('VisionPrescription', { ...resource, lensSpecification: lenses })).not.toEqual([]);
    expect(packageErrors({ ...resource, lensSpecification: lenses })).not.toEqual([]);
  });
});

test('the same input gives the same bytes, and every identity is another', () => {
  const twice = `${PAIR}\n${PAIR}`;
  const { result } = toFhir(analyse(twice));
  expect(toFhir(analyse(twice)).result).toBe(result);
  const urls = bundleOf(twice).entry.map(({ fullUrl }) => fullUrl);
  expect(new Set(urls).size).toBe(2);
  expect(urls[0]).toMatch(/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
});

test('one order may be chosen by its name', () => {
  const text = `${PAIR}order T0413\n  R -1.00\n  L -1.00\n`;
  const { entry } = JSON.parse(toFhir(analyse(text), { order: 'T0413' }).result) as Bundle;
  expect(entry.map(({ resource }) => resource.identifier)).toEqual([[{ value: 'T0413' }]]);
});
