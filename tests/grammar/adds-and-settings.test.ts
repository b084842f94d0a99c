import { describe, expect, test } from 'vitest';
import { told } from '../support/lines';
import { checkTold, read } from './support/check-told';

const checkRead = (line: string, found: unknown): void => {
  checkTold(line, []);
  expect(read(line)).toMatchObject(found as object);
};

describe('add', () => {
  test('as ordered, reduced or engraved', () => {
    checkRead('add +2.00', { entries: [{ value: { value: 2 } }] });
    checkRead('add R +2.00 L +2.25', {
      entries: [
        { eye: 'R', value: { value: 2 } },
        { eye: 'L', value: { value: 2.25 } },
      ],
    });
    checkRead('add +2.25 intermediate +1.12', { entries: [{ value: { value: 2.25, intermediate: 1.12 } }] });
    checkRead('add R +2.00 engraved', { entries: [{ eye: 'R', value: { value: 2, engraved: true } }] });
    checkRead('addition both +2.00', { entries: [{ eye: 'both', value: { value: 2 } }] });
  });

  test('as two drum positions, with the surface on the stop', () => {
    const value = { from: -4.5, to: -2.5, surface: 'front-vertex' };
    for (const line of [
      'add R -4.50 -> -2.50 front-vertex',
      'add R-4.50->-2.50 fvp',
      'add R -4.50 --> -2.50 front-vertex',
      'add R -4.50 → -2.50 front-vertex',
      'add R -4.50 => -2.50 front-vertex',
    ])
      checkRead(line, { entries: [{ eye: 'R', value }] });
    expect(read('add R -4.50 -> -2.50')).toEqual({ entries: [{ eye: 'R', value: { from: -4.5, to: -2.5 } }] });
  });

  test('a drum position has a sign', () => {
    checkTold('add R ‹4.50› -> -2.50', ['sign-missing']);
    checkTold('add R -4.50 -> ‹2.50›', ['sign-missing']);
    checkTold('add R 0 -> +2.00', []);
  });

  test('two without an eye are right and left', () => {
    for (const pair of ['+2.00/+2.25', '+2.00 +2.25', '+2.00, +2.25']) {
      checkTold(`add ‹${pair}›`, ['slash-pair']);
      expect(read(`add ${pair}`)).toEqual(read('add R +2.00 L +2.25'));
    }
  });

  test('what is missing or too many', () => {
    checkTold('‹add›', ['value-missing']);
    checkTold('add ‹R› ‹L›', ['value-missing', 'value-missing']);
    checkTold('add R -4.50 ‹->›', ['value-missing']);
    checkTold('add +2.25 ‹intermediate›', ['value-missing']);
    checkTold('add R +2.00 ‹+2.25›', ['unexpected-text']);
    checkTold('add +2.00 intermediate +1.00 intermediate ‹+1.12›', ['unexpected-text']);
  });
});

test('the lens measure, on two parts or along two meridians', () => {
  checkRead('clock R +6.25 -> +8.25', { entries: [{ eye: 'R', value: { distance: 6.25, segment: 8.25 } }] });
  checkRead('clock 6.25', { entries: [{ value: { distance: 6.25 } }] });
  checkRead('clock R +4.37 @ 090 / +4.12 @ 180', {
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
  });
  checkTold('clock ‹R›', ['value-missing']);
  checkTold('clock R +6.25 ‹L›', ['value-missing']);
  checkTold('clock R +6.25 ‹->›', ['value-missing']);
  checkTold('clock R ‹+4.37 @ 090›', ['meridian-missing']);
});

test('the segment', () => {
  checkRead('segment R 28.0 tilt 1 nasal-up', {
    entries: [{ eye: 'R', value: { width: 28, tilt: 1, tiltTowards: 'nasal-up' } }],
  });
  checkRead('seg R 28 L 28.5', {
    entries: [
      { eye: 'R', value: { width: 28 } },
      { eye: 'L', value: { width: 28.5 } },
    ],
  });
  checkRead('segment L tilt 2', { entries: [{ eye: 'L', value: { tilt: 2 } }] });
  checkTold('segment ‹R›', ['value-missing']);
  checkTold('segment R 28 ‹tilt›', ['value-missing']);
  checkTold('segment ‹28 28›', ['slash-pair']);
});

describe('figures under keywords', () => {
  const setting = (key: string, figure: number) => ({ key, figure });

  test('frame', () => {
    const boxing = [setting('a', 52), setting('b', 36), setting('dbl', 18), setting('ed', 55)];
    checkRead('frame A 52 B 36 DBL 18 ED 55', { entries: [{ value: boxing }] });
    checkRead('frame A52 b36, DBL18 ED55', { entries: [{ value: boxing }] });
    for (const box of ['52[]18', '52□18', '52 [] 18'])
      checkRead(`frame ${box} B 36`, { entries: [{ value: [boxing[0], boxing[2], boxing[1]] }] });
    checkTold('frame 52‹-›18', ['other-spelling']);
    expect(read('frame 52-18')).toMatchObject({ entries: [{ value: [boxing[0], boxing[2]] }] });
    for (const pair of ['52 18', '52/18', '52x36']) expect(told(`frame ${pair}`).codes).toContain('unexpected-text');
  });

  test('position of wear and refraction', () => {
    checkRead('as-worn vertex 13 panto 8 wrap 5', {
      entries: [{ value: [setting('vertex', 13), setting('panto', 8), setting('wrap', 5)] }],
    });
    checkRead('worn BVD 13 panto -2', { entries: [{ value: [setting('vertex', 13), setting('panto', -2)] }] });
    checkRead('tested vertex 12', { entries: [{ value: [setting('vertex', 12)] }] });
  });

  test('thickness, with the eye before the keyword or behind it', () => {
    checkRead('thickness centre 2.0 edge 1.5 min 1.8', {
      entries: [{ value: [setting('centre', 2), setting('edge', 1.5), setting('min', 1.8)] }],
    });
    const each = {
      entries: [
        { eye: 'R', value: [setting('centre', 2.1)] },
        { eye: 'L', value: [setting('centre', 2)] },
      ],
    };
    checkRead('thickness R centre 2.1 L CT 2.0', each);
    checkRead('thickness center R 2.1 L 2.0', each);
    checkRead('thickness R 2.1 L 2.0', each);
    checkRead('again thickness R centre 2.1', { again: true, entries: [each.entries[0]] });
  });

  test('what is missing, unknown or said again', () => {
    checkTold('frame A 52 ‹B›', ['value-missing']);
    checkTold('frame ‹A› B 36', ['value-missing']);
    checkTold('frame 52‹[]›', ['value-missing']);
    checkTold('thickness ‹R›', ['value-missing']);
    checkTold('tested ‹12›', ['unexpected-text']);
    checkTold('frame ‹W› 52', ['unknown-choice']);
    checkTold('frame ‹W› A 52', ['unknown-choice']);
    checkTold('frame A 52 A ‹53›', ['unexpected-text']);
    checkTold('as-worn vertex ‹-13›', ['length-negative']);
  });
});

test('again: the same line once more', () => {
  checkRead('again R -4.50 -0.62 x 022', { again: true, entries: [{ eye: 'R' }] });
  for (const line of [
    'add R +2.00',
    'pd 63',
    'near-pd 60',
    'prism R 0 L 0',
    'height R 17',
    'optical-centres 66',
    'clock R +6.25',
    'segment R 28',
  ])
    checkRead(`again ${line}`, { again: true });
  checkTold('‹again›', ['value-missing']);
  checkTold('again ‹foo 3›', ['unexpected-text']);
  checkTold('again ‹zero +0.03›', ['unexpected-text']);
  checkTold('again ‹again R -4.50›', ['unexpected-text']);
});

test('where, with what, and whether the zero is already off', () => {
  checkRead('R -4.50 -0.62 x 024 with FOC-B corrected', { qualifiers: { with: 'FOC-B', corrected: true } });
  checkRead('height R 17 L 17 at fitting-cross', { qualifiers: { at: 'fitting-cross' } });
  for (const place of ['distance-point', 'prism-point', 'near-point', 'fitting-cross', 'top'])
    checkRead(`prism R 0 at ${place}`, { qualifiers: { at: place } });
  checkTold('prism R 0 ‹at›', ['value-missing']);
  checkTold('prism R 0 ‹with›', ['value-missing']);
  checkTold('prism R 0 at ‹somewhere›', ['unknown-choice']);
  checkTold('prism R 0 at top at ‹prism-point›', ['unexpected-text']);
});

test('what an instrument says of itself', () => {
  checkRead('zero +0.03', { which: 'zero', figure: 0.03 });
  checkRead('reads-to 0.125', { which: 'reads-to', figure: 0.125 });
  checkRead('step 0.25', { which: 'reads-to', figure: 0.25 });
  checkRead('uncertainty 0.06', { which: 'uncertainty', figure: 0.06 });
  checkRead('test-lens -10.00 read -9.94', { nominal: -10, read: -9.94 });
  checkTold('‹test-lens› +5.00', ['value-missing']);
  checkTold('test-lens +5.00 ‹read›', ['value-missing']);
  checkTold('test-lens ‹5.00› read +5.06', ['sign-missing']);
});
