import { describe, expect, test } from 'vitest';
import { parseLine } from '../../grammar';
import { said, told } from '../support/lines';
import { mark, unmark } from '../support/marks';

/** Lines with marks where something is told, what they say beside their kind, and the codes told. */
type Row = readonly [sample: string, says: object, codes?: string];

function says(title: string, rows: readonly Row[]): void {
  describe(title, () => {
    for (const [sample, expected, codes = ''] of rows) {
      test(sample, () => {
        const { text } = unmark(sample);
        expect(told(text)).toEqual({ codes: codes === '' ? [] : codes.split(' '), marked: sample });
        expect(said(text)).toMatchObject(expected);
      });
    }
  });
}

const sphere = (value: number) => ({ form: 'sphero-cylinder', sphere: value });
const perEye = (right: unknown, left: unknown) => ({
  entries: [
    { eye: 'R', value: right },
    { eye: 'L', value: left },
  ],
});

describe('eye words', () => {
  test.each([
    ['R', ['R', 'OD', 'RE', 'right', 'od', 'r', 'RIGHT']],
    ['L', ['L', 'OS', 'LE', 'left', 'os', 'l', 'Left']],
    ['both', ['both', 'OU', 'BE', 'B/E', 'ou', 'Both']],
  ] as const)('of %s', (eye, words) => {
    for (const word of words) {
      for (const line of [`${word} -4.50`, `${word}-4.50`, `${word}: -4.50`, `${word}= -4.50`]) {
        expect(said(line), line).toEqual({ kind: 'power', entries: [{ eye, power: sphere(-4.5) }] });
        expect(told(line).codes, line).toEqual([]);
      }
      expect(said(`add ${word} +2.00`)).toEqual({ kind: 'add', entries: [{ eye, value: { value: 2 } }] });
    }
  });

  test('cover themselves and nothing else', () => {
    const { text, spans } = unmark('‹OD› -4.50 -0.75 x 022 ‹OS› -4.25');
    const { node } = parseLine(text);
    const eyes = node.kind === 'power' ? node.entries.flatMap(({ eye }) => (eye ? [eye] : [])) : [];
    expect(mark(text, eyes)).toBe(mark(text, spans));
  });

  test.each(['‹-4.50 -0.75 x 022›', '‹4.50›', '‹- 4.50›', '  ‹+0.50›'])('are asked for: %s', (sample) => {
    expect(told(unmark(sample).text)).toEqual({ codes: ['eye-unsaid'], marked: sample });
  });
});

says('two eyes on one line', [
  ['‹R -4.50 L -4.25›', { entries: [{ eye: 'R' }, { eye: 'L', power: sphere(-4.25) }] }, 'two-eyes'],
  ['‹R -4.50 / L -4.25›', { entries: [{ eye: 'R' }, { eye: 'L', power: sphere(-4.25) }] }, 'two-eyes'],
  ['‹R -4.50, L -4.25›', { entries: [{ eye: 'R' }, { eye: 'L', power: sphere(-4.25) }] }, 'two-eyes'],
  [
    '‹R -4.50 -0.75 x 022 L -4.25 ‹add +2.00››',
    { entries: [{ eye: 'R' }, { eye: 'L', power: sphere(-4.25), add: { value: 2 } }] },
    'two-eyes add-for-both',
  ],
  [
    'R -4.50 add +2.00 prism 2.00 BI 0.50 BU',
    { entries: [{ eye: 'R', add: { value: 2 }, prism: [{ amount: 2, base: 'in' }, { base: 'up' }] }] },
  ],
]);

// Units are understood and left alone, since they cannot be misread.
says('units', [
  ['R -4.50D -0.75D x 022°', { entries: [{ eye: 'R', power: { sphere: -4.5, cylinder: -0.75, axis: 22 } }] }],
  ['R -4.50 DS', { entries: [{ eye: 'R', power: sphere(-4.5) }] }],
  ['add +2.00 D', { entries: [{ value: { value: 2 } }] }],
  ['pd 63mm near 60 mm', { distance: { binocular: 63 }, near: { binocular: 60 } }],
  ['height R 17mm L 16.5 mm', perEye(17, 16.5)],
  [
    'as-worn vertex 13mm panto 8° wrap 5 deg',
    {
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
  ],
]);

says('two eyes on a line that is not finished', [
  ['‹R -4.50 -0.75 x ‹22› ‹L››', { entries: [{ eye: 'R' }, { eye: 'L' }] }, 'two-eyes axis-short value-missing'],
]);

says('prisms', [
  ['prism R 2 BI L 2 BO', perEye([{ amount: 2, base: 'in' }], [{ amount: 2, base: 'out' }])],
  ['prism R 1 BU L 1 BD', perEye([{ amount: 1, base: 'up' }], [{ amount: 1, base: 'down' }])],
  ['prism OD 1 up OS 1 down', perEye([{ amount: 1, base: 'up' }], [{ amount: 1, base: 'down' }])],
  [
    'prism R BI 2 BU 0.5',
    {
      entries: [
        {
          eye: 'R',
          value: [
            { amount: 2, base: 'in' },
            { amount: 0.5, base: 'up' },
          ],
        },
      ],
    },
  ],
  ['prism R 2.06 base 014', { entries: [{ eye: 'R', value: [{ amount: 2.06, degrees: 14 }] }] }],
  ['prism R 2.06 base 360°', { entries: [{ eye: 'R', value: [{ amount: 2.06, degrees: 360 }] }] }],
  ['prism R 2.06 @ 014', { entries: [{ eye: 'R', value: [{ amount: 2.06, degrees: 14 }] }] }],
  ['prism R 0 L 0', perEye([{ amount: 0 }], [{ amount: 0 }])],
  ['prism total 4 BI', { total: true, entries: [{ value: [{ amount: 4, base: 'in' }] }] }],
  ['prism both 2 BI', { entries: [{ eye: 'both', value: [{ amount: 2, base: 'in' }] }] }],
  ['prism R +2 BI', { entries: [{ eye: 'R', value: [{ amount: 2, base: 'in', relative: true }] }] }],
  [
    'prism R 0.50 BO at prism-point with FOC-B',
    {
      entries: [{ eye: 'R', value: [{ amount: 0.5, base: 'out' }] }],
      qualifiers: { at: 'prism-point', with: 'FOC-B' },
    },
  ],
  ['prism R 2 ‹base›', { entries: [{ eye: 'R', value: [{ amount: 2 }] }] }, 'value-missing'],
  ['prism R 2 BI ‹L›', { entries: [{ eye: 'R' }, { eye: 'L' }] }, 'value-missing'],
  ['prism R 2 ‹wards›', { entries: [{ eye: 'R', value: [{ amount: 2 }] }] }, 'unexpected-text'],
]);

says('adds', [
  ['add R +2.00 L +2.25', perEye({ value: 2 }, { value: 2.25 })],
  ['add +2.25 intermediate +1.12', { entries: [{ value: { value: 2.25, intermediate: 1.12 } }] }],
  [
    'add R -4.50 -> -2.50 front-vertex',
    { entries: [{ eye: 'R', value: { from: -4.5, to: -2.5, surface: 'front-vertex' } }] },
  ],
  [
    'add R -4.50 → -2.50 back-vertex',
    { entries: [{ eye: 'R', value: { from: -4.5, to: -2.5, surface: 'back-vertex' } }] },
  ],
  ['add R -4.50->-2.50', { entries: [{ eye: 'R', value: { from: -4.5, to: -2.5 } }] }],
  ['add R -4.50 --> -2.50', { entries: [{ eye: 'R', value: { from: -4.5, to: -2.5 } }] }],
  ['add R -4.50 => -2.50', { entries: [{ eye: 'R', value: { from: -4.5, to: -2.5 } }] }],
  [
    'add R -4.50 -> -2.50 L -4.00 -> -2.00 front-vertex',
    perEye({ from: -4.5, to: -2.5 }, { from: -4, to: -2, surface: 'front-vertex' }),
  ],
  ['add R plano -> +2.00', { entries: [{ eye: 'R', value: { from: 0, to: 2 } }] }],
  ['add R +2.00 engraved', { entries: [{ eye: 'R', value: { value: 2, engraved: true } }] }],
  ['add ‹+2.00-2.25›', {}, 'pair-unclear'],
  ['add ‹- +2.00›', {}, 'unexpected-text'],
  ['add ‹+2.00/+2.25›', perEye({ value: 2 }, { value: 2.25 }), 'slash-pair'],
  ['add ‹+2.00 / +2.25›', perEye({ value: 2 }, { value: 2.25 }), 'slash-pair'],
  ['add R -4.50 -> ‹2.50›', { entries: [{ eye: 'R', value: { from: -4.5 } }] }, 'sign-missing'],
]);

says('distances between the pupils', [
  ['pd 63 near 60', { distance: { binocular: 63 }, near: { binocular: 60 } }],
  ['pd R 31.5 L 32 near R 30 L 30.5', { distance: { right: 31.5, left: 32 }, near: { right: 30, left: 30.5 } }],
  ['pd R31.5 L32', { distance: { right: 31.5, left: 32 } }],
  ['pd 63.5 R 31.5 L 32', { distance: { binocular: 63.5, right: 31.5, left: 32 } }],
  ['pd near 60', { distance: {}, near: { binocular: 60 } }],
  ['near-pd R 30 L 30.5', { distance: {}, near: { right: 30, left: 30.5 } }],
  ['pd ‹63/60›', { distance: { binocular: 63 }, near: { binocular: 60 } }, 'slash-pair'],
  ['pd ‹63 / 60›', { distance: { binocular: 63 }, near: { binocular: 60 } }, 'slash-pair'],
  ['pd ‹31.5/32›', { distance: { right: 31.5, left: 32 } }, 'slash-pair'],
  // The border between the two readings of a stroke is common practice, no source.
  ['pd ‹40.5/40.5›', { distance: { right: 40.5, left: 40.5 } }, 'slash-pair'],
  ['pd ‹41/40.6›', { distance: { binocular: 41 }, near: { binocular: 40.6 } }, 'slash-pair'],
  ['pd ‹41/40›', { distance: {}, near: {} }, 'pair-unclear'],
  ['pd ‹63/31›', { distance: {}, near: {} }, 'pair-unclear'],
  ['pd ‹63-60›', { distance: {}, near: {} }, 'pair-unclear'],
  ['pd 63 ‹62›', { distance: { binocular: 63 }, near: {} }, 'unexpected-text'],
  [
    'pd ‹31.5/32› near ‹30/30.5›',
    { distance: { right: 31.5, left: 32 }, near: { right: 30, left: 30.5 } },
    'slash-pair slash-pair',
  ],
  ['optical-centres 66 ‹near 60›', { distance: { binocular: 66 } }, 'unexpected-text'],
  ['pd 63.5 ‹-60›', { distance: { binocular: 63.5 }, near: {} }, 'unexpected-text'],
  ['optical-centres ‹33/32›', { distance: { right: 33, left: 32 } }, 'slash-pair'],
]);

says('heights and other figures per eye', [
  ['height R17 L16.5', perEye(17, 16.5)],
  ['height ‹17/16.5›', perEye(17, 16.5), 'slash-pair'],
  ['height 2 below datum', { entries: [{ value: 2 }], belowDatum: true }],
  ['height R 2 L 3 below datum', { ...perEye(2, 3), belowDatum: true }],
  ['height R 17 ‹L›', { entries: [{ eye: 'R', value: 17 }, { eye: 'L' }] }, 'value-missing'],
  ['height ‹R› L 17', { entries: [{ eye: 'R' }, { eye: 'L', value: 17 }] }, 'value-missing'],
  ['height ‹17-16.5›', {}, 'pair-unclear'],
  ['base-curve ‹4-4.25›', {}, 'pair-unclear'],
  ['height 17 ‹up›', { entries: [{ value: 17 }] }, 'unexpected-text'],
  ['base-curve ‹4.00/4.25›', perEye(4, 4.25), 'slash-pair'],
  ['‹height›', {}, 'value-missing'],
]);

says('designs', [
  ['design single-vision', { entries: [{ value: { type: 'single-vision' } }] }],
  ['design single-vision near', { entries: [{ value: { type: 'single-vision', use: 'near' } }] }],
  [
    'design single-vision intermediate +1.25',
    { entries: [{ value: { type: 'single-vision', use: 'intermediate', intermediate: 1.25 } }] },
  ],
  ['design bifocal round 22', { entries: [{ value: { type: 'bifocal', shape: 'round', width: 22 } }] }],
  ['design bifocal R22', { entries: [{ value: { type: 'bifocal', shape: 'round', width: 22 } }] }],
  ['design bifocal curve-top 28', { entries: [{ value: { type: 'bifocal', shape: 'curve-top', width: 28 } }] }],
  ['design bifocal full-width', { entries: [{ value: { type: 'bifocal', shape: 'full-width' } }] }],
  ['design bifocal executive-style', { entries: [{ value: { type: 'bifocal', shape: 'full-width' } }] }],
  ...['FT28', 'ST28', 'D28', 'ft 28', 'flat-top 28'].map(
    (typed): Row => [
      `design bifocal ${typed}`,
      { entries: [{ value: { type: 'bifocal', shape: 'flat-top', width: 28 } }] },
    ],
  ),
  [
    'design trifocal flat-top 7x28',
    { entries: [{ value: { type: 'trifocal', shape: 'flat-top', depth: 7, width: 28 } }] },
  ],
  [
    'design trifocal flat-top 8 x 35',
    { entries: [{ value: { type: 'trifocal', shape: 'flat-top', depth: 8, width: 35 } }] },
  ],
  ['design double flat-top 28 gap 13', { entries: [{ value: { type: 'double', width: 28, gap: 13 } }] }],
  ['design progressive corridor 14', { entries: [{ value: { type: 'progressive', corridor: 14 } }] }],
  ...['varifocal', 'PAL', 'pal'].map(
    (typed): Row => [`design ${typed}`, { entries: [{ value: { type: 'progressive' } }] }],
  ),
  ['design SV', { entries: [{ value: { type: 'single-vision' } }] }],
  [
    'design office degression 1.25 working 60',
    { entries: [{ value: { type: 'office', degression: 1.25, working: 60 } }] },
  ],
  [
    'design R bifocal R22 L single-vision',
    perEye({ type: 'bifocal', shape: 'round', width: 22 }, { type: 'single-vision' }),
  ],
  ['design R22', { entries: [{ value: { shape: 'round', width: 22 } }] }],
  ['design ‹bifokal›', {}, 'unexpected-text'],
  ['‹design›', {}, 'value-missing'],
]);
