/**
 * Orders and readings that contradict themselves, or that no set judges: none of them is a plain accept. The pairs are
 * invented; each stands beside a like one that contradicts nothing and is accepted without a word.
 */
import { describe, expect, test } from 'vitest';
import { alarms, told } from '../../support/findings';
import { JOB, put, without, written } from '../../support/job';
import { judged, pair } from '../../support/judged';

const FRAME = 'frame A 50 B 36 DBL 18';
const TESTED = ['impact passed', 'cosmetic passed'];
const POWERS = ['R -4.50 -0.75 x 022', 'L -4.25 -1.00 x 168'];
const PLACED = [...POWERS, 'pd 63', 'prism R 0 L 0', ...TESTED];

/** A single-vision pair that is right in everything, with lines of the order and of the reading on top of it. */
const single = (order: readonly string[] = [], reading: readonly string[] = [], standard = 'z80.1-2015'): string =>
  pair(
    order.reduce(
      (lines, line) => [...put(lines, line)],
      [...POWERS, 'pd 63', 'height 18', FRAME, 'design single-vision'],
    ),
    reading.reduce((lines, line) => [...put(lines, line)], [...PLACED]),
    [`standard ${standard}`],
  );

/** The bifocal of an invented bench, with lines written otherwise. */
const bifocal = (order: readonly string[] = [], reading: readonly string[] = []): string =>
  written({
    ...JOB,
    order: order.reduce((lines, line) => put(lines, line), JOB.order),
    reading: reading.reduce((lines, line) => put(lines, line), JOB.reading),
  });

/** The finding keeps the acceptance away. */
function expectBarred(text: string, code: string): void {
  const { verdict, unresolved } = judged(text);
  expect({ verdict, unresolved: unresolved.includes(code) }, text).toEqual({ verdict: 'incomplete', unresolved: true });
}

/** The finding is asked about, and the acceptance is no plain one. */
function expectAsked(text: string, code: string): void {
  const { verdict, reservations } = judged(text);
  expect({ verdict, reserved: reservations.includes(code) }, text).toEqual({ verdict: 'accept', reserved: true });
}

function expectQuiet(text: string): void {
  expect(alarms(text), text).toEqual([]);
  const { verdict, reservations, unresolved } = judged(text);
  expect({ verdict, reservations, unresolved }, text).toEqual({ verdict: 'accept', reservations: [], unresolved: [] });
}

test('the pairs of this page are plain accepts as they stand', () => {
  expectQuiet(single());
  expectQuiet(bifocal());
});

describe('a set for another supply', () => {
  test.each(['iso-8980-2004', 'iso-8980-2017'])('a glazed pair by %s', (set) => {
    expectBarred(single([], ['pd 50', 'prism R 3 BU L 0'], set), 'standard-scope');
    expectBarred(single([], [], set), 'standard-scope');
  });
  test('uncut lenses by a set for uncut ones', () => {
    expect(told(pair([...POWERS, 'supply uncut'], [...POWERS], ['standard iso-8980-2017']), 'standard-scope')).toEqual(
      [],
    );
  });
  test('uncut lenses by a set for glazed pairs', () => {
    expectBarred(
      pair([...POWERS, 'supply uncut'], [...POWERS, 'prism R 0 L 0'], ['standard iso-21987-2017']),
      'standard-scope',
    );
  });
  test('is told at the line of the order that names it, else at the order', () => {
    expect(told(single(['standard iso-8980-2017']), 'standard-scope')).toEqual(['error [iso-8980-2017]']);
    expect(told(single([], [], 'iso-8980-2017'), 'standard-scope')).toEqual(['error [T-1]']);
  });
});

describe('a supply that nobody says', () => {
  const bare = (...order: readonly string[]): string => pair([...POWERS, ...order], [...POWERS, 'prism R 0 L 0']);

  test('two powers and a final reading are no accept', () => {
    expectBarred(bare(), 'supply-unsaid');
    expect(told(bare(), 'supply-unsaid')).toEqual(['error [T-1]']);
  });
  test.each(['supply uncut', 'supply edged'])('%s says it', (line) => {
    expect(told(bare(line), 'supply-unsaid')).toEqual([]);
    expect(judged(bare(line)).verdict).toBe('accept');
  });
  test('a reading at the stage of uncut lenses says it, and so does a frame', () => {
    expect(told(bare().replace('reading 2026-11-24', 'reading 2026-11-24 stage uncut'), 'supply-unsaid')).toEqual([]);
    expect(told(single(), 'supply-unsaid')).toEqual([]);
  });
  test('an order without a reading is not asked', () => {
    expect(told('order T-1\n  R -1.00\n  L -1.00\n', 'supply-unsaid')).toEqual([]);
  });
});

describe('what belongs to another kind of lens', () => {
  test.each(['thinning 1.50 BD', 'slab-off R 3.00', 'reverse-slab L 3.00', 'inset R 2 L 2'])(
    '%s on single vision',
    (line) => {
      expectBarred(single([line]), 'not-for-this-lens');
    },
  );
  test('thinning none contradicts nothing', () => {
    expect(told(single(['thinning none']), 'not-for-this-lens')).toEqual([]);
  });
  test('a slab-off on a bifocal', () => {
    expect(told(bifocal(['slab-off R 3.00']), 'not-for-this-lens')).toEqual([]);
  });
});

describe('what was read and not ordered', () => {
  test.each([
    'add +2.00',
    'add R +2.00 engraved',
    'add R -4.50 -> -2.50 front-vertex',
    'clock R +6.25 -> +8.25',
    'segment R 28.0',
    'R -2.50 -0.75 x 022 at near-point',
  ])('%s on single vision', (line) => {
    expectBarred(`${single()}\n    ${line}`, 'read-not-ordered');
  });
  test('an add of nothing says that there is none', () => {
    expectQuiet(`${single()}\n    add R -4.50 -> -4.50 front-vertex`);
  });
  test('an intermediate part in a bifocal', () => {
    expectBarred(bifocal([], ['add +2.00 intermediate +1.00']), 'read-not-ordered');
  });
});

describe('a compensation', () => {
  test.each([
    ['compensation vertex'],
    ['compensation vertex', 'tested vertex 12'],
    ['compensation vertex', 'as-worn vertex 14'],
  ])('%s without both distances', (...lines) => {
    expectBarred(single(lines), 'vertex-unsaid');
  });
  test('with both', () => {
    expect(told(single(['compensation vertex', 'tested vertex 12', 'as-worn vertex 14']), 'vertex-unsaid')).toEqual([]);
  });
});

describe('a verification', () => {
  const verified = (line: string, ...more: readonly string[]): string =>
    single([line, ...more], line.replace('verification ', '').split(/ (?=L )/));

  test.each([
    ['the sign turned', 'verification R +4.50 -0.75 x 022 L +4.25 -1.00 x 168'],
    ['one sign turned', 'verification R -4.50 +0.75 x 022 L -4.25 -1.00 x 168'],
    ['dioptres away', 'verification R -6.50 -0.75 x 022 L -4.25 -1.00 x 168'],
    ['the axis across', 'verification R -4.50 -0.75 x 112 L -4.25 -1.00 x 078'],
  ])('%s', (_, line) => {
    expectBarred(verified(line), 'verification-differs');
    expectBarred(verified(line, 'compensation by-maker', 'as-worn vertex 13 panto 8 wrap 5'), 'verification-differs');
  });
  test('eyes exchanged', () => {
    const line = 'verification R -3.50 -1.00 x 168 L -4.50 -0.75 x 022';
    const text = single(['L -3.50 -1.00 x 168', line], ['R -3.50 -1.00 x 168', 'L -4.50 -0.75 x 022']);
    expectBarred(text, 'verification-differs');
  });
  test('a weak lens of the other sign', () => {
    const text = single(['R -0.12', 'L -0.12', 'verification R +0.12 L +0.12'], ['R +0.12', 'L +0.12']);
    expectBarred(text, 'verification-differs');
  });
  test('what compensation does is quiet', () => {
    const near = 'verification R -4.37 -0.71 x 021 L -4.12 -0.94 x 169';
    expectQuiet(verified(near, 'compensation by-maker', 'as-worn vertex 13 panto 8 wrap 5'));
  });
  test('so is that of a strong wrapped lens, a tenth of its power', () => {
    const line = 'verification R -8.75 -0.50 x 090 L -8.75 -0.50 x 090';
    expect(
      told(single(['R -9.50', 'L -9.50', line, 'compensation by-maker', 'as-worn wrap 15']), 'verification-differs'),
    ).toEqual([]);
  });
  test('a prescription that is another lens is no conversion', () => {
    const rx = 'rx R +4.50 -0.75 x 022 L -4.25 -1.00 x 168';
    expectBarred(single([rx, 'compensation done']), 'rx-differs');
    expect(told(single(['rx R -4.75 -0.75 x 022 L -4.50 -1.00 x 168', 'compensation done']), 'rx-differs')).toEqual([]);
  });
});

describe('balance', () => {
  test('with a power line of its own', () => {
    expectBarred(single(['balance L']), 'balance-with-power');
  });
  test('for both', () => {
    const text = pair(['balance both', 'pd 63', FRAME], [...PLACED]);
    expect(told(text, 'balance-for-both')).toEqual(['error [both]']);
    expect(judged(text).verdict).not.toBe('accept');
  });
  const one = (wish: string, read: string): string =>
    pair(
      ['R -4.50 -0.75 x 022', wish, 'pd 63', 'height 18', FRAME, 'design single-vision'],
      ['R -4.50 -0.75 x 022', read, 'pd 63', 'prism R 0 L 0', ...TESTED],
    );
  test('nine dioptres from its wish', () => {
    expectAsked(one('balance L -4.25', 'L +4.75'), 'balance-far-off');
  });
  test('nine dioptres from its fellow, where no power is wished', () => {
    expectAsked(one('balance L', 'L +4.50'), 'balance-far-off');
  });
  test('near its wish', () => {
    expect(told(one('balance L -4.25', 'L -4.50'), 'balance-far-off')).toEqual([]);
    expect(told(one('balance L', 'L -3.00'), 'balance-far-off')).toEqual([]);
  });
});

describe('distances', () => {
  test('halves that do not add up to the ordered whole', () => {
    expectBarred(single(['pd 63 R 31 L 31']), 'pd-halves-disagree');
    expectBarred(single(['pd 63 R 20 L 20']), 'pd-halves-disagree');
  });
  test('halves that do not add up to the whole as read', () => {
    expectBarred(single([], ['pd 63 R 30.9 L 30.9']), 'read-halves-disagree');
    expect(told(single([], ['pd 63 R 20 L 20']), 'read-halves-disagree')).toEqual(['error [63]']);
    expectQuiet(single([], ['pd 63 R 31.5 L 32']));
  });
  test('halves far apart are asked about', () => {
    expectAsked(single(['pd R 27 L 36'], ['pd R 27 L 36']), 'pd-halves-uneven');
    expectQuiet(single(['pd R 30 L 33'], ['pd R 30 L 33']));
  });
  test('halves exchanged in the reading', () => {
    expect(told(single(['pd R 27 L 36'], ['pd R 36 L 27']), 'halves-exchanged')).toEqual(['error [36]']);
    expect(judged(single(['pd R 27 L 36'], ['pd R 36 L 27'])).verdict).not.toBe('accept');
    expect(told(single(['pd R 31 L 32'], ['pd R 32 L 31']), 'halves-exchanged')).toEqual([]);
  });
  test('near halves of 20 and 40', () => {
    expect(told(bifocal(['pd R 31.5 L 31.5 near R 20 L 40']), 'near-pd-implausible')).toEqual(['warning R [20]']);
    expectAsked(bifocal(['pd 63 near 50'], ['pd 63 near 50']), 'near-pd-implausible');
    expect(told(bifocal(['pd 63 near 58']), 'near-pd-implausible')).toEqual([]);
  });
  test('optical centres against the PD of the same reading', () => {
    expectBarred(`${single()}\n    optical-centres 67`, 'centres-contradict');
    expectBarred(`${single()}\n    optical-centres R 32.7 L 32.7`, 'centres-contradict');
    expectQuiet(`${single()}\n    optical-centres 63.5`);
  });
  test('optical centres of lenses with ordered prism stand elsewhere', () => {
    const text = single(['prism R 2 BI L 2 BI'], ['prism R 2 BI L 2 BI']);
    expect(told(`${text}\n    optical-centres 72`, 'centres-contradict')).toEqual([]);
  });
});

describe('heights', () => {
  test('a segment of 7 in a lens of 36', () => {
    expectAsked(bifocal(['height 7'], ['height 7']), 'height-datum-unclear');
  });
  test('a segment close under the upper rim', () => {
    expectAsked(bifocal(['height 30'], ['height 30']), 'height-implausible');
    expect(told(bifocal(['height 22']), 'height-implausible')).toEqual([]);
  });
  test('an ordered height of single vision that nobody looked at', () => {
    expectAsked(single([], ['prism R 0.25 BO L 0.25 BO']), 'height-not-read');
    expectQuiet(single([], ['prism R 0.25 BO L 0']));
    expectQuiet(single([], ['prism R 0.25 BO L 0.25 BO', 'height 18']));
  });
});

describe('another stage', () => {
  const later = (lines: string, stage: string): string =>
    `${single()}\n  reading 2026-11-25 stage ${stage}\n    ${lines}`;
  test.each(['edged', 'uncut'])('a later reading of the %s lens that is outside', (stage) => {
    expectBarred(later('R -6.00 -0.75 x 022', stage), 'other-stage-outside');
  });
  test('one that is inside says nothing new', () => {
    expect(told(later('R -4.50 -0.75 x 022', 'edged'), 'other-stage-outside')).toEqual([]);
  });
  test('one before the pair was finished is how lenses are made again', () => {
    const text = single().replace(
      '  reading 2026-11-24',
      '  reading 2026-11-22 stage uncut\n    R -6.00 -0.75 x 022\n  reading 2026-11-24',
    );
    expect(told(text, 'other-stage-outside')).toEqual([]);
  });
});

test('a plain pair without base curve and thickness stays quiet', () => {
  expectQuiet(
    written({
      ...JOB,
      order: without(JOB.order, 'base-curve', 'thickness'),
      reading: without(JOB.reading, 'base-curve', 'thickness'),
    }),
  );
});
