import { sectionsOf } from '../../../grammar';
import type { Rule } from '../rule';

export const decentreUnsaid: Rule = {
  code: 'decentre-unsaid',
  family: 'order',
  level: 'error',
  page: {
    checks: 'A decentration is ordered without saying in which direction.',
    why: 'A lens moved 2.5 mm the wrong way is off by 5 mm. Without a direction nothing is taken.',
    example: { wrong: 'decentre R 2.5', right: 'decentre R 2.5 in' },
    fix: 'One fix for each direction; none is applied without being chosen.',
    source: 'Common practice, no source.',
  },
  message: () => 'Decentred in which direction: in, out, up or down?',
  fixes: ({ finding: { line, end } }) =>
    ['in', 'out', 'up', 'down'].map((word) => ({
      title: `Decentred ${word}`,
      safe: false,
      edits: [{ line, start: end, end, text: ` ${word}` }],
    })),
  needs: 'decentre-line',
  check: ({ block }, report) => {
    const sections = sectionsOf(block);
    for (const [line, one] of block.lines.entries()) {
      const { node } = one.parsed(block.kind);
      if (node.kind !== 'decentre' || sections[line]?.kind !== 'body') continue;
      for (const { amount, base } of node.entries.flatMap(({ value }) => value))
        if (amount.value && !base) report({ line, start: amount.start, end: amount.end });
    }
  },
};
