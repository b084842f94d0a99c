/** Which worked-out figures belong to which line of an order. */
import type { WorkedCode } from '../../../orders';
import type { Spot } from './part';

const SEGMENT: readonly WorkedCode[] = [
  'image-jump',
  'displacement',
  'drum-in-segment',
  'ring-in-segment',
  'add-error',
  'vertical-imbalance',
  'slab-off',
  'reverse-slab',
];

const BODY: readonly WorkedCode[] = [
  'thickness',
  'weight',
  'base-curve-advice',
  'base-curve-advice-digital',
  'magnification',
  'magnification-difference',
];

const LEVELLING: readonly WorkedCode[] = ['vertical-imbalance', 'slab-off', 'reverse-slab'];

/** On the power of a lens itself. */
export const OF_POWER: readonly WorkedCode[] = [
  'forms',
  'meridians',
  'spherical-equivalent',
  'near-power',
  'intermediate-power',
  'power-to-make',
  'drum',
];

/** What stands at the order’s name, without the way it is made. */
export const OVERVIEW: readonly WorkedCode[] = [
  'power-to-make',
  'near-power',
  'decentration',
  'segment-drop',
  'blank',
  'thickness',
  'weight',
  'near-pd',
  'prism-of-pair',
  'vertical-imbalance',
  'slab-off',
];

const OF_LINE: Readonly<Record<string, readonly WorkedCode[]>> = {
  add: ['near-power', 'intermediate-power', 'working-distance', 'near-inset', 'near-pd', ...SEGMENT],
  design: [
    'power-to-make',
    'near-power',
    'intermediate-power',
    'working-distance',
    'segment-drop',
    'segment-inset',
    ...SEGMENT,
  ],
  pd: ['decentration', 'segment-inset', 'near-inset', 'total-inset', 'near-pd'],
  frame: ['decentration', 'raise', 'blank', 'segment-drop', 'total-inset'],
  height: ['raise', 'segment-drop', 'optical-centre-height', 'displacement', 'vertical-imbalance'],
  inset: ['segment-inset', 'total-inset', 'ring-in-segment'],
  blank: ['decentration', 'blank'],
  lens: [...BODY, 'chromatic-aberration', 'reflectance'],
  'base-curve': [...BODY, 'drum-in-segment', 'add-error'],
  thickness: [...BODY, 'drum-in-segment', 'add-error'],
  prism: ['prism-resultant', 'decentration-for-prism', 'prism-of-pair'],
  split: ['prism-resultant', 'decentration-for-prism', 'prism-of-pair'],
  decentre: ['prism-by-decentration'],
  'as-worn': [
    'power-for-vertex',
    'worn-power',
    'power-for-wear',
    'wrap-prism',
    'optical-centre-height',
    'magnification',
    'magnification-difference',
  ],
  tested: ['power-for-vertex', 'power-for-wear'],
  compensation: ['power-to-make', 'power-for-vertex', 'power-for-wear'],
  verification: ['power-to-make', 'drum', 'worn-power'],
  kept: ['drum', ...LEVELLING],
  balance: ['drum'],
  slab: LEVELLING,
};

export function figuresOfLine(node: Spot['node']): readonly WorkedCode[] {
  const key = 'which' in node && typeof node.which === 'string' ? node.which : node.kind;
  return OF_LINE[key] ?? [];
}
