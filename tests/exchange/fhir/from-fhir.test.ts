import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromFhir, toFhir } from '../../../exchange';
import { analyse, type Order } from '../../../orders';
import { holds, seed } from '../../grammar/support/random-text';
import { linesOf, pairs } from '../../orders/computed/support/random-orders';
import { CONTACT, GLASSES } from '../support/fhir-examples';
import { importedText, lossesTold, meaning, ordersIn } from '../support/round-trip';

const LENS = {
  product: { coding: [{ system: 'http://terminology.hl7.org/CodeSystem/ex-visionprescriptionproduct', code: 'lens' }] },
};

/** A prescription of one right lens with these elements as JSON text, so that figures keep their digits. */
const withLens = (elements: string, more = ''): string =>
  `{ "resourceType": "VisionPrescription", "status": "active", "identifier": [{ "value": "T1" }], ${more}
     "lensSpecification": [{ "product": ${JSON.stringify(LENS.product)}, "eye": "right", ${elements} }] }`;

/** The lines of the order, without its header and its indents. */
const linesFrom = (json: string): readonly string[] =>
  importedText(fromFhir(json))
    .trimEnd()
    .split('\n')
    .slice(1)
    .map((line) => line.trim().replace(/\s+/g, ' '));

const refusals = (json: string): readonly string[] => fromFhir(json).refused.map(({ message }) => message);

describe('the examples that HL7 publishes', () => {
  test('the glasses are read as the order they are', () => {
    const { result, losses, refused } = fromFhir(GLASSES);
    expect(refused).toEqual([]);
    expect(result).toBe(
      `order 15013
  R           -2.00
  L           -1.00 -0.50 x 180
  add         +2.00
  prism       R 0.50 BD L 0.50 BU
`,
    );
    expect(lossesTold(losses)).toEqual([
      '15013: created 2014-06-15: there is no place for it',
      '15013: patient {"reference":"Patient/example"}: there is no place for it',
      '15013: dateWritten 2014-06-15: there is no place for it',
      '15013: prescriber {"reference":"Practitioner/example"}: there is no place for it',
    ]);
  });

  test('the contact lenses are refused', () => {
    expect(fromFhir(CONTACT)).toEqual({
      result: '',
      losses: [],
      refused: [{ message: 'it is a contact lens, not a spectacle lens', where: null }],
    });
  });

  test('in one bundle the glasses are taken and the contact lenses refused by their place', () => {
    const bundle = `{ "resourceType": "Bundle", "entry": [{ "resource": ${CONTACT} }, { "resource": ${GLASSES} }] }`;
    const { result, refused } = fromFhir(bundle);
    expect(ordersIn(result).map(({ name }) => name)).toEqual(['15013']);
    expect(refused.map(({ where }) => where)).toEqual(['entry[0].resource']);
  });
});

describe('figures', () => {
  test.each([
    ['"sphere": -2', 'R -2.00'],
    ['"sphere": -2.125', 'R -2.125'],
    ['"sphere": 1e0', 'R +1.00'],
    ['"sphere": -0.00', 'R 0.00'],
    ['"sphere": 0.12, "cylinder": 0.50, "axis": 0', 'R +0.12 +0.50 x 180'],
    ['"sphere": -1, "cylinder": -0.5, "axis": -10', 'R -1.00 -0.50 x 170'],
    ['"sphere": -1, "cylinder": 0, "axis": 90', 'R -1.00'],
  ])('%s is %s', (elements, line) => expect(linesFrom(withLens(elements))).toEqual([line]));

  test.each([
    ['"sphere": "-2.00"', 'sphere -2.00 is not a number'],
    ['"sphere": -250', 'sphere -250 is beyond any spectacle lens'],
    ['"sphere": 1e400', 'sphere 1e400 is beyond any spectacle lens'],
    ['"sphere": -2, "cylinder": -0.5', 'a cylinder stands without an axis'],
    ['"cylinder": -0.5, "axis": 90', 'a cylinder stands without a sphere'],
    ['"sphere": -2, "cylinder": -0.5, "axis": 900', 'axis 900 is outside 0 to 180'],
    ['"sphere": -2, "cylinder": -0.5, "axis": 12.5', 'axis 12.5 is not a whole number of degrees'],
    ['"sphere": 39, "cylinder": 5, "axis": 90', 'sphere and cylinder together are beyond any spectacle lens'],
    [
      '"prism": [{ "amount": 1, "base": "in" }, { "amount": 1, "base": "out" }]',
      'two prisms along the same direction stand for one eye',
    ],
    ['"prism": [{ "amount": 1, "base": "nasal" }]', 'there is no prism base called nasal'],
    ['"prism": [{ "amount": 1, "base": "__proto__" }]', 'there is no prism base called __proto__'],
    ['"prism": [{ "amount": -1, "base": "in" }]', 'a prism of -1 has a sign beside its base'],
    ['"backCurve": 8.7', 'it is a contact lens, not a spectacle lens'],
  ])('%s is refused', (elements, why) => expect(refusals(withLens(elements))).toEqual([why]));

  test('an axis without a cylinder is told', () => {
    const { result, losses } = fromFhir(withLens('"sphere": -1, "axis": 90'));
    expect(result).toContain('R           -1.00\n');
    expect(losses).toMatchObject([{ what: 'lensSpecification[0].axis 90', why: 'unclear', eye: 'R', order: 'T1' }]);
  });
});

describe('words', () => {
  test('a product is a design where it reads as one, else a note', () => {
    const product = (text: string) =>
      withLens(`"sphere": 1`).replace('"coding"', `"text": ${JSON.stringify(text)}, "coding"`);
    expect(linesFrom(product('bifocal flat-top 28'))).toEqual(['R +1.00', 'design R bifocal flat-top 28']);
    expect(linesFrom(product('something for far'))).toEqual(['R +1.00', 'note "something for far"']);
  });

  test.each(['x\norder EVIL\n  R -9.00', '"quoted" # not a comment', '\u2028R -9.00', 'a\r\nreading'])(
    'a note stays a note: %j',
    (text) => {
      const order = ordersIn(
        importedText(fromFhir(withLens(`"sphere": 1, "note": [{ "text": ${JSON.stringify(text)} }]`))),
      );
      expect(order).toHaveLength(1);
      expect(order[0]?.lenses.R.written?.value.sphere).toBe(1);
      expect(order[0]?.readings).toEqual([]);
    },
  );

  test('an unknown element is told with its path', () => {
    const { losses } = fromFhir(
      withLens('"sphere": 1, "tint": { "kind": "brown" }', '"encounter": { "reference": "Encounter/1" },'),
    );
    expect(losses.map(({ what }) => what)).toEqual([
      'lensSpecification[0].tint {"kind":"brown"}',
      'encounter {"reference":"Encounter/1"}',
    ]);
  });
});

test.each([
  ['another resource', '{ "resourceType": "Patient" }', 'it is a Patient of FHIR and holds no VisionPrescription'],
  ['no resource', '[1, 2]', 'it is JSON, but not a resource of FHIR'],
  ['no lens', '{ "resourceType": "VisionPrescription", "lensSpecification": [] }', 'it specifies no lens'],
  [
    'the shape before R4',
    '{ "resourceType": "VisionPrescription", "dispense": [] }',
    'it has the shape of FHIR before R4 (“dispense”); only R4, R4B and R5 are read',
  ],
  ['an error', GLASSES.replace('"active"', '"entered-in-error"'), 'it is marked as entered in error'],
  ['a cancelled one', GLASSES.replace('"active"', '"cancelled"'), 'it is marked as cancelled'],
  ['one eye twice', GLASSES.replace('"left"', '"right"'), 'the right eye is specified twice'],
  ['no eye', GLASSES.replace('"eye": "left",', ''), 'a lens is specified for no eye'],
  [
    'a modifier',
    GLASSES.replace('"id"', '"modifierExtension": [{ "url": "https://example.org/x" }], "id"'),
    'it says that something unknown here changes its meaning (a modifier extension or implicit rules)',
  ],
])('%s is refused', (_, json, why) => {
  expect(fromFhir(json)).toMatchObject({ result: '', refused: [{ message: why }] });
});

describe('out and in again', () => {
  /** The facts that a prescription holds, in an element or an extension. */
  const held = ({ name, lenses, pd, nearPd, frame, asWorn }: Order): unknown => {
    // A prism of nothing is no prism.
    const some = (prism: Order['lenses']['R']['prism']) => (prism?.value.right || prism?.value.up ? prism : null);
    const lens = ({ written, add, prism, height, baseCurve, design }: Order['lenses']['R']) => {
      return { written, add, prism: some(prism), height, baseCurve, design };
    };
    return meaning({ name, R: lens(lenses.R), L: lens(lenses.L), pd, nearPd, frame, asWorn });
  };

  test(`is the same order in all that a prescription holds, seed ${seed}`, () => {
    holds(200, pairs, fc.constantFrom('minus' as const, 'plus' as const), (pair, form) => {
      const text = `order "A ${pair.R.axis}"\n  ${linesOf(pair, form).join('\n  ')}\n`;
      const back = fromFhir(toFhir(analyse(text)).result);
      expect(back.refused).toEqual([]);
      expect(back.losses).toEqual([]);
      expect(held(ordersIn(back.result)[0] as Order)).toEqual(held(ordersIn(text)[0] as Order));
      // And what comes back is a fixed point: out and in once more loses nothing and changes nothing.
      const again = toFhir(analyse(back.result));
      expect(again.losses).toEqual([]);
      expect(fromFhir(again.result).result).toBe(back.result);
    });
  });

  test('free words come back as notes', () => {
    const text = 'order A\n  R -1.00\n  L -1.00\n  coating "hard, antireflection"\n  note "call before noon"\n';
    expect(linesFrom(toFhir(analyse(text)).result)).toEqual([
      'R -1.00',
      'L -1.00',
      'note "coating ""hard, antireflection"""',
      'note "call before noon"',
    ]);
  });
});
