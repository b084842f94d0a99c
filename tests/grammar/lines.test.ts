import { describe, expect, test } from 'vitest';
import { type BlockKind, parseDocument, VOCABULARY } from '../../grammar';
import { BENCH, said, told } from '../support/lines';

const power = (sphere: number, cylinder?: number, axis?: number) =>
  cylinder === undefined
    ? { form: 'sphero-cylinder', sphere }
    : { form: 'sphero-cylinder', sphere, cylinder, ...(axis === undefined ? {} : { axis }) };

/** Lines as the reference writes them, and what they say. */
const LINES: Readonly<Record<string, object>> = {
  'order QL-1042': { kind: 'order', name: 'QL-1042' },
  'reading 2026-11-24 14:30 by KO with FOC-A stage edged': {
    kind: 'reading',
    date: '2026-11-24',
    time: '14:30',
    by: 'KO',
    with: 'FOC-A',
    stage: 'edged',
  },
  'reading 2026-11-24': { kind: 'reading', date: '2026-11-24' },
  'instrument FOC-A': { kind: 'instrument', name: 'FOC-A' },
  defaults: { kind: 'defaults' },
  'tolerance house from z80.1-2015': { kind: 'tolerance', name: 'house', from: 'z80.1-2015' },
  'standard z80.1-2015': { kind: 'standard', name: 'z80.1-2015' },
  end: { kind: 'end' },
  'R -4.50 -0.75 x 022': { kind: 'power', entries: [{ eye: 'R', power: power(-4.5, -0.75, 22) }] },
  'L -4.25': { kind: 'power', entries: [{ eye: 'L', power: power(-4.25) }] },
  'both -2.00': { kind: 'power', entries: [{ eye: 'both', power: power(-2) }] },
  'rx R -4.50 -0.75 x 022 L -4.25 add +2.00 prism 2.00 BI': {
    kind: 'powers',
    which: 'rx',
    entries: [
      { eye: 'R', power: power(-4.5, -0.75, 22) },
      { eye: 'L', power: power(-4.25), add: { value: 2 }, prism: [{ amount: 2, base: 'in' }] },
    ],
  },
  'again R -4.50 -0.62 x 022': { kind: 'power', again: true, entries: [{ eye: 'R', power: power(-4.5, -0.62, 22) }] },
  'again pd 63.5': { kind: 'pd', again: true, distance: { binocular: 63.5 }, near: {} },
  'zero +0.03': { kind: 'figure', which: 'zero', figure: 0.03 },
  'add +2.00': { kind: 'add', entries: [{ value: { value: 2 } }] },
  'add R +2.00 L +2.25': {
    kind: 'add',
    entries: [
      { eye: 'R', value: { value: 2 } },
      { eye: 'L', value: { value: 2.25 } },
    ],
  },
  'prism R 2.00 BI 0.50 BU L 2.00 BI': {
    kind: 'prism',
    entries: [
      {
        eye: 'R',
        value: [
          { amount: 2, base: 'in' },
          { amount: 0.5, base: 'up' },
        ],
      },
      { eye: 'L', value: [{ amount: 2, base: 'in' }] },
    ],
  },
  'pd 63 near 60': { kind: 'pd', distance: { binocular: 63 }, near: { binocular: 60 } },
  'near-pd 60': { kind: 'pd', distance: {}, near: { binocular: 60 } },
  'optical-centres R 33 L 32': { kind: 'centres', distance: { right: 33, left: 32 } },
  'optical-centres 66': { kind: 'centres', distance: { binocular: 66 } },
  'height 17': { kind: 'eye-figure', which: 'height', entries: [{ value: 17 }] },
  'height R 17 L 16.5': {
    kind: 'eye-figure',
    which: 'height',
    entries: [
      { eye: 'R', value: 17 },
      { eye: 'L', value: 16.5 },
    ],
  },
  'height 2 below datum': { kind: 'eye-figure', which: 'height', entries: [{ value: 2 }], belowDatum: true },
  'design bifocal flat-top 28': {
    kind: 'design',
    entries: [{ value: { type: 'bifocal', shape: 'flat-top', width: 28 } }],
  },
  'lens resin-1.50': { kind: 'lens', entries: [{ value: { name: 'resin-1.50' } }] },
  'lens house-resin index 1.60 abbe 41 density 1.3': {
    kind: 'lens',
    entries: [{ value: { name: 'house-resin', index: 1.6, abbe: 41, density: 1.3 } }],
  },
  'lens R resin-1.50 L glass-1.60': {
    kind: 'lens',
    entries: [
      { eye: 'R', value: { name: 'resin-1.50' } },
      { eye: 'L', value: { name: 'glass-1.60' } },
    ],
  },
  'base-curve 4.00': { kind: 'eye-figure', which: 'base-curve', entries: [{ value: 4 }] },
  'thickness centre 2.0 edge 1.5 min 1.8': {
    kind: 'settings',
    which: 'thickness',
    entries: [
      {
        value: [
          { key: 'centre', figure: 2 },
          { key: 'edge', figure: 1.5 },
          { key: 'min', figure: 1.8 },
        ],
      },
    ],
  },
  'thickness R centre 2.1 L centre 2.0': {
    kind: 'settings',
    which: 'thickness',
    entries: [
      { eye: 'R', value: [{ key: 'centre', figure: 2.1 }] },
      { eye: 'L', value: [{ key: 'centre', figure: 2 }] },
    ],
  },
  'blank 70': { kind: 'eye-figure', which: 'blank', entries: [{ value: 70 }] },
  'inset R 2 L 2.5': {
    kind: 'eye-figure',
    which: 'inset',
    entries: [
      { eye: 'R', value: 2 },
      { eye: 'L', value: 2.5 },
    ],
  },
  'frame A 52 B 36 DBL 18 ED 55': {
    kind: 'settings',
    which: 'frame',
    entries: [
      {
        value: [
          { key: 'a', figure: 52 },
          { key: 'b', figure: 36 },
          { key: 'dbl', figure: 18 },
          { key: 'ed', figure: 55 },
        ],
      },
    ],
  },
  'frame 52[]18': {
    kind: 'settings',
    which: 'frame',
    entries: [
      {
        value: [
          { key: 'a', figure: 52 },
          { key: 'dbl', figure: 18 },
        ],
      },
    ],
  },
  'as-worn vertex 13 panto 8 wrap 5': {
    kind: 'settings',
    which: 'as-worn',
    entries: [
      {
        value: [
          { key: 'vertex', figure: 13 },
          { key: 'panto', figure: 8 },
          { key: 'wrap', figure: 5 },
        ],
      },
    ],
  },
  'tested vertex 12': { kind: 'settings', which: 'tested', entries: [{ value: [{ key: 'vertex', figure: 12 }] }] },
  'compensation by-maker': { kind: 'choice', which: 'compensation', choice: 'by-maker' },
  'verification R -3.12 -0.93 x 012 add +2.12 prism 0.18 BI L -3.00': {
    kind: 'powers',
    which: 'verification',
    entries: [
      { eye: 'R', power: power(-3.12, -0.93, 12), add: { value: 2.12 }, prism: [{ amount: 0.18, base: 'in' }] },
      { eye: 'L', power: power(-3) },
    ],
  },
  'supply uncut': { kind: 'choice', which: 'supply', choice: 'uncut' },
  'decentre R 2.5 in 1 up': {
    kind: 'decentre',
    entries: [
      {
        eye: 'R',
        value: [
          { amount: 2.5, base: 'in' },
          { amount: 1, base: 'up' },
        ],
      },
    ],
  },
  'make R': { kind: 'eyes', which: 'make', eyes: ['R'] },
  'kept L -2.00 -0.25 x 015 add +2.00 prism 1.50 BD base-curve 6.00 thickness centre 2.2': {
    kind: 'powers',
    which: 'kept',
    entries: [
      {
        eye: 'L',
        power: power(-2, -0.25, 15),
        add: { value: 2 },
        prism: [{ amount: 1.5, base: 'down' }],
        baseCurve: 6,
        thickness: 2.2,
      },
    ],
  },
  'balance L': { kind: 'powers', which: 'balance', entries: [{ eye: 'L' }] },
  'balance L -4.25': { kind: 'powers', which: 'balance', entries: [{ eye: 'L', power: power(-4.25) }] },
  'previous R -4.00 L -3.75 add +1.75': {
    kind: 'powers',
    which: 'previous',
    entries: [
      { eye: 'R', power: power(-4) },
      { eye: 'L', power: power(-3.75), add: { value: 1.75 } },
    ],
  },
  'split equal': { kind: 'choice', which: 'split', choice: 'equal' },
  yoked: { kind: 'choice', which: 'split', choice: 'yoked' },
  'thinning 1.50 BD': { kind: 'eye-figure', which: 'thinning', entries: [{ value: 1.5, base: 'down' }] },
  'thinning none': { kind: 'eye-figure', which: 'thinning', entries: [{ value: 0 }] },
  'slab-off R 3.00': { kind: 'slab', entries: [{ eye: 'R', value: 3 }] },
  'reverse-slab L 3.00': { kind: 'slab', reverse: true, entries: [{ eye: 'L', value: 3 }] },
  'confirmed axis-short "R -4.50 -0.75 x 5" "clinic says 5" by KO': {
    kind: 'confirmed',
    code: 'axis-short',
    quote: 'R -4.50 -0.75 x 5',
    why: 'clinic says 5',
    by: 'KO',
  },
  'purpose safety': { kind: 'choice', which: 'purpose', choice: 'safety' },
  'tint brown absorbs 80': { kind: 'tint', colour: 'brown', settings: [{ key: 'absorbs', figure: 80 }] },
  'tint grey transmits 20': { kind: 'tint', colour: 'grey', settings: [{ key: 'transmits', figure: 20 }] },
  'tint polarised 180': { kind: 'tint', settings: [{ key: 'polarised', figure: 180 }] },
  'coating "hard, antireflection"': { kind: 'text', which: 'coating', text: 'hard, antireflection' },
  'ref "tray 7"': { kind: 'text', which: 'ref', text: 'tray 7' },
  'due 2026-12-01': { kind: 'dated', which: 'due', date: '2026-12-01' },
  'note call before edging': { kind: 'text', which: 'note', text: 'call before edging' },
  'remake-of QL-1001 "axis"': { kind: 'remake-of', name: 'QL-1001', why: 'axis' },
  'clock R +6.25 -> +8.25': { kind: 'clock', entries: [{ eye: 'R', value: { distance: 6.25, segment: 8.25 } }] },
  'clock R +4.37 @ 090 / +4.12 @ 180': {
    kind: 'clock',
    entries: [
      {
        eye: 'R',
        value: {
          meridians: [
            { power: 4.37, meridian: 90 },
            { power: 4.12, meridian: 180 },
          ],
        },
      },
    ],
  },
  'segment R 28.0 tilt 1 nasal-up': {
    kind: 'segment',
    entries: [{ eye: 'R', value: { width: 28, tilt: 1, tiltTowards: 'nasal-up' } }],
  },
  'impact batch "cert 88"': { kind: 'results', which: 'impact', results: [{ word: 'batch' }], detail: 'cert 88' },
  'cosmetic failed "scratch R"': {
    kind: 'results',
    which: 'cosmetic',
    results: [{ word: 'failed' }],
    detail: 'scratch R',
  },
  'marking passed': { kind: 'results', which: 'marking', results: [{ word: 'passed' }] },
  'replaced R "axis"': { kind: 'eyes', which: 'replaced', eyes: ['R'], reason: 'axis' },
  'decided accept by MT "why"': { kind: 'decided', verdict: 'accept', by: 'MT', why: 'why' },
  'decided remake R': { kind: 'decided', verdict: 'remake', eyes: ['R'] },
  'kind manual focimeter': { kind: 'text', which: 'kind', text: 'manual focimeter' },
  'reads-to 0.125': { kind: 'figure', which: 'reads-to', figure: 0.125 },
  'calibrated 2026-05-14 due 2027-05-14': {
    kind: 'dated',
    which: 'calibrated',
    date: '2026-05-14',
    due: '2027-05-14',
  },
  'test-lens -10.00 read -9.94': { kind: 'test-lens', nominal: -10, read: -9.94 },
  'uncertainty 0.06': { kind: 'figure', which: 'uncertainty', figure: 0.06 },
};

/** Lines below a tolerance word, where some words limit what they order or read elsewhere. */
const LIMITS: Readonly<Record<string, object>> = {
  'power 0.12': { kind: 'limit', which: 'power', limit: 0.12 },
  'cylinder 0.12': { kind: 'limit', which: 'cylinder', limit: 0.12 },
  'axis to 0.25 10': { kind: 'limit', which: 'axis', band: 'to', bound: 0.25, limit: 10 },
  'axis above 1.50 2': { kind: 'limit', which: 'axis', band: 'above', bound: 1.5, limit: 2 },
  'pd 2.0': { kind: 'limit', which: 'pd', limit: 2 },
  'height 0.5': { kind: 'limit', which: 'height', limit: 0.5 },
  'height-difference 1.0': { kind: 'limit', which: 'height-difference', limit: 1 },
  'note agreed in March': { kind: 'text', which: 'note', text: 'agreed in March' },
};

const HEADS = VOCABULARY.filter(({ role }) => role === 'line' || role === 'block' || role === 'eye');

/** Lines that the help of the words shows, with every placeholder filled in. */
const SHOWN = HEADS.flatMap(({ word, syntax, blocks }) =>
  syntax.split(' | ').map((alternative) => {
    const whole = alternative.startsWith(word) ? alternative : `${word} ${alternative}`;
    const block: BlockKind | undefined = blocks.length === 1 && blocks[0] === 'tolerance' ? 'tolerance' : undefined;
    return { line: filled(whole), block };
  }),
);

function filled(syntax: string): string {
  return syntax
    .replace(/[[\]](?!\d|\])/g, '')
    .replace(/\|\S+/g, '')
    .replaceAll(' add …', ' add +2.00')
    .replaceAll(' prism …', ' prism 2.00 BI')
    .replaceAll(/ ([RL]) …/g, ' $1 -4.50 -0.75 x 022')
    .replaceAll(/NAME|MATERIAL|INSTRUMENT|CODE|SET/g, 'QL-1042')
    .replace('WHO', 'KO')
    .replace('DATE', '2026-11-24')
    .replace('TIME', '14:30');
}

test('thinning keeps its base', () => expect(said('thinning 1.50 BU')).not.toEqual(said('thinning 1.50 BD')));

describe('a line says', () => {
  test.each(Object.entries(LINES))('%s', (line, expected) => {
    expect(said(line)).toEqual(expected);
    expect(told(line).codes).toEqual([]);
  });

  test.each(Object.entries(LIMITS))('below a tolerance word: %s', (line, expected) => {
    expect(said(line, 'tolerance')).toEqual(expected);
    expect(told(line, 'tolerance').codes).toEqual([]);
  });
});

test.each(HEADS)('$word stands at the head of a line above', ({ word }) => {
  const heads = [...Object.keys(LINES), ...Object.keys(LIMITS)].map((line) => line.split(' ')[0]);
  expect(heads).toContain(word);
});

test.each(SHOWN)('the help shows a line that is read: $line', ({ line, block }) => {
  expect(said(line, block)).not.toHaveProperty('kind', 'unknown');
  expect(told(line, block)).toEqual({ codes: [], marked: line });
});

test.each(HEADS.flatMap(({ word, also }) => also.map((spelling) => ({ spelling, word }))))(
  '$spelling reads as $word',
  ({ spelling, word }) => {
    const line = [...Object.keys(LINES), ...Object.keys(LIMITS)].find((one) => one.split(' ')[0] === word) as string;
    const block = line in LINES ? undefined : 'tolerance';
    for (const typed of [spelling, spelling.toUpperCase()]) {
      const other = typed + line.slice(word.length);
      expect(said(other, block)).toEqual(said(line, block));
      expect(told(other, block).codes).toEqual([]);
    }
  },
);

test('the example of the notation raises nothing', () => {
  const problems = parseDocument(BENCH).blocks.flatMap(({ kind, lines }) =>
    lines.flatMap((line) => line.parsed(kind).problems.map(({ code }) => `${code}: ${line.text}`)),
  );
  expect(problems).toEqual([]);
  expect(parseDocument(BENCH).blocks.map(({ kind }) => kind)).toEqual(['preamble', 'instrument', 'order']);
});
