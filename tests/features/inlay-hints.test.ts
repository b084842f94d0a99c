import { expect, test } from 'vitest';
import { inlayHints } from '../../server/features/inlay-hints';
import { DEFAULT_SETTINGS, type HintSettings } from '../../server/settings';
import { BIFOCAL, options, sample, WHOLE } from './support/sample';

/** Compares the lines with their hints set in behind the columns they stand at, as `⟨…⟩`. */
function checkHints(text: string, expected: string, range = WHOLE, chosen: Partial<HintSettings> = {}): void {
  const lines = text.split('\n');
  const settings = options({ hints: { ...DEFAULT_SETTINGS.hints, ...chosen } });
  const hints = inlayHints(sample(text).snapshot, { textDocument: { uri: '' }, range }, settings);
  for (const { position, label } of [...hints].reverse()) {
    const line = lines[position.line] ?? '';
    lines[position.line] = `${line.slice(0, position.character)}⟨${label}⟩${line.slice(position.character)}`;
  }
  const shown = lines.filter((line) => line.includes('⟨')).map((line) => line.trim().replace(/ +/g, ' '));
  expect(shown).toEqual(
    expected
      .trim()
      .split('\n')
      .map((line) => line.trim()),
  );
}

test('a finished bifocal pair shows its forms, its near power, each deviation and the verdict', () => {
  // Forms and sums by hand; limits from the Quick Reference Guide to ANSI Z80.1-2015 (tests/tables/z80.1.test.ts).
  // The prism limit is that of a shift of 1 mm: the stronger lens has 4.25 + 1.00 x cos²(12°) = 5.21 D upright.
  checkHints(
    BIFOCAL,
    `
    order QL-1042⟨accept, near the limit; z80.1-2015, simple acceptance⟩
    R -4.50 -0.75 x 022⟨= -5.25 +0.75 x 112 near -2.50 -0.75 x 022⟩
    L -4.25 -1.00 x 168⟨= -5.25 +1.00 x 078 near -2.25 -1.00 x 168⟩
    R -4.50 -0.62 x 024⟨= -4.53 -0.625 x 024 cylinder +0.125 D, limit 0.13 D; power +0.095 D, limit 0.13 D; axis 2°, limit 5°⟩
    L lines -4.25 / -5.25 x 168⟨= -4.28 -1.00 x 168 power -0.03 D, limit 0.13 D; cylinder 0.00 D, limit 0.13 D; axis 0°, limit 3°⟩
    add R -4.50 -> -2.50 front-vertex⟨= +2.00 0.00 D, limit 0.12 D⟩
    add L +2.00⟨0.00 D, limit 0.12 D⟩
    pd 63.5 near 60⟨PD +0.5 mm, limit 2.5 mm; near PD 0 mm, limit 2.5 mm⟩
    prism R 0 L 0⟨0.00 Δ, limit 0.521 Δ⟩
    height R 17 L 16.5⟨L height -0.5 mm, limit 1 mm; difference of the heights +0.5 mm, limit 1 mm; R height 0 mm, limit 1 mm⟩
    base-curve R 4.12 L 4.00⟨R base curve +0.12 D, limit 0.75 D; L base curve 0.00 D, limit 0.75 D⟩`,
  );
});

test('only the asked lines are answered', () => {
  checkHints(BIFOCAL, 'L -4.25 -1.00 x 168⟨= -5.25 +1.00 x 078 near -2.25 -1.00 x 168⟩', {
    start: { line: 7, character: 0 },
    end: { line: 7, character: 4 },
  });
});

test('a plus cylinder is shown in minus form, a cross in minus form, a sphere in none', () => {
  checkHints(
    'order A\n  R -5.25 +0.75 x 112\n  L -4.50 @ 022 / -5.25 @ 112\norder B\n  both -2.00',
    `order A⟨unread⟩
     R -5.25 +0.75 x 112⟨= -4.50 -0.75 x 022⟩
     L -4.50 @ 022 / -5.25 @ 112⟨= -4.50 -0.75 x 022⟩
     order B⟨unread⟩`,
  );
});

test('with two eyes on a line each hint stands behind its power', () => {
  checkHints(
    'order A\n  R -4.50 -0.75 x 022  L -1.00 DS  add +2.00  # by phone',
    `order A⟨unread⟩
     R -4.50 -0.75 x 022⟨= -5.25 +0.75 x 112 near -2.50 -0.75 x 022⟩ L -1.00 DS⟨near +1.00 DS⟩ add +2.00 # by phone`,
  );
});

test('a hint stands before the comment, and a comment of its own has none', () => {
  checkHints('# order of today\norder A  # urgent\n  # R -1.00', 'order A⟨unread⟩ # urgent');
});

test('single vision for near or an intermediate distance shows the power to be made', () => {
  checkHints(
    'order A\n  R -1.00 -0.50 x 090\n  L +0.25\n  add +2.00\n  design single-vision near',
    `order A⟨unread⟩
     R -1.00 -0.50 x 090⟨= -1.50 +0.50 x 180 make +1.00 -0.50 x 090⟩
     L +0.25⟨make +2.25 DS⟩`,
  );
  checkHints(
    'order A\n  R +1.00\n  L +1.00\n  add +2.00\n  design single-vision intermediate +1.25',
    'order A⟨unread⟩\nR +1.00⟨make +2.25 DS⟩\nL +1.00⟨make +2.25 DS⟩',
  );
});

const SINGLE = `standard z80.1-2015
order A
  R -1.00
  L -1.00
  design single-vision
  pd 64
  lens resin-1.60
  reading 2026-11-24
    R `;

test('a reading outside its limit rejects the order by name', () => {
  checkHints(
    `${SINGLE}-1.25\n    L -1.00\n    pd 64\n    prism R 0 L 0`,
    `order A⟨reject: R power; z80.1-2015, simple acceptance⟩
     R -1.25⟨power -0.25 D, limit 0.13 D; cylinder 0.00 D, limit 0.13 D⟩
     L -1.00⟨power 0.00 D, limit 0.13 D; cylinder 0.00 D, limit 0.13 D⟩
     pd 64⟨0.00 Δ, limit 0.67 Δ⟩
     prism R 0 L 0⟨0.00 Δ, limit 0.33 Δ⟩`,
  );
});

test('what was not read is named, and without a standard that is said', () => {
  checkHints(
    `${SINGLE}-1.00`,
    'order A⟨incomplete: L power, L cylinder and 2 more not read; z80.1-2015, simple acceptance⟩\nR -1.00⟨power 0.00 D, limit 0.13 D; cylinder 0.00 D, limit 0.13 D⟩',
  );
  checkHints(`${SINGLE}-1.00`.replace(/^standard.*/, ''), 'order A⟨incomplete: no standard named⟩');
});

test('an add by lens measure is converted, also where nothing is judged', () => {
  // (1.60 - 1) / 0.530 = 1.132 times the 2.00 dioptres on the dial: the index of the material against that of the tool.
  checkHints(
    'order A\n  R -1.00 add +2.25\n  design bifocal round 22\n  lens resin index 1.60\n  reading 2026-11-24\n    clock R +4.00 -> +6.00',
    `order A⟨incomplete: no standard named⟩
     R -1.00 add +2.25⟨near +1.25 DS⟩
     clock R +4.00 -> +6.00⟨= +2.264 (+2.00 on the dial)⟩`,
  );
});

test('a value that a later reading replaced is still shown, as such', () => {
  checkHints(
    `${SINGLE}-1.25\n    L -1.00\n    pd 64\n    prism R 0 L 0\n  reading 2026-11-25\n    R -1.00\n    L -1.00`,
    `order A⟨accept, rework unsaid; z80.1-2015, simple acceptance⟩
     R -1.25⟨replaced since: power -0.25 D, limit 0.13 D; cylinder 0.00 D, limit 0.13 D⟩
     L -1.00⟨replaced since: power 0.00 D, limit 0.13 D; cylinder 0.00 D, limit 0.13 D⟩
     pd 64⟨0.00 Δ, limit 0.67 Δ⟩
     prism R 0 L 0⟨0.00 Δ, limit 0.33 Δ⟩
     R -1.00⟨power 0.00 D, limit 0.13 D; cylinder 0.00 D, limit 0.13 D⟩
     L -1.00⟨power 0.00 D, limit 0.13 D; cylinder 0.00 D, limit 0.13 D⟩`,
  );
});

const DRUM = `instrument FOC-A
  reads-to 0.125
order A
  R -4.50 -0.75 x 022
  L -5.25 +0.75 x 112
  add +2.00
  reading 2026-11-24 with FOC-A
    R lines -4.50 / -5.12 x 024
`;

/** What is shown of one order under some settings, which stand for its three kinds of hints. */
test.each([
  [
    { cylinder: 'minus' },
    ['near -2.50 -0.75 x 022', '= -4.50 -0.75 x 022 near -2.50 -0.75 x 022', '= -4.50 -0.625 x 024'],
  ],
  [
    { cylinder: 'plus' },
    ['= -5.25 +0.75 x 112 near -3.25 +0.75 x 112', 'near -3.25 +0.75 x 112', '= -5.125 +0.625 x 114'],
  ],
  [
    { decimals: 3 },
    [
      '= -5.250 +0.750 x 112 near -2.500 -0.750 x 022',
      '= -4.500 -0.750 x 022 near -3.250 +0.750 x 112',
      '= -4.500 -0.625 x 024',
    ],
  ],
  [
    { decimals: 2 },
    ['= -5.25 +0.75 x 112 near -2.50 -0.75 x 022', '= -4.50 -0.75 x 022 near -3.25 +0.75 x 112', '= -4.50 -0.63 x 024'],
  ],
] as const)('powers are shown as the user wants them: %j', (chosen, [right, left, read]) => {
  checkHints(
    DRUM,
    `order A⟨incomplete: no standard named⟩
     R -4.50 -0.75 x 022⟨${right}⟩
     L -5.25 +0.75 x 112⟨${left}⟩
     R lines -4.50 / -5.12 x 024⟨${read}⟩`,
    WHOLE,
    chosen,
  );
});

test('only the kinds of hints that are wanted are shown', () => {
  checkHints(DRUM, 'order A⟨incomplete: no standard named⟩', WHOLE, { show: new Set(['verdict']) });
  checkHints(DRUM, 'R lines -4.50 / -5.12 x 024⟨= -4.50 -0.625 x 024⟩', WHOLE, { show: new Set(['read']) });
});

test('what an order takes from the defaults stands at its name, and what it says itself does not', () => {
  const defaults = 'defaults\n  lens        resin-1.50  # house stock\n  supply      uncut\n';
  checkHints(
    `${defaults}order A\n  lens polycarbonate\norder B\n  supply glazed\norder C\n  lens R resin-1.60\n`,
    `order A⟨unread⟩⟨supply uncut from defaults⟩
     order B⟨unread⟩⟨lens resin-1.50 from defaults⟩
     order C⟨unread⟩⟨lens resin-1.50, supply uncut from defaults⟩`,
  );
});

test('pointed at, a hint says how it comes about', () => {
  const hints = inlayHints(sample(BIFOCAL).snapshot, { textDocument: { uri: '' }, range: WHOLE }, options());
  const said = (label: RegExp): unknown => hints.find((hint) => label.test(hint.label as string))?.tooltip;
  expect(said(/^accept/)).toBe(
    'accept, near the limit; z80.1-2015, simple acceptance\n\nBy z80.1-2015. 16 inside · most of its limit used: R cylinder, 96 %',
  );
  expect(said(/^= \+2\.00 /)).toMatch(/^R add: ordered \+2\.00; segment -2\.50 less distance -4\.50 = \+2\.00; read/);
  // A long one is shown whole as well, since editors cut it off.
  expect(said(/^= -4\.53/)).toMatch(/^= -4\.53 -0\.625 x 024 {2}cylinder .*\n\nR cylinder: ordered/);
});
