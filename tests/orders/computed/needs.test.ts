import { describe, expect, test } from 'vitest';
import { everything, ofLens, ofPair, orderText } from './support/figures';

/** An order that says all that can be said of a bifocal pair. */
const BIFOCAL = [
  'R -4.50 -0.75 x 022',
  'L -1.25 -1.00 x 168',
  'add +2.00',
  'pd 63 near 60',
  'height 17',
  'design bifocal flat-top 28',
  'lens resin-1.50',
  'base-curve 4.00',
  'frame A 52 B 36 DBL 18 ED 55',
  'tested vertex 12',
  'as-worn vertex 14 panto 8 wrap 5',
];

/** A single-vision pair with prism; the decentration would hold for the lenses before they are edged. */
const SINGLE = [
  'R -4.50 -0.75 x 022',
  'L -1.25 -1.00 x 168',
  'pd 63',
  'height 17',
  'design single-vision',
  'prism R 1 BI 0.50 BU L 1 BI',
  'decentre 2 in 1 up',
  'lens resin-1.50',
  'base-curve 4.00',
  'frame A 52 B 36 DBL 18 ED 55',
  'as-worn panto 8',
];

const codesOf = (lines: readonly string[]): readonly string[] => [
  ...new Set(everything(orderText(...lines)).map(({ what }) => what)),
];

const lost = (lines: readonly string[], word: string): readonly string[] => {
  const rest = codesOf(lines.filter((line) => !line.startsWith(`${word} `)));
  return codesOf(lines).filter((code) => !rest.includes(code as (typeof rest)[number]));
};

test('a full order of bifocals says enough for all of these', () => {
  expect([...codesOf(BIFOCAL)].sort()).toEqual(
    [
      'forms',
      'meridians',
      'spherical-equivalent',
      'near-power',
      'power-to-make',
      'power-for-vertex',
      'working-distance',
      'drum',
      'drum-in-segment',
      'ring-in-segment',
      'add-error',
      'decentration',
      'blank',
      'segment-drop',
      'segment-inset',
      'total-inset',
      'image-jump',
      'displacement',
      'vertical-imbalance',
      'slab-off',
      'reverse-slab',
      'worn-power',
      'power-for-wear',
      'wrap-prism',
      'thickness',
      'weight',
      'base-curve-advice',
      'base-curve-advice-digital',
      'magnification',
      'magnification-difference',
      'chromatic-aberration',
      'reflectance',
    ].sort(),
  );
});

describe('what is left out takes its figures away', () => {
  test.each([
    [
      'add',
      [
        'near-power',
        'working-distance',
        'image-jump',
        'displacement',
        'drum-in-segment',
        'ring-in-segment',
        'add-error',
        'chromatic-aberration',
      ],
    ],
    [
      'pd',
      [
        'decentration',
        'blank',
        'segment-inset',
        'total-inset',
        'ring-in-segment',
        'chromatic-aberration',
        'thickness',
        'weight',
      ],
    ],
    ['height', ['segment-drop', 'displacement', 'ring-in-segment', 'chromatic-aberration']],
    [
      'lens',
      [
        'drum-in-segment',
        'add-error',
        'worn-power',
        'power-for-wear',
        'wrap-prism',
        'thickness',
        'weight',
        'magnification',
        'chromatic-aberration',
        'reflectance',
        'magnification-difference',
      ],
    ],
    [
      'base-curve',
      [
        'drum-in-segment',
        'add-error',
        'wrap-prism',
        'thickness',
        'weight',
        'magnification',
        'magnification-difference',
      ],
    ],
    [
      'frame',
      [
        'decentration',
        'blank',
        'segment-drop',
        'total-inset',
        'displacement',
        'ring-in-segment',
        'thickness',
        'weight',
        'chromatic-aberration',
      ],
    ],
    ['tested', ['power-for-vertex']],
    [
      'as-worn',
      ['power-for-vertex', 'worn-power', 'power-for-wear', 'wrap-prism', 'magnification', 'magnification-difference'],
    ],
  ])('%s', (word, codes) => {
    expect([...lost(BIFOCAL, word)].sort()).toEqual([...codes].sort());
  });

  test.each([
    ['prism', ['prism-resultant', 'decentration-for-prism', 'prism-of-pair']],
    ['decentre', ['prism-by-decentration']],
    ['height', ['raise', 'optical-centre-height']],
    ['as-worn', ['worn-power', 'power-for-wear', 'optical-centre-height']],
  ])('%s of single-vision lenses', (word, codes) => {
    expect([...lost(SINGLE, word)].sort()).toEqual([...codes].sort());
  });
});

describe('only what holds for the lens is told', () => {
  test('nothing for a lens that is not ordered, nor for the pair', () => {
    const text = orderText('make R', ...BIFOCAL);
    expect(ofLens(text, 'L')).toEqual([]);
    expect(ofPair(text)).toEqual([]);
    expect(ofLens(text, 'R')).not.toEqual([]);
  });

  test('a kept lens shows its own power on the drum and is not made', () => {
    const figures = ofLens(orderText(...BIFOCAL, 'kept L -2.00 -0.25 x 015'), 'L');
    expect(figures.find(({ what }) => what === 'drum')?.values).toEqual({
      thin: { value: -2, unit: 'D' },
      wide: { value: -2.25, unit: 'D' },
      wheel: { value: 15, unit: 'deg' },
    });
    for (const code of ['thickness', 'weight', 'drum-in-segment', 'base-curve-advice'])
      expect(figures.map(({ what }) => what)).not.toContain(code);
  });

  test('a balance lens calls for no slab', () => {
    const codes = ofPair(orderText(...BIFOCAL, 'balance L')).map(({ what }) => what);
    expect(codes).not.toContain('vertical-imbalance');
    expect(codes).not.toContain('slab-off');
  });

  test('a lens that the maker converts and does not state has no power to be read', () => {
    const figures = ofLens(orderText(...BIFOCAL, 'compensation by-maker'));
    for (const code of ['power-to-make', 'drum', 'thickness', 'worn-power'])
      expect(figures.map(({ what }) => what)).not.toContain(code);
  });

  test('a power that was converted already is not converted again', () => {
    const figures = ofLens(orderText(...BIFOCAL, 'compensation done'));
    for (const code of ['power-for-vertex', 'power-for-wear'])
      expect(figures.map(({ what }) => what)).not.toContain(code);
    expect(figures.map(({ what }) => what)).toContain('worn-power');
  });

  test('the surfaces of progressives are no spheres, so that neither thickness nor weight is told', () => {
    const text = orderText(...BIFOCAL.map((line) => (line.startsWith('design') ? 'design progressive' : line)));
    for (const code of ['thickness', 'weight', 'segment-drop', 'image-jump', 'chromatic-aberration'])
      expect(everything(text).map(({ what }) => what)).not.toContain(code);
  });

  test('a sphere has no other form, and its axis is left out of what the drum shows', () => {
    const figures = ofLens(orderText('R -2.00'));
    expect(figures.map(({ what }) => what)).not.toContain('forms');
    expect(Object.keys(figures.find(({ what }) => what === 'drum')?.values ?? {})).toEqual(['thin', 'wide']);
  });
});
