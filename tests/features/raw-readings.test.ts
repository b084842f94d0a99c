/** Raw readings beside what becomes of them: in the hint at the end of the line, and step by step under the pointer. */
import { describe, expect, test } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver';
import { hover } from '../../server/features/hover';
import { inlayHints } from '../../server/features/inlay-hints';
import { options, sample, WHOLE } from './support/sample';

/** An order without a tolerance set, so that nothing but the reduction shows. */
const text = (line: string, ...before: readonly string[]): string =>
  [
    'instrument FOC-A',
    '  reads-to 0.125',
    'order A',
    '  R +2.00 -1.00 x 090',
    '  L +1.00',
    '  add +2.00',
    '  pd R 31 L 32',
    '  lens resin-1.60',
    '  design bifocal round 24',
    '  reading 2026-11-24 with FOC-A',
    ...before.map((one) => `    ${one}`),
    `    ${line}`,
  ].join('\n');

/** What stands behind the last line. */
function hintOf(line: string, ...before: readonly string[]): string {
  const whole = text(line, ...before);
  const hints = inlayHints(sample(whole).snapshot, { textDocument: { uri: '' }, range: WHOLE }, options());
  const last = whole.split('\n').length - 1;
  return hints.flatMap(({ position, label }) => (position.line === last ? [String(label)] : [])).join(' ');
}

/** What is shown at the mark in the last line. */
function shownAt(line: string, ...before: readonly string[]): string {
  const { snapshot, position } = sample(text(line, ...before));
  const answer = hover(snapshot, { textDocument: { uri: '' }, position }, options());
  return answer ? (answer.contents as MarkupContent).value : '';
}

describe('the reduced value stands beside the typed one', () => {
  test.each([
    ['R lines +2.00 / +1.00 x 090', [], '= +2.00 -1.00 x 090'],
    ['R lines wide +1.00 thin +2.00 x 090', [], '= +2.00 -1.00 x 090'],
    // Plus first, and the wheel with it: the same lens.
    ['R lines +1.00 / +2.00 x 180', [], '= +2.00 -1.00 x 090'],
    ['R +2.00 -1.00 x 090', ['zero +0.06'], '= +1.94 -1.00 x 090'],
    ['R +2.00 -1.00 x 090 corrected', ['zero +0.06'], ''],
    ['add R +2.00 -> +4.00 front-vertex', ['zero +0.06'], '= +2.00'],
    // (1.592 - 1) / 0.530 x 2.00 = 2.234.
    ['clock R +6.25 -> +8.25', [], '= +2.234 (+2.00 on the dial)'],
    ['optical-centres R 31 L 32.5', [], '= 63.5 mm'],
    ['pd R 31 L 32', [], '= 63 mm'],
    ['pd 63', [], ''],
    // 0 degrees lie towards the nose of the right eye, as one looks at the spectacles from the front.
    ['prism R 2.00 base 180', [], '= R 2.00 base out'],
    ['prism R 1.00 base 090 L 1.00 base 270', [], '= R 1.00 base up = L 1.00 base down'],
    ['R +2.00', [], ''],
  ])('%s', (line, before, expected) => {
    expect(hintOf(line, ...before).replace(/ +/g, ' ')).toBe(expected);
  });
});

describe('and every step under the pointer', () => {
  test.each([
    [
      'R lines +2.0|0 / +0.87 x 090',
      ['zero +0.06'],
      [
        'thin lines +2.00, wide lines +0.87: cylinder +0.87 - (+2.00) = -1.13',
        '-1.13 stands for the eighth -1.125',
        'zero +0.06 taken off +2.00 = +1.94',
      ],
    ],
    ['add R +2.0|0 -> +4.00 front-vertex', [], ['segment +4.00 less distance +2.00 = +2.00']],
    [
      'clock R +6.2|5 -> +8.25',
      [],
      ['segment +8.25 less front +6.25 = +2.00 on the dial; times (1.592 - 1) / 0.530 = +2.234'],
    ],
    ['prism R 2.0|0 base 030', [], ['target on ring 2.00 towards 030°: 1.732 base in, 1.00 base up']],
    ['again optical-centres 6|4', ['optical-centres 63'], []],
  ])('%s', (line, before, expected) => {
    const shown = shownAt(line, ...before);
    for (const part of expected) expect(shown).toContain(part);
  });

  test('of a pair both lenses are shown', () => {
    const judged = (line: string, ...before: readonly string[]): string => {
      const { snapshot, position } = sample(
        `standard z80.1-2015\n${text(line, ...before)}`.replace('  design', '  supply glazed\n  design'),
      );
      const answer = hover(snapshot, { textDocument: { uri: '' }, position }, options());
      return answer ? (answer.contents as MarkupContent).value : '';
    };
    expect(judged('prism R 0.2|5 BI  L 0.50 BO')).toContain('base in beyond the order: R +0.25 + L (-0.50) = -0.25 Δ');
  });
});
