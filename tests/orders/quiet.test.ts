/**
 * Jobs that look odd and are right: nothing above a hint may be told, and the pair is accepted. Below them jobs that look
 * fine and are not. Each has the number of its case and the public account it comes from.
 */
import { describe, expect, test } from 'vitest';
import { alarms, told } from '../support/findings';
import { JOB, only, written } from '../support/job';
import { judged, pair } from '../support/judged';

const FRAME = 'frame A 50 B 38 DBL 18';
const TESTED = ['impact passed', 'cosmetic passed'];

/** A glazed single-vision pair and what was read on it. */
const single = (order: string[], reading: string[]): string =>
  pair([...order, 'design single-vision', FRAME], [...reading, ...TESTED]);

/** A glazed progressive pair, read at its prism point and with its engraved adds. */
const progressive = (order: string[], reading: string[]): string =>
  pair(
    [...order, 'add +2.00', 'pd R 32 L 31', 'height 20', 'design progressive corridor 14', FRAME],
    [
      ...reading,
      'add R +2.00 engraved',
      'add L +2.00 engraved',
      'pd R 32 L 31',
      'height R 20 L 20',
      'prism R 0 L 0 at prism-point',
      ...TESTED,
    ],
  );

function checkQuiet(text: string, verdict: 'accept' | 'unread'): void {
  expect(alarms(text), text).toEqual([]);
  expect(judged(text).verdict).toBe(verdict);
}

const READ: readonly (readonly [what: string, text: string])[] = [
  [
    // A French note: the doctor’s and the optician’s formula of one lens, and of its fellow.
    'W04 order and prescription in two forms',
    single(
      [
        'R -4.25 +1.75 x 075',
        'L -3.50 +1.25 x 100',
        'rx R -2.50 -1.75 x 165 L -2.25 -1.25 x 010',
        'pd 62',
        'height 20',
      ],
      ['R -2.50 -1.75 x 165', 'L -2.25 -1.25 x 010', 'pd 62', 'height R 20 L 20', 'prism R 0 L 0'],
    ),
  ],
  [
    // A German question page on sphere and cylinder: axis 0 is 180, and 179 is two degrees from 1.
    'W06 axis 0 for 180, and 179 for 1',
    single(
      ['R +0.75 -0.25 x 180', 'L +0.75 -2.50 x 001', 'pd 62'],
      ['R +0.50 +0.25 x 090', 'again R +0.75 -0.25 x 0', 'L +0.75 -2.50 x 179', 'pd 62', 'prism R 0 L 0'],
    ),
  ],
  [
    // ProFile ANZ, prescription analysis case 2: 3 prism dioptres at the reading level of a dull eye.
    'W25 a dull eye with a balance lens',
    pair(
      [
        'R -2.00',
        'balance L -5.00 -0.50 x 090',
        'add +2.00',
        'pd 63 near 60',
        'height 17',
        'design bifocal flat-top 28',
        FRAME,
      ],
      ['R -2.00', 'L -5.25', 'add R +2.00 L +2.00', 'pd 63 near 60', 'height R 17 L 17', 'prism R 0 L 0', ...TESTED],
    ),
  ],
  ...['2.25', '-2.25'].map((degression): readonly [string, string] => [
    // Lab training page on intermediate progressives: near +3.50, top 3.50 less 2.25.
    `W30 an office lens with a degression of ${degression}`,
    pair(
      ['both +1.00', 'add +2.50', 'pd R 32 L 31', 'height 20', `design office degression ${degression}`, FRAME],
      ['both +3.50 at near-point', 'both +1.25 at top', 'pd R 32 L 31', 'height R 20 L 20', 'prism R 0 L 0', ...TESTED],
    ),
  ]),
  [
    // A British safety-spectacle seller’s help page.
    'W34 infinity sign, pl and DS',
    single(['R ∞ DS', 'L pl', 'pd 63'], ['R plano', 'L 0.00', 'pd 63', 'prism R 0 L 0']),
  ],
  [
    // 20/20 on compensated powers: the maker’s check powers hold, not the prescription.
    'V10 a lens made for the way it is worn',
    progressive(
      [
        'R -3.00 -1.00 x 010',
        'L -3.25 -0.75 x 170',
        'as-worn vertex 13 panto 8 wrap 5',
        'compensation by-maker',
        'verification R -3.12 -0.93 x 012 add +2.00 L -3.37 -0.69 x 168 add +2.00',
      ],
      ['R -3.12 -0.95 x 012', 'L -3.36 -0.70 x 168'],
    ),
  ],
  [
    // Opticians Handbook, “the 1-2-3 of prism”: 2 base out on -4.00 stands 5 mm beside the centre.
    'V13 centres beside the PD on a prism pair',
    single(
      ['both -4.00', 'prism R 0 L 2 BO', 'pd 63', 'height 20'],
      ['R -4.00', 'L -4.00', 'prism R 0 L 2 BO', 'pd 63', 'optical-centres R 31.5 L 26.5', 'height R 20 L 20'],
    ),
  ],
  [
    // Opticians’ forum, horizontal prism tolerance: the limit is for the pair.
    'V14 all of 0.67 in one lens',
    single(['R -1.00', 'L -1.25', 'pd 63'], ['R -1.00', 'L -1.25', 'prism R 0.67 BO L 0']),
  ],
  [
    // Opticians’ forum, horizontal prism revisited: 0.64 prism dioptres, and within 1 mm.
    'V18 centres of -8.00 lenses 0.8 mm apart in height',
    single(
      ['both -8.00', 'tested vertex 12', 'pd 63', 'height 20'],
      ['R -8.00', 'L -8.00', 'pd 63', 'height R 20 L 20.8'],
    ),
  ],
  [
    // The same thread: 0.30 prism dioptres.
    'V18 centres of -2.00 lenses 1.5 mm apart in height',
    single(['both -2.00', 'pd 63', 'height 20'], ['R -2.00', 'L -2.00', 'pd 63', 'height R 20 L 21.5']),
  ],
  [
    // Exam-study page on transposition.
    'V24 a reading in the other form',
    single(
      ['both -2.00 +1.50 x 090', 'pd 63'],
      ['R -0.50 -1.50 x 180', 'L -0.50 -1.50 x 180', 'pd 63', 'prism R 0 L 0'],
    ),
  ],
  [
    // Exam-study page on axis tolerances: 3 degrees of 3, and 10 of 14.
    'V25 and V39 an axis on its limit, and one of a weak cylinder',
    single(
      ['R -2.00 -1.25 x 090', 'L -2.00 -0.25 x 090', 'pd 63'],
      ['R -2.00 -1.25 x 087', 'L -2.00 -0.25 x 100', 'pd 63', 'prism R 0 L 0'],
    ),
  ],
  [
    // Vision Monday, “don’t look for zebras”: only the frame sat wrongly.
    'F11 a progressive that is right in everything',
    progressive(['R -1.50 -0.50 x 010', 'L -1.75'], ['R -1.46 -0.55 x 012', 'L -1.79']),
  ],
  [
    // A German lexicon and the DOZ: PD 64 less 0.25 mm for each of eight prism dioptres.
    'F16 prism points where the stated rule puts them',
    single(
      [
        'R -2.00',
        'L -2.25',
        'prism R 4 BO L 4 BO',
        'pd 62',
        'note pupils kept centred, PD 64 less 2 mm for 8 prism dioptres',
      ],
      ['R -2.00', 'L -2.25', 'pd 62', 'prism R 4 BO L 4 BO'],
    ),
  ],
  [
    // Opticians’ forum, prism by decentration, worked out: centres 4.72 and 4.35 in, 1.3 mm apart in height.
    'W23 prism by decentration, done exactly',
    single(
      ['R -3.00 -1.75 x 063', 'L -4.50 -2.00 x 015', 'prism R 2 BO L 2 BO', 'pd 63', 'height 20'],
      [
        'R -3.00 -1.75 x 063',
        'L -4.50 -2.00 x 015',
        'pd 63',
        'optical-centres R 26.78 L 27.15',
        'prism R 2 BO L 2 BO',
        'height R 20 L 20',
      ],
    ),
  ],
];

describe('must stay quiet', () => {
  test.each(READ)('%s', (_, text) => checkQuiet(text, 'accept'));

  // OpticianWorks, “working with your lab”: a blank of 68 covers it.
  test('W42 a complete telephone order', () => {
    const order = ['R -1.00 -1.00 x 089', 'L -1.00 -1.50 x 087', 'add 1.50', 'pd R 32 L 31', 'height 19', 'blank 68'];
    checkQuiet(only(...order, 'design progressive', 'lens 1.60', 'frame A 54 B 30 DBL 19 ED 56'), 'unread');
  });

  test('the job of these tests', () => checkQuiet(written(JOB), 'accept'));
});

describe('looks fine and is not', () => {
  // A wearer’s weblog, 2009: twice checked against the slip, never against the prescription.
  test('W01 the pair equals the slip, and the slip is wrong', () => {
    const order = ['R plano', 'L plano +0.25 x 053', 'rx R plano L plano +0.25 x 153', 'pd 62'];
    const text = single(order, ['R plano', 'L plano +0.25 x 053', 'pd 62', 'prism R 0 L 0']);
    expect(judged(text)).toMatchObject({ verdict: 'incomplete', unresolved: ['rx-differs'] });
    expect(told(text, 'rx-differs')).toEqual(['error L [plano +0.25 x 053]']);
  });

  // ABO Masters paper, 1998: every reading was right, and the wearer saw double.
  test('W24 every reading is right, and there is no slab-off', () => {
    const order = ['R +6.00 +2.50 x 015', 'L +2.75', 'add +2.75', 'pd 64 near 61', 'height 17', 'tested vertex 12'];
    const reading = ['R +6.00 +2.50 x 015', 'L +2.75', 'add R +2.75 front-vertex L +2.75 front-vertex'];
    const text = pair(
      [...order, 'design bifocal flat-top 28', FRAME],
      [...reading, 'pd 64 near 61', 'height R 17 L 17', 'prism R 0 L 0', ...TESTED],
    );
    expect(judged(text).verdict).toBe('accept');
    expect(told(text, 'near-imbalance')).toEqual(['warning L [+2.75]']);
  });

  // ProFile ANZ: 12 base down in both eyes, balanced, and a child in pain.
  test('W28 a strong pair is balanced, and its heights were never asked for', () => {
    const order = ['R +13.50 -0.75 x 030', 'L +13.00', 'pd 52', 'tested vertex 12'];
    const text = single(order, ['R +13.50 -0.75 x 030', 'L +13.00', 'pd 52', 'prism R 12 BD L 12 BD']);
    expect(told(text, 'height-missing')).toEqual(['warning [+13.50 -0.75 x 030]']);
    expect(told(text, 'prism-in-both')).toEqual(['warning [R 12 BD]']);
  });

  // Durham Technical Community College, OPH 142, lens tilt.
  test('V11 right on the focimeter, and another lens before the eye', () => {
    const order = ['both +15.00', 'pd 62', 'height 20', 'tested vertex 12', 'as-worn panto 10'];
    const text = single(order, ['R +15.00', 'L +15.00', 'pd 62', 'height R 20 L 20', 'prism R 0 L 0']);
    expect(judged(text).verdict).toBe('accept');
    expect(told(text, 'tilt-matters')).toEqual(['warning [10]']);
  });

  // 20/20 L&T, “ordering a single lens”: the new left lens was right, the old right one was left in.
  test('W38 the new lens is right, and the old one does not go with it', () => {
    const order = ['R -3.00 -0.75 x 180', 'L -3.50 -1.50 x 005', 'add +2.25', 'pd 63 near 60', 'height 19'];
    const kept = ['make L', 'kept R -2.00 -0.25 x 015 add +2.00', 'design bifocal flat-top 28', FRAME];
    const text = pair([...order, ...kept], ['L -3.50 -1.50 x 005', 'add L +2.25', ...TESTED]);
    expect(told(text, 'kept-differs')).toEqual(['warning R [-2.00 -0.25 x 015]', 'warning R [+2.00]']);
  });
});
