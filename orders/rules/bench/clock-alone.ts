import { sectionsOf } from '../../../grammar';
import type { Rule } from '../rule';

export const clockAlone: Rule = {
  code: 'clock-alone',
  family: 'bench',
  level: 'error',
  page: {
    checks: 'A `clock` line gives one figure of a surface and nothing beside it: no segment and no second meridian.',
    why: 'One figure of a lens measure is neither an add nor warp: an add is the way from the front to the segment, warp the difference of two meridians. Nothing was judged by it, whoever wrote it down meant something. The curve itself is written as `base-curve`.',
    example: { wrong: 'clock R +6.25', right: 'clock R +6.25 -> +8.25' },
    source: 'Common practice, no source.',
  },
  message: () =>
    'One figure of a lens measure says neither an add nor warp, and does not count. Write the segment (“-> …”), both meridians, or “base-curve”.',
  check: ({ block, order }, report) => {
    if (order.readings.length === 0) return;
    for (const [at, { kind }] of sectionsOf(block).entries()) {
      const line = block.lines[at];
      if (kind !== 'reading' || !line) continue;
      const { node, problems } = line.parsed(block.kind);
      // What could not be read is told by itself.
      if (node.kind !== 'clock' || problems.length > 0) continue;
      for (const { value } of node.entries) {
        const { distance, segment, meridians, start, end } = value;
        if (distance?.value == null || segment || meridians.length > 0) continue;
        report({ line: at, start, end });
      }
    }
  },
};
