import { describe, expect, test } from 'vitest';
import type { BlockKind } from '../../grammar';
import { said, told } from '../support/lines';
import { unmark } from '../support/marks';

/** Lines on which a word or a mark waits for its value. */
const WAITING = [
  '‹R›',
  '‹both›',
  'R -4.50 ‹add›',
  'R -4.50 ‹prism›',
  'R ‹lines›',
  'R -4.50 ‹@›',
  'kept L -2.00 ‹base-curve›',
  '‹add›',
  'add R +2.00 ‹L›',
  'add +2.00 ‹->›',
  'add +2.00 ‹intermediate›',
  '‹prism›',
  'prism ‹R›',
  'prism R 2 ‹base›',
  'prism R 0.50 BO ‹at›',
  'prism R 0.50 BO ‹with›',
  '‹pd›',
  'pd ‹R›',
  'pd 63 ‹near›',
  'pd R 31.5 ‹L›',
  '‹optical-centres›',
  '‹height›',
  'height R 17 ‹L›',
  'clock R +6.25 ‹->›',
  '‹frame›',
  'frame ‹A›',
  'as-worn vertex 13 ‹panto›',
  'frame 52‹[]›',
  '‹design›',
  'design progressive ‹corridor›',
  '‹lens›',
  'lens resin-1.50 ‹index›',
  'segment R 28 ‹tilt›',
  'slab-off ‹R›',
  '‹tint›',
  '‹supply›',
  '‹make›',
  '‹replaced›',
  '‹decided›',
  '‹confirmed›',
  '‹remake-of›',
  '‹note›',
  '‹ref›',
  '‹due›',
  '‹calibrated›',
  'calibrated 2026-05-14 ‹due›',
  'test-lens +5.00 ‹read›',
  '‹zero›',
  '‹again›',
  'again ‹R›',
  '‹rx›',
  '‹kept›',
  '‹previous›',
  '‹verification›',
  '‹balance›',
  '‹standard›',
  '‹instrument›',
  '‹tolerance›',
  'tolerance house ‹from›',
  'reading 2026-11-24 ‹by›',
  'reading 2026-11-24 ‹with›',
  'reading 2026-11-24 ‹stage›',
];

const WAITING_LIMITS = ['‹power›', 'axis ‹to›', '‹axis›', '‹pd›'];

describe('a word that waits for its value is told of', () => {
  const rows: readonly (readonly [string, BlockKind | undefined])[] = [
    ...WAITING.map((sample) => [sample, undefined] as const),
    ...WAITING_LIMITS.map((sample) => [sample, 'tolerance'] as const),
  ];

  test.each(rows)('%s', (sample, block) => {
    expect(told(unmark(sample).text, block)).toEqual({ codes: ['value-missing'], marked: sample });
  });
});

test.each(['add ‹+›', 'add R ‹-›', 'zero ‹+›', 'height‹-›', 'test-lens +5.00 read ‹+›'])(
  'a sign without a figure waits for it: %s',
  (sample) => {
    expect(told(unmark(sample).text)).toEqual({ codes: ['value-missing'], marked: sample });
  },
);

// `order` and `reading` alone are told of where the whole block is looked at; `balance L` and `yoked` say all they have to.
test.each(['order', 'reading', 'balance L', 'yoked', 'defaults', 'end'])('nothing is told of %s', (line) => {
  expect(told(line).codes).toEqual([]);
});

describe('a half-typed line keeps what it already says', () => {
  test.each([
    ['R -4.50 -0.75 x', { entries: [{ eye: 'R', power: { sphere: -4.5, cylinder: -0.75 } }] }],
    ['R -4.50 -0.75 x 022 add', { entries: [{ eye: 'R', power: { sphere: -4.5, cylinder: -0.75, axis: 22 } }] }],
    ['R -4.50 L', { entries: [{ eye: 'R', power: { sphere: -4.5 } }, { eye: 'L' }] }],
    ['R -4.50 @ 022 /', { entries: [{ eye: 'R', power: { first: { power: -4.5, meridian: 22 } } }] }],
    ['R lines -4.25 /', { entries: [{ eye: 'R', power: { form: 'lines', thin: -4.25 } }] }],
    ['add R -4.50 ->', { entries: [{ eye: 'R', value: { from: -4.5 } }] }],
    ['add R +2.00 L', { entries: [{ eye: 'R', value: { value: 2 } }] }],
    ['pd 63 near', { distance: { binocular: 63 } }],
    ['prism R 2 BI L', { entries: [{ eye: 'R', value: [{ amount: 2, base: 'in' }] }, { eye: 'L' }] }],
    ['frame A 52 B', { entries: [{ value: [{ key: 'a', figure: 52 }, { key: 'b' }] }] }],
    ['frame 52[]', { entries: [{ value: [{ key: 'a', figure: 52 }] }] }],
    ['test-lens +5.00 read', { nominal: 5 }],
    ['reading 2026-11-24 14:30 by', { date: '2026-11-24', time: '14:30' }],
    ['confirmed axis-short "R -4.50', { code: 'axis-short', quote: 'R -4.50' }],
    ['tolerance house from', { name: 'house' }],
  ])('%s', (line, kept) => {
    expect(said(line)).toMatchObject(kept);
  });
});
