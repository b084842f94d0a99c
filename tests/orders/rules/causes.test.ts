/** Each cause from both sides, ties, what must stay quiet, and where a cause stands. Common practice, no source, unless said. */
import { describe, expect, test } from 'vitest';
import { ruleOf } from '../../../orders';
import { findingsOf, messages } from '../../support/findings';
import { pair } from '../../support/judged';

const causesOf = (text: string): readonly string[] =>
  findingsOf(text)
    .filter(({ finding }) => ruleOf(finding.code)?.family === 'cause')
    .map(({ finding: { code, eye, level } }) => `${level} ${code}${eye ? ` ${eye}` : ''}`);

interface Row {
  readonly is: string;
  readonly text: string;
  readonly causes: readonly string[];
}

const row = (is: string, text: string, ...causes: readonly string[]): Row => ({ is, text, causes });

const SV = ['design single-vision', 'supply glazed', 'pd 62'];
const STANDS = ['pd 62', 'prism R 0 L 0'];
const sv = (ordered: readonly [string, string], read: readonly [string, string], ...more: readonly string[]): string =>
  pair([`R ${ordered[0]}`, `L ${ordered[1]}`, ...SV, ...more], [`R ${read[0]}`, `L ${read[1]}`, ...STANDS]);

const FLAT_TOP = [
  'R -2.00',
  'L -2.50',
  'add +2.00',
  'design bifocal flat-top 28',
  'supply glazed',
  'frame A 50 B 36 DBL 18',
];
const bifocal = (order: readonly string[], reading: readonly string[]): string =>
  pair([...FLAT_TOP, ...order], ['R -2.00', 'L -2.50', 'add +2.00', 'prism R 0 L 0', ...reading]);

const TURNED_8 = [
  ['-2.00 -1.00 x 020', '-2.00'],
  ['-2.00 -1.00 x 028', '-2.00'],
] as const;
const bifocalTurned = (tilt: string): string =>
  pair(
    ['R -2.00 -1.00 x 020', 'L -2.50', ...FLAT_TOP.slice(2), 'pd 62 near 59', 'height 17'],
    ['R -2.00 -1.00 x 028', 'L -2.50', 'add +2.00', 'prism R 0 L 0', 'pd 62 near 59', 'height 17', tilt],
  );
const progressive = (add: string): string =>
  pair(
    ['R -2.00', 'L -2.50', 'add +2.00', 'pd R 31 L 31', 'height 20', 'design progressive corridor 14'],
    ['R -2.00', 'L -2.50', add, 'pd R 31 L 31', 'height 20', 'prism R 0 L 0 at prism-point'],
  );

const AUTO = ['standard z80.1-2015', 'instrument AUTO-1', '  kind automatic focimeter'];

const ROWS: Readonly<Record<string, readonly Row[]>> = {
  'eyes swapped': [
    row('both fit crosswise', sv(['-2.00', '-3.00'], ['-3.00', '-2.00']), 'info eyes-swapped'),
    row('an equal pair explains nothing', sv(['-2.00', '-2.00'], ['-2.25', '-1.75'])),
    row('nearly alike is no evidence', sv(['-2.00', '-2.25'], ['-2.15', '-2.10'])),
    row('one lens alone is no exchange', sv(['-2.00', '-3.00'], ['-3.00', '-3.00'])),
    row(
      'a mirrored pair may also be turned over',
      sv(['-2.00 -1.00 x 030', '-2.00 -1.00 x 150'], ['-2.00 -1.00 x 150', '-2.00 -1.00 x 030']),
      'info eyes-swapped',
      'info lens-reversed',
    ),
  ],
  axes: [
    row(
      'crossed, read by hand',
      sv(['-2.00 -1.00 x 020', '-2.00'], ['-2.00 -1.00 x 110', '-2.00']),
      'info axis-crossed R',
      'info form-misread R',
    ),
    row(
      'crossed, read by an instrument',
      pair(['R -2.00 -1.00 x 020', 'L -2.00', ...SV], ['R -2.00 -1.00 x 110 with AUTO-1', 'L -2.00', ...STANDS], AUTO),
      'info axis-crossed R',
    ),
    row('mirrored', sv(['-2.00 -1.00 x 020', '-2.00'], ['-2.00 -1.00 x 160', '-2.00']), 'info lens-reversed R'),
    row(
      'at 45 mirrored and crossed are one',
      sv(['-2.00 -1.00 x 045', '-2.00'], ['-2.00 -1.00 x 135', '-2.00']),
      'info axis-crossed R',
      'info form-misread R',
      'info lens-reversed R',
    ),
    row(
      'near 180 a mirror image is a small turn',
      sv(['-2.00 -2.00 x 004', '-2.00'], ['-2.00 -2.00 x 176', '-2.00']),
      'info lens-turned R',
    ),
    row('near 90 as well', sv(['-2.00 -2.00 x 086', '-2.00'], ['-2.00 -2.00 x 094', '-2.00']), 'info lens-turned R'),
    row('a weak cylinder far off is anything', sv(['-2.00 -0.25 x 020', '-2.00'], ['-2.00 -0.25 x 098', '-2.00'])),
    row('a power that is off as well', sv(['-2.00 -1.00 x 020', '-2.00'], ['-2.50 -1.00 x 110', '-2.00'])),
    row(
      'both by the same turn',
      sv(['-2.00 -1.00 x 020', '-2.00 -1.00 x 100'], ['-2.00 -1.00 x 028', '-2.00 -1.00 x 108']),
      'info edged-off-axis',
    ),
    row(
      'both, to opposite sides',
      sv(['-2.00 -1.00 x 020', '-2.00 -1.00 x 100'], ['-2.00 -1.00 x 028', '-2.00 -1.00 x 092']),
    ),
  ],
  // Half of A less B times the sine of the turn: 8 x sin 8 = 1.11 mm is more than a bevel gives, 3 x sin 8 = 0.42 is not.
  'turned in the rim or not': [
    row('a shape nearly round', sv(TURNED_8[0], TURNED_8[1], 'frame A 46 B 40 DBL 18'), 'info lens-turned R'),
    row('a shape much lower than wide', sv(TURNED_8[0], TURNED_8[1], 'frame A 52 B 36 DBL 18'), 'info cut-off-axis R'),
    row('much higher than wide', sv(TURNED_8[0], TURNED_8[1], 'frame A 36 B 52 DBL 18'), 'info cut-off-axis R'),
    row('only A is known', sv(TURNED_8[0], TURNED_8[1], 'frame A 52 DBL 18'), 'info lens-turned R'),
    row(
      'a few degrees of a low shape',
      sv(['-2.00 -2.00 x 020', '-2.00'], ['-2.00 -2.00 x 024', '-2.00'], 'frame A 52 B 36 DBL 18'),
      'info lens-turned R',
    ),
    row(
      'tilted with its segment, in a shape that does not turn',
      bifocalTurned('segment R tilt 8 nasal-up'),
      'info cut-off-axis R',
    ),
    row('level, in the same shape', bifocalTurned('segment R tilt 0 nasal-up'), 'info surfaced-off-axis R'),
  ],
  // An add that the lens says of itself is no matter of reading.
  'marked adds': [
    row('one lens', progressive('add R +2.50 engraved L +2.00 engraved'), 'info other-add-blank R'),
    row('both', progressive('add +2.50 engraved'), 'info other-add-blank'),
    row('as ordered', progressive('add +2.00 engraved')),
    row('measured and wrong is another matter', progressive('add R +2.50 L +2.00')),
  ],
  'signs and forms': [
    row('the whole power', sv(['-2.00 -1.00 x 020', '-2.00'], ['+2.00 +1.00 x 020', '-2.00']), 'info sign-flipped R'),
    row('the sphere', sv(['-2.00 -1.00 x 020', '-2.00'], ['+2.00 -1.00 x 020', '-2.00']), 'info sign-flipped R'),
    row('the cylinder', sv(['-2.00 -1.00 x 020', '-2.00'], ['-2.00 +1.00 x 020', '-2.00']), 'info sign-flipped R'),
    row('both lenses', sv(['-2.00', '-3.00'], ['+2.00', '+3.00']), 'info sign-flipped'),
    row('a weak sphere is an error as well', sv(['-0.12', '-2.00'], ['+0.12', '-2.00'])),
    row(
      'the sphere of the other focus',
      sv(['-2.00 -1.00 x 020', '-2.00'], ['-3.00 -1.00 x 020', '-2.00']),
      'info form-misread R',
    ),
    row('a quarter of cylinder is no evidence', sv(['-2.00 -0.25 x 020', '-2.00'], ['-2.25 -0.25 x 020', '-2.00'])),
    row(
      'two lines exchanged',
      sv(['-2.00 -1.00 x 020', '-2.00'], ['lines -3.00 / -2.00 x 020', '-2.00']),
      'info axis-crossed R',
      'info lines-swapped R',
    ),
  ],
  adds: [
    row(
      'near power written as add',
      bifocal(['pd 62 near 59', 'height 17'], ['pd 62 near 59', 'height 17', 'add R 0.00 L +2.00']),
      'info add-misread R',
    ),
    row(
      'single vision for near ground for distance',
      pair(
        ['R +1.00', 'L +1.50', 'add +2.00', 'design single-vision near', 'supply glazed', 'pd 62 near 59'],
        ['R +1.00', 'L +1.50', 'pd 59', 'prism R 0 L 0'],
      ),
      'info near-for-distance',
    ),
    row(
      'a multifocal read through its segments',
      bifocal(['pd 62 near 59', 'height 17'], ['R 0.00', 'L -0.50', 'pd 62 near 59', 'height 17']).replace(
        '    R -2.00\n    L -2.50\n',
        '',
      ),
      'info near-for-distance',
    ),
  ],
  places: [
    row(
      'distance and near PD',
      bifocal(['pd 64 near 60', 'height 17'], ['pd 60 near 64', 'height 17']),
      'info near-distance-swapped',
    ),
    row('only a near PD that is wrong', bifocal(['pd 64 near 60', 'height 17'], ['pd 64 near 64', 'height 17'])),
    row(
      'both outwards',
      bifocal(['pd R 32 L 32', 'height 17'], ['pd R 35 L 35', 'height 17']),
      'info both-centres-off',
    ),
    row(
      'heights exchanged',
      bifocal(['pd 62 near 59', 'height R 18 L 16'], ['pd 62 near 59', 'height R 16 L 18']),
      'info heights-swapped',
    ),
    row(
      'both too high',
      bifocal(['pd 62 near 59', 'height R 18 L 17'], ['pd 62 near 59', 'height R 20 L 19']),
      'info heights-shifted',
    ),
    row('one too high and one too low', bifocal(['pd 62 near 59', 'height 17'], ['pd 62 near 59', 'height R 19 L 15'])),
    row(
      'another usual segment',
      bifocal(['pd 62 near 59', 'height 17'], ['pd 62 near 59', 'height 17', 'segment R 35.2 L 28.0']),
      'info other-segment R',
    ),
    row(
      'a width that is none',
      bifocal(['pd 62 near 59', 'height 17'], ['pd 62 near 59', 'height 17', 'segment R 31.0 L 28.0']),
    ),
  ],
  'what was ordered': [
    // -12.00 carried from 12 to 14 mm is -12.00 / (1 - 0.002 x 12) = -12.30: EyeWitness, Spring 2011.
    row(
      'the written power of a converted lens',
      sv(['-12.00', '-2.00'], ['-12.00', '-2.00'], 'tested vertex 12', 'as-worn vertex 14', 'compensation vertex'),
      'info compensation-mixed R',
    ),
    row(
      'the converted power of a written one',
      sv(['-15.00', '-2.00'], ['-15.46', '-2.00'], 'tested vertex 12', 'as-worn vertex 14', 'compensation done'),
      'info compensation-mixed R',
    ),
    row(
      'equal thinning',
      pair(
        [...FLAT_TOP, 'pd 62 near 59', 'height 17'],
        ['R -2.00', 'L -2.50', 'pd 62 near 59', 'height 17', 'prism R 1 BD L 1 BD'],
        ['standard nj-13-35-5.2'],
      ),
      'info thinning-as-error',
    ),
    row(
      'one lens thinned alone',
      pair(
        [
          'R -2.00',
          'L -2.50',
          'add +2.00',
          'thinning 1.50 BD',
          'pd R 31 L 31',
          'height 18',
          'design progressive',
          'supply glazed',
        ],
        ['R -2.00', 'L -2.50', 'add +2.00', 'pd R 31 L 31', 'height 18', 'prism R 1.50 BD L 0'],
      ),
      'info thinning-as-error L',
    ),
    row(
      'a curve at another index',
      sv(['-2.00', '-2.00'], ['-2.00', '-2.00'], 'lens index 1.67', 'base-curve 6.00').concat('\n    base-curve 4.75'),
      'info base-curve-index',
    ),
    row(
      'one curve alone is another curve',
      sv(['-2.00', '-2.00'], ['-2.00', '-2.00'], 'lens index 1.67', 'base-curve 6.00').concat(
        '\n    base-curve R 4.75 L 6.00',
      ),
    ),
    row(
      'warped in the rim',
      sv(['-2.00', '-2.00'], ['-2.00', '-2.00']).concat('\n    clock R +4.00 @ 090 / +5.25 @ 180'),
      'info warped-in-mounting R',
    ),
  ],
};

describe.each(Object.entries(ROWS))('%s', (_, rows) => {
  test.each(rows.map((one) => [one.is, one] as const))('%s', (__, { text, causes }) => {
    expect(causesOf(text), text).toEqual(causes);
  });
});

test('a cause stands first at its place, and what it explains hangs under it', () => {
  const told = findingsOf(sv(['-2.00 -1.00 x 010', '-3.50'], ['-3.50', '-2.00 -1.00 x 010']));
  const [first] = told;
  expect(first?.finding).toMatchObject({ code: 'eyes-swapped', level: 'info', eye: null });
  expect(first?.text).toBe('-3.50');
  expect(first?.finding.related).toHaveLength(1);
  expect(first?.finding.related?.[0]?.line).toBe((first?.finding.line ?? 0) + 1);
});

test('the evidence is in the message, and so is what is left over', () => {
  const text = pair(
    ['R -2.00 -0.50 x 090', 'L -3.25 -0.75 x 080', ...SV],
    ['R -3.25 -0.75 x 080', 'L -2.00 -0.50 x 090', 'pd 72', 'prism R 0 L 0'],
  );
  expect(messages(text, 'eyes-swapped')).toEqual([
    'The two lenses look exchanged: R reads -3.25 -0.75 x 080, and -3.25 -0.75 x 080 is ordered for L; L reads -2.00 -0.50 x 090, and -2.00 -0.50 x 090 is ordered for R. In the frame, or only in the rows of the reading. Not explained by it: PD.',
  ]);
});

test('a lens that was replaced, and figures read again, have no cause any more', () => {
  const wrong = sv(['-2.00', '-3.00'], ['-3.00', '-2.00']);
  expect(causesOf(`${wrong}\n  reading 2026-11-25\n    R -2.00\n    L -3.00`)).toEqual([]);
});
