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

/** The text shown at the marked place. */
function textAt(marked: string): string {
  const { snapshot, position } = sample(marked);
  const answer = hover(snapshot, { textDocument: { uri: '' }, position }, options());
  if (!answer) throw new Error('there is no answer');
  return (answer.contents as MarkupContent).value;
}

/** The sample with a mark in front of a text that stands in it once. */
function markedAt(text: string): string {
  expect(BIFOCAL.split(text)).toHaveLength(2);
  return BIFOCAL.replace(text, `|${text}`);
}

test('an ordered power tells its forms, its near power and what the drum is to show, each with its formula and inputs', () => {
  const value = checkHover(
    markedAt('-4.50 -0.75 x 022'),
    '-4.50 -0.75 x 022',
    '**R lens**',
    'forms `minus form -4.50 -0.75 x 022, plus form -5.25 +0.75 x 112`: sphere + cylinder; sign of the cylinder changed; axis ± 90; power -4.50 -0.75 x 022',
    'meridians `-4.50 along 022, -5.25 along 112`: ',
    'spherical equivalent `-4.875`: sphere + cylinder / 2; ',
    'near `-2.50 -0.75 x 022`: power + add; power -4.50 -0.75 x 022, add +2.00',
    'to be made `-4.50 -0.75 x 022`: as ordered',
    'drum `thin lines -4.50, wide lines -5.25, wheel 022`: back surface on the stop',
  );
  expect(value).not.toContain('decentration');
  expect(value).not.toContain('L lens');
});

test('the other lens of a two-eye line is left to its own place', () => {
  const value = checkHover('order A\n  R -1.00  L -2.|00\n', '-2.00', '**L lens**', '`in every meridian -2.00 DS`');
  expect(value).not.toContain('R lens');
});

test('a figure of the frame tells the layout, once where both lenses share it', () => {
  // Decentration (52 + 18) / 2 - 63 / 2 = 3.5; drop 36 / 2 - 17 = 1; blank 55 + 2 x 3.5 = 62.
  const value = checkHover(
    markedAt('52  B 36'),
    'frame       A 52  B 36  DBL 18  ED 55',
    '**R and L lens**',
    'decentration `3.5 mm in`: (A + DBL − PD) / 2; A 52 mm, DBL 18 mm, PD 63 mm',
    'smallest blank `62 mm, with margin 64 mm`: ED + 2 × decentration',
    'segment top `1 mm below the middle`: B / 2 − height; B 36 mm, height 17 mm',
  );
  expect(value.match(/decentration `/g)).toHaveLength(1);
  checkHover(
    'order A\n  R -1.00\n  L -1.00\n  pd R |31 L 33\n  frame 52[]18\n',
    'pd R 31 L 33',
    'decentration `4 mm in`: (A + DBL) / 2 − PD R; A 52 mm, DBL 18 mm, PD R 31 mm',
    'decentration `2 mm in`: (A + DBL) / 2 − PD L; A 52 mm, DBL 18 mm, PD L 33 mm',
  );
});

test.each([
  // Inset (63 - 60) / 2 = 1.5, and (52 + 18 - 60) / 2 = 5 from the boxed centre.
  ['63 near 60\n  height', ['segment `1.5 mm in`: (PD − near PD) / 2', 'segment from the boxed centre `5 mm in`']],
  ['17\n', ['segment top `1 mm below the middle`', 'vertical imbalance at the reading level']],
  [
    'bifocal flat-top 28',
    [
      'image jump `1.00 Δ base down`: add × centre of the segment below its top / 10, base towards that centre; add +2.00, segment width 28 mm, centre of the segment 5 mm (assumed); assumed: ',
      'drum for the add `distance: thin lines ',
      'target at the reading point of the segment',
      'working distance of the add `500 mm`: 1000 / add',
    ],
  ],
  ['+2.00\n  pd', ['near `-2.50 -0.75 x 022`', 'near `-2.25 -1.00 x 168`']],
  ['4.00\n  frame', ['thickness `centre 2 mm, edge from ', 'weight `', 'nominal base curve `']],
  ['resin-1.50', ['reflectance of each surface `3.97 %`', 'index 1.498 (table of materials)']],
])('a line of the order tells the figures that belong to it: %j', (text, expected) => {
  const value = textAt(markedAt(text));
  for (const part of expected) expect(value).toContain(part);
});

test('each figure stands on one line of its own', () => {
  const lines = textAt(markedAt('28\n  lens'))
    .split('\n')
    .filter((line) => line.startsWith('- '));
  expect(lines.length).toBeGreaterThan(10);
  for (const line of lines) expect(line).toMatch(/^- [^`]+ `[^`]+`: .+; /);
});

test.each([
  // Five dioptres make two of prism in 4 mm, and one in 2 mm.
  ['R -5.00\n  L -5.00\n  prism R |2 BI  L 2 BI', 'optical centre for the prism `4 mm out`'],
  ['R -5.00\n  L -5.00\n  decentre |2 in', 'prism at the middle of the uncut lens `1.00 Δ base out`'],
  [
    'R +0.00\n  L -5.00\n  prism R |2 BI',
    '`none: the lens has no power along a meridian to make it with, so it has to be ground`',
  ],
  // Contact Lens Society of America, EyeWitness, Spring 2011, p. 27: +5.32 on the cornea.
  ['R +5.00\n  L +5.00\n  tested vertex 12\n  as-worn vertex |0', 'for the vertex distance of wear `+5.319 DS`'],
  // opticaltraining.com, ABO, page 16: 3 prism dioptres, base up on the least plus lens.
  ['R +1.00\n  L +4.00\n  add +2.00\n  design progressive\n  slab-off R 3|.00', 'R slab-off `3.00 Δ base up`'],
])('so does %j', (marked, expected) => {
  expect(textAt(`order A\n  ${marked}\n`)).toContain(expected);
});

test('the name of an order shows a short overview without the way of each figure', () => {
  const value = checkHover(
    markedAt('QL-1042'),
    'order QL-1042',
    '**R lens**',
    '- to be made `-4.50 -0.75 x 022`\n',
    '- near `-2.50 -0.75 x 022`\n',
    '- smallest blank `62 mm, with margin 64 mm`\n',
    '**pair**',
  );
  expect(value).not.toContain('×');
});

test('a line of the order that stands below a reading has its figures too, a comment none', () => {
  const below = `${BIFOCAL}    frame     A 52  B 36  DBL 18  ED 5|5 # as measured\n`.replace(/ {2}frame {7}A.*\n/, '');
  checkHover(below, 'frame     A 52  B 36  DBL 18  ED 55', 'decentration `3.5 mm in`');
  checkHover(below.replace('|', '').replace('measured', 'meas|ured'), null);
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
  const { abilities, ...rest } = options();
  const answer = hover(
    snapshot,
    { textDocument: { uri: '' }, position },
    { abilities: { ...abilities, markdownHover: false }, ...rest },
  );
  expect(answer?.contents).toMatchObject({ kind: 'plaintext', value: expect.not.stringMatching(/\*\*|`/) });
});

test.each([
  ['standard z80.|1-2015\n', 'z80.1-2015'],
  ['order A\n  standard Z80.1-20|15\n', 'Z80.1-2015'],
  ['tolerance house from z80.1-20|15\n  pd 2.0\n', 'z80.1-2015'],
])('the name of a set tells in short what it allows and how well that is established: %j', (marked, over) => {
  checkHover(
    marked,
    over,
    '**ANSI Z80.1-2015, prescription spectacle lenses** (`z80.1-2015`)',
    '- Power, single vision and segments: 0.00 to 6.50 D ± 0.13 D; above 6.50 D ± 2 % of the meridian\n',
    'seen in an account of it',
    'The bought text of the standard and the local code rule.',
  );
});

test('a set that is not known has no limits to tell', () => {
  expect(checkHover('standard none-s|uch\n', 'none-such', '**standard-unknown**')).not.toContain('limits:');
});
