import { always, axisRows, degrees, dioptres, millimetres, notDefined, percentOf, powerRows, prism } from './cells';
import type { Provenance, ToleranceSet } from './tolerance-set';

const rule = { source: 'new-jersey-13-35-5.2', evidence: 'published' } as const satisfies Provenance;

const position = {
  source: 'new-jersey-13-35-5.2',
  evidence: 'secondary',
  note: 'The account says "position items" without listing them; this item is taken to be one of them.',
} as const satisfies Provenance;

/** New Jersey's own rule, stricter than the national standard. */
export const nj_13_35_5_2: ToleranceSet = {
  id: 'nj-13-35-5.2',
  title: 'N.J.A.C. 13:35-5.2, New Jersey, ophthalmic dispensing',
  publisher: 'New Jersey Administrative Code',
  edition: '1972 basis',
  jurisdiction: 'New Jersey, United States',
  scope: ['glazed'],
  comparison: 'inclusive',
  cautions: [
    'The rule in force and its exceptions are the code itself; look them up before relying on a verdict.',
    'Ordinary lenses often miss these limits, which are finer than the step of a bench focimeter.',
    'The rule prints powers in quarter dioptres and cylinders in eighths; a value between two bands falls in the upper one.',
  ],

  power: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      judged: 'each-meridian',
      note: 'The rule limits the sphere. Judging each meridian covers the sphere of both cylinder forms.',
      rows: powerRows(
        [{ atLeast: 0 }],
        [
          [{ atLeast: 0, atMost: 6 }, dioptres(0.12), [dioptres(0.12)]],
          [{ above: 6, atMost: 12 }, percentOf('meridian', 2), [dioptres(0.12)]],
          [{ above: 12 }, dioptres(0.25), [dioptres(0.12)]],
        ],
        rule,
      ),
    },
  ],

  axis: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      note: 'The rule begins at 0.12 D.',
      rows: axisRows(
        [
          [{ atLeast: 0, below: 0.12 }, notDefined],
          [{ atLeast: 0.12, atMost: 0.37 }, degrees(3)],
          [{ above: 0.37, atMost: 1 }, degrees(2)],
          [{ above: 1 }, degrees(1)],
        ],
        rule,
      ),
    },
  ],

  lensPrism: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      supply: ['glazed'],
      combine: 'all',
      powerOf: 'along-the-error',
      rows: [
        { component: 'horizontal', orderedPrism: { atLeast: 0 }, limits: [prism(0.25)], ...rule },
        { component: 'vertical', orderedPrism: { atLeast: 0 }, limits: [prism(0.25)], ...rule },
      ],
    },
  ],

  pairPrism: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      component: 'horizontal',
      powerOf: 'stronger-lens-along-the-error',
      rows: [{ power: { atLeast: 0 }, limit: prism(0.5), judged: 'prism-imbalance', counted: 'pair-total', ...rule }],
    },
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      component: 'vertical',
      powerOf: 'stronger-lens-along-the-error',
      rows: [{ power: { atLeast: 0 }, limit: prism(0.5), judged: 'prism-imbalance', counted: 'pair-total', ...rule }],
    },
  ],

  segmentHeight: always(millimetres(0.5), 'each-eye', position),
  segmentHorizontal: always(millimetres(0.5), 'each-eye', position),
  fittingHeight: always(millimetres(0.5), 'each-eye', position),
  fittingHorizontal: always(millimetres(0.5), 'each-eye', position),
};
