/**
 * Progressives worked out by hand: prism at the mark of a lens is one thing, and the place of that mark before the eye is
 * another. PD 31 before each eye and heights of 18 are ordered, and no thinning.
 */
import { describe, expect, test } from 'vitest';
import { judged, pair } from '../../support/judged';

const ORDER = ['add +2.00', 'pd R 31 L 31', 'height 18', 'design progressive', 'thinning none', 'supply glazed'];
const READ = ['add +2.00 engraved', 'height R 18 L 18'];

const verdictOf = (lenses: readonly string[], read: readonly string[], set = 'z80.1-2015'): string =>
  judged(pair([...lenses, ...ORDER], [...lenses, ...READ, ...read], [`standard ${set}`])).verdict;

describe('prism at the marks of progressives is no place', () => {
  // Above 3.375 D as much as 1 mm makes in the stronger lens.
  test.each([
    // 0.45 down and 0.45 up part the eyes by 0.90 of 0.50, though each is what its lens makes 0.9 mm higher.
    ['-5.00', '+5.00', 'R 0.45 BD L 0.45 BU', 'reject'],
    // 0.10 is nothing, though a lens of +0.50 would have to stand 2 mm higher for it.
    ['+6.00', '+0.50', 'R 0 L 0.10 BU', 'accept'],
    ['+6.00', '+0.50', 'R 0.60 BU L 0', 'accept'],
    ['+6.00', '+0.50', 'R 0.61 BU L 0', 'reject'],
  ] as const)('%s and %s, prism %s: %s', (R, L, prism, verdict) => {
    const read = ['pd R 31 L 31', `prism ${prism} at prism-point`];
    expect(verdictOf([`R ${R}`, `L ${L}`], read)).toBe(verdict);
  });
});

describe('a mark may stand 1 mm from its place, whatever prism is made there', () => {
  // Both 1 mm out on -3.75 would part the eyes by 0.75 of 0.67, if it were the marks that are looked at.
  test.each([
    ['pd R 32 L 32', 'accept'],
    ['pd R 32.1 L 31', 'reject'],
  ] as const)('-3.75 and -3.75, %s: %s', (distance, verdict) => {
    expect(verdictOf(['R -3.75', 'L -3.75'], [distance, 'prism R 0 L 0 at prism-point'])).toBe(verdict);
  });

  // What is ground in at the mark stays where the lens is moved: 3 mm of -2.00 make 0.60, and that contradicts nothing.
  test('the account of 1999 holds the place of weak ones to the prism made there', () => {
    const at = (distance: string): string =>
      verdictOf(['R -2.00', 'L -2.00'], [distance, 'prism R 0 L 0 at prism-point'], 'z80.1-1999');
    expect(at('pd R 34 L 31')).toBe('accept');
    expect(at('pd R 34.4 L 31')).toBe('reject');
  });
});

describe.each(['z80.1-2015', 'z80.1-2010', 'z80.1-1999', 'iso-21987-2017'])(
  '%s calls for the halves of the PD',
  (set) => {
    test.each([
      ['PD R 31 L 31', ['pd R 31 L 31'], 'accept'],
      ['the whole of it', ['pd 62'], 'incomplete'],
      ['nothing', [], 'incomplete'],
    ] as const)('read: %s', (_, distance, verdict) => {
      const lenses = ['R -2.00', 'L -2.00'];
      expect(verdictOf(lenses, [...distance, 'prism R 0 L 0 at prism-point'], set)).toBe(verdict);
    });
  },
);
