import { expect, test } from 'vitest';
import type { Hover, MarkupContent } from 'vscode-languageserver';
import { hover } from '../../server/features/hover';
import { BIFOCAL, covered, options, sample } from './support/sample';

/** Looks at the marked place; every expected text has to be in the answer, and the range has to cover `over`. */
function checkHover(marked: string, over: string | null, ...expected: readonly string[]): string {
  const { text, snapshot, position } = sample(marked);
  const answer: Hover | null = hover(snapshot, { textDocument: { uri: '' }, position }, options());
  if (over === null) {
    expect(answer).toBeNull();
    return '';
  }
  if (!answer) throw new Error('there is no answer');
  const { value } = answer.contents as MarkupContent;
  for (const part of expected) expect(value).toContain(part);
  expect(answer.range && covered(text, answer.range)).toBe(over);
  return value;
}

/** The sample with a mark in front of a text that stands in it once. */
function markedAt(text: string): string {
  expect(BIFOCAL.split(text)).toHaveLength(2);
  return BIFOCAL.replace(text, `|${text}`);
}

test('an ordered power tells its forms, its near power and its layout, and how each is made', () => {
  // Decentration (52 + 18) / 2 - 63 / 2 = 3.5; drop 36 / 2 - 17 = 1; inset (63 - 60) / 2 = 1.5; blank 55 + 2 x 3.5 = 62.
  checkHover(
    markedAt('-4.50 -0.75 x 022'),
    '-4.50 -0.75 x 022',
    '**R lens**',
    'plus form `-5.25 +0.75 x 112`: sphere -4.50 + (-0.75), sign of the cylinder changed, axis 22 + 90',
    '`-4.50` along 022, `-5.25` along 112',
    'spherical equivalent `-4.875`: -4.50 + (-0.75) / 2',
    'near `-2.50 -0.75 x 022`: sphere -4.50 + 2.00',
    'decentration `3.5 mm in`: (A 52 + DBL 18) / 2 - PD 63 / 2',
    'segment top `1 mm below` the middle: B 36 / 2 - height 17',
    'segment `1.5 mm in`: (PD 63 - near 60) / 2',
    'smallest blank `62 mm`: ED 55 + 2 x 3.5',
  );
});

test('the other lens of a two-eye line is left to its own place', () => {
  const value = checkHover('order A\n  R -1.00  L -2.|00\n', '-2.00', '**L lens**', '`-2.00 DS` in every meridian');
  expect(value).not.toContain('R lens');
});

test('a figure of the frame tells the layout, once where both lenses share it', () => {
  const value = checkHover(markedAt('52  B 36'), 'frame       A 52  B 36  DBL 18  ED 55', '**R and L lens**');
  expect(value.match(/decentration/g)).toHaveLength(1);
  checkHover(
    'order A\n  R -1.00\n  L -1.00\n  pd R |31 L 33\n  frame 52[]18\n',
    'pd R 31 L 33',
    'decentration `4 mm in`: (A 52 + DBL 18) / 2 - 31',
    'decentration `2 mm in`: (A 52 + DBL 18) / 2 - 33',
  );
});

test('a power read tells the arithmetic of each of its measures', () => {
  const value = checkHover(
    markedAt('-4.50 -0.62 x 024'),
    '-4.50 -0.62 x 024',
    '**R power: inside**',
    'zero +0.03 taken off -4.50 = -4.53',
    '-0.62 stands for the eighth -0.625',
    '**R cylinder: inside**',
    'the instrument cannot decide it',
    '**R axis: inside**',
    'deviation 2°',
    'limit 5°',
  );
  expect(value).toContain('**near-the-limit**');
  checkHover(markedAt('-5.25 x 168'), 'lines -4.25 / -5.25 x 168', 'cylinder -5.25 - (-4.25) = -1.00');
});

test('an add by difference is worked out, also where no standard is named', () => {
  checkHover(markedAt('-4.50 -> -2.50'), 'R -4.50 -> -2.50 front-vertex', 'segment -2.50 less distance -4.50 = +2.00');
  checkHover(
    'order A\n  R -1.00 add +2.00\n  design bifocal round 22\n  reading 2026-11-24\n    add R -1.00 -> +|1.12',
    'R -1.00 -> +1.12',
    '**= +2.12**',
  );
});

test('a value outside its limit shows the short page of its rule first', () => {
  const marked = BIFOCAL.replace('-4.50 -0.62 x 024', '-4.50 -0.75 x |034');
  expect(checkHover(marked, '-4.50 -0.75 x 034', '**R axis: outside**', 'deviation 12°')).toMatch(
    /^\*\*axis-outside\*\*: .*\*\*R axis: outside\*\*.*\*\*R power: inside\*\*/s,
  );
});

test.each([
  ['order A\n  fra|me 52[]18\n', 'frame', '**frame**: Boxing dimensions'],
  ['order A\n  |R -1.00\n', 'R', '**R**: Right eye'],
  ['order A\n  OD -1.00 -0.50 |x 090\n', 'x', '**x**: Axis of the cylinder'],
  ['order A\n  design PA|L corridor 14\n', 'PAL', '**progressive**'],
  ['order A\n  reading 2026-11-24\n    cosm|etic passed\n', 'cosmetic', 'Surface quality'],
  ['|order A\n', 'order', '```lentil\norder NAME\n```'],
])('a word of the notation is explained: %j', (marked, over, expected) => {
  checkHover(marked, over, expected);
});

test.each([
  '  |\n',
  '# or|der A\n',
  'instrument or|der\n',
  'order A\n  note "the fra|me is old"\n',
  'order A\n  R -1.00 # fra|me to come\n',
])('nothing is said about %j', (marked) => {
  checkHover(marked, null);
});

test('an editor without Markdown gets plain text', () => {
  const { snapshot, position } = sample('order A\n  fra|me 52[]18\n');
  const { abilities, settings } = options();
  const answer = hover(
    snapshot,
    { textDocument: { uri: '' }, position },
    { abilities: { ...abilities, markdownHover: false }, settings },
  );
  expect(answer?.contents).toMatchObject({ kind: 'plaintext', value: expect.not.stringMatching(/\*\*|`/) });
});
