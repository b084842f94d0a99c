import { describe, expect, test } from 'vitest';
import { hover } from '../../server/features/hover';
import { BIFOCAL, options, sample } from './support/sample';

const said = (marked: string): string => {
  const { snapshot, position } = sample(marked);
  const found = hover(snapshot, { textDocument: { uri: '' }, position }, options());
  return found ? (found.contents as { value: string }).value : '';
};

const PAIR = (name: string, head: string, right: string): string => `standard z80.1-2015
order ${name}
  R -2.00 -0.50 x 090
  L -3.25 -0.75 x 080
  pd 62
  design single-vision
  supply glazed
  ${head} 2026-11-24
    R ${right}
    L -3.25 -0.75 x 080
    pd 62
    prism R 0 L 0`;

describe('what to do next', () => {
  test.each([
    ['at the order’s name', PAIR('T|-1', 'reading', '-2.50 -0.50 x 090')],
    ['at the head of the reading', PAIR('T-1', 'read|ing', '-2.50 -0.50 x 090')],
  ])('%s', (_, marked) => {
    expect(said(marked)).toContain('**What to do next**');
    expect(said(marked)).toContain('- Read the R lens again; if the figures stay, remake it.');
    expect(said(marked)).toContain('the rules of the laboratory come first');
  });

  test('is not said where nothing is refused, nor in the middle of the order', () => {
    expect(said(PAIR('T|-1', 'reading', '-2.00 -0.50 x 090'))).not.toContain('What to do next');
    expect(
      said(PAIR('T-1', 'reading', '-2.50 -0.50 x 090').replace('pd 62\n  design', 'p|d 62\n  design')),
    ).not.toContain('What to do next');
    expect(said(BIFOCAL.replace('order QL', 'order Q|L'))).not.toContain('What to do next');
  });
});
