/** Everyday pairs of every kind with readings that are right in everything: none may be anything but a plain accept. */
import { pair } from '../../support/judged';

const FRAME = 'frame A 50 B 38 DBL 18 ED 53';
const TESTED = ['impact passed', 'cosmetic passed'];
const SV = ['design single-vision', FRAME, 'supply glazed'];
const ISO = ['standard iso-21987-2017'];
const BENCH = [
  'standard z80.1-2015',
  'instrument FOC-A',
  '  kind manual focimeter',
  '  reads-to 0.125',
  '  calibrated 2026-05-14 due 2027-05-14',
  '  test-lens +5.00 read +5.00',
];

/** Name and text. The figures are invented. */
export const PAIRS: readonly (readonly [string, string])[] = [
  [
    'weak single vision with prism and PD',
    pair(
      ['R -1.00 -0.50 x 010', 'L -1.25 -0.25 x 170', 'pd 62', ...SV],
      ['R -1.00 -0.50 x 010', 'L -1.25 -0.25 x 170', 'pd 62', 'prism R 0 L 0', ...TESTED],
    ),
  ],
  [
    'strong single vision with heights',
    pair(
      ['R -5.00 DS', 'L -5.25 -1.00 x 015', 'pd R 31 L 32', 'height R 20 L 20', ...SV],
      ['R -5.00', 'L -5.25 -1.00 x 015', 'pd R 31 L 32', 'height R 20 L 20', 'prism R 0 L 0', ...TESTED],
    ),
  ],
  [
    'single vision with ordered prism',
    pair(
      ['R -3.00 -1.00 x 090', 'L -3.00', 'prism R 2.00 BI 1.00 BU L 2.00 BI', 'pd 63', 'height 20', ...SV],
      ['R -3.00 -1.00 x 090', 'L -3.00', 'pd 63', 'prism R 2.00 BI 1.00 BU L 2.00 BI', 'height R 20 L 20', ...TESTED],
    ),
  ],
  [
    'single vision by meridians, prescription beside',
    pair(
      [
        'rx R -4.50 -0.75 x 022 L -4.25',
        'previous R -4.00 L -4.00',
        'R -4.50 @ 022 / -5.25 @ 112',
        'L -4.25',
        'pd 63',
        'height 18',
        ...SV,
      ],
      ['R -4.50 @ 022 / -5.25 @ 112', 'L -4.25', 'pd 63', 'height R 18 L 18', 'prism R 0 L 0', ...TESTED],
    ),
  ],
  [
    'single vision by drum lines, repeats, an instrument and free facts',
    pair(
      [
        'R -2.50 -0.75 x 022',
        'L -2.25 -1.00 x 168',
        'pd 63',
        'ref "tray 7"',
        'due 2026-12-01',
        'note call before glazing',
        'coating hard',
        'tint brown absorbs 80',
        'purpose general',
        ...SV,
      ],
      [
        'zero +0.00',
        'R lines -2.50 / -3.25 x 022',
        'again R lines -2.50 / -3.25 x 022',
        'L -2.25 -1.00 x 168',
        'pd 63',
        'prism R 0 L 0',
        'marking passed',
        'note all well',
        ...TESTED,
        'decided accept by MT',
      ],
      BENCH,
    ).replace('reading 2026-11-24', 'reading 2026-11-24 14:30 by KO with FOC-A stage final'),
  ],
  [
    'bifocal, add by the drum',
    pair(
      [
        'R -4.50 -0.75 x 022',
        'L -4.25 -1.00 x 168',
        'add +2.00',
        'pd 63 near 60',
        'height 17',
        'design bifocal flat-top 28',
        'base-curve 4.00',
        'thickness centre 2.0',
        FRAME,
      ],
      [
        'R -4.50 -0.75 x 022',
        'L -4.25 -1.00 x 168',
        'add R -4.50 -> -2.50 front-vertex',
        'add L -4.25 -> -2.25 front-vertex',
        'pd 63 near 60',
        'height R 17 L 17',
        'prism R 0 L 0',
        'segment R 28 tilt 0 L 28 tilt 0',
        'base-curve R 4.00 L 4.00',
        'thickness R centre 2.0 L centre 2.0',
        ...TESTED,
      ],
    ),
  ],
  [
    'bifocal, add by the clock',
    pair(
      [
        'R +0.75',
        'L +1.00',
        'add R +2.00 L +2.00',
        'pd 63 near 60',
        'height 17',
        'design bifocal round 24',
        'lens resin-1.50',
        FRAME,
      ],
      [
        'R +0.75',
        'L +1.00',
        'clock R +6.25 -> +8.37',
        'clock L +6.25 -> +8.37',
        'pd 63 near 60',
        'height R 17 L 17',
        'prism R 0 L 0',
        ...TESTED,
      ],
    ),
  ],
  [
    'trifocal',
    pair(
      [
        'R +0.50 -0.75 x 010',
        'L +0.25 -0.50 x 170',
        'add +2.50 intermediate +1.25',
        'pd 64 near 61',
        'height 21',
        'design trifocal flat-top 7x28',
        FRAME,
      ],
      [
        'R +0.50 -0.75 x 010',
        'L +0.25 -0.50 x 170',
        'add R +2.50 intermediate +1.25 L +2.50 intermediate +1.25',
        'pd 64 near 61',
        'height R 21 L 21',
        'prism R 0 L 0',
        ...TESTED,
      ],
    ),
  ],
  [
    'progressive',
    pair(
      [
        'R -1.50 -0.50 x 010',
        'L -1.75 -0.75 x 170',
        'add +2.00',
        'pd R 31 L 32',
        'height R 20 L 20.5',
        'design progressive corridor 14',
        'lens resin-1.60',
        'thinning 1.50 BD',
        FRAME,
      ],
      [
        'R -1.50 -0.50 x 010 at distance-point',
        'L -1.75 -0.75 x 170 at distance-point',
        'add R +2.00 engraved',
        'add L +2.00 engraved',
        'pd R 31 L 32',
        'height R 20 L 20.5',
        'prism R 1.50 BD L 1.50 BD at prism-point',
        ...TESTED,
      ],
    ),
  ],
  [
    'progressive with the powers of the maker',
    pair(
      [
        'R -3.00 -1.00 x 010',
        'L -3.25 -0.75 x 170',
        'add +2.00',
        'pd R 32 L 31',
        'height 20',
        'design progressive corridor 14',
        'as-worn vertex 13 panto 8 wrap 5',
        'compensation by-maker',
        'verification R -3.12 -0.93 x 012 add +2.12 L -3.37 -0.69 x 168 add +2.12',
        FRAME,
      ],
      [
        'R -3.12 -0.93 x 012',
        'L -3.37 -0.69 x 168',
        'add R +2.12 engraved',
        'add L +2.12 engraved',
        'pd R 32 L 31',
        'height R 20 L 20',
        'prism R 0 L 0 at prism-point',
        ...TESTED,
      ],
    ),
  ],
  [
    'office lens',
    pair(
      ['both +1.00', 'add +2.50', 'pd R 32 L 31', 'height 20', 'design office degression 1.25 working 60', FRAME],
      ['both +3.50 at near-point', 'both +2.25 at top', 'pd R 32 L 31', 'height R 20 L 20', 'prism R 0 L 0', ...TESTED],
    ),
  ],
  [
    'for near alone',
    pair(
      ['R +1.00 -0.50 x 090', 'L +1.25 -0.50 x 085', 'add +2.00', 'design single-vision near', 'pd near 58', FRAME],
      ['R +3.00 -0.50 x 090', 'L +3.25 -0.50 x 085', 'pd 58', 'prism R 0 L 0', ...TESTED],
    ),
  ],
  [
    'each limit for itself: the set of the other trade',
    pair(
      ['R +1.00 -2.00 x 180', 'L +0.75 -1.75 x 175', 'pd 62', 'height 20', ...SV],
      ['R +1.00 -2.00 x 180', 'L +0.75 -1.75 x 175', 'pd R 31 L 31', 'height R 20 L 20', 'prism R 0 L 0', ...TESTED],
      ISO,
    ),
  ],
  [
    'one lens made, one kept',
    pair(
      ['R -1.00 -0.50 x 010', 'kept L -1.25', 'make R', 'pd 63', ...SV],
      ['R -1.00 -0.50 x 010', 'prism R 0 L 0', 'pd 63', ...TESTED],
    ),
  ],
  [
    'a balance lens',
    pair(
      ['R -2.00', 'balance L -5.00', 'pd 63', 'height 18', ...SV],
      ['R -2.00', 'L -5.00', 'pd 63', 'height R 18 L 18', 'prism R 0 L 0', ...TESTED],
    ),
  ],
  [
    'uncut lenses',
    pair(
      ['R -2.00 -0.50 x 010', 'L -1.50', 'design single-vision', 'supply uncut', 'blank 70'],
      ['R -2.00 -0.50 x 010', 'L -1.50', 'prism R 0 L 0'],
    ),
  ],
  [
    'limits of the house',
    pair(
      ['R -1.00 -0.50 x 010', 'L -1.25 -0.25 x 170', 'pd 62', ...SV],
      ['R -1.00 -0.50 x 010', 'L -1.25 -0.25 x 170', 'pd 62', 'prism R 0 L 0', ...TESTED],
      ['standard house', 'tolerance house from z80.1-2015', '  power 0.10', '  axis to 0.50 6', '  pd 2.0'],
    ),
  ],
  [
    'a lens put in again',
    `${pair(
      ['R -1.00 -1.50 x 010', 'L -1.25 -1.25 x 170', 'pd 62', ...SV],
      ['R -1.00 -1.50 x 016', 'L -1.25 -1.25 x 170', 'pd 62', 'prism R 0 L 0', ...TESTED],
    )}\n  reading 2026-11-26\n    replaced R "axis"\n    R -1.00 -1.50 x 010\n    pd 62\n    prism R 0 L 0\n    impact passed\n    cosmetic passed`,
  ],
];
