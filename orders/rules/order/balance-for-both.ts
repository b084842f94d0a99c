import type { Rule } from '../rule';

export const balanceForBoth: Rule = {
  code: 'balance-for-both',
  family: 'order',
  level: 'error',
  page: {
    checks: 'Both lenses of an order are balance lenses.',
    why: 'A balance lens is made to match its fellow before an eye that does not see. With two of them nothing is owed to either eye, and any two lenses pass.',
    example: { wrong: 'balance both', right: 'balance L' },
    source: 'Daily Optician, “balance is good”; Vision Care Products, tech tips, balance lens.',
  },
  message: () => 'Both lenses are balance lenses, so there is nothing to balance. Which eye sees?',
  needs: 'balance',
  check: ({ order: { lenses, place }, block }, report) => {
    if (lenses.R.role !== 'balance' || lenses.L.role !== 'balance') return;
    for (const [line, one] of block.lines.entries()) {
      const { node } = one.parsed(block.kind);
      const eye = node.kind === 'powers' && node.which === 'balance' ? node.entries.at(-1)?.eye : null;
      if (eye) {
        report({ line, start: eye.start, end: eye.end });
        return;
      }
    }
    report(place);
  },
};
