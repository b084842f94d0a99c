import { EYES } from '../../model';
import { isGlass } from '../order/safety-lens';
import type { Rule } from '../rule';

export const impactBatchGlass: Rule = {
  code: 'impact-batch-glass',
  family: 'bench',
  level: 'error',
  page: {
    checks:
      'The impact test of a glass lens is recorded as that of its batch, and the pair is judged by a set of the United States.',
    why: 'A batch of plastic lenses may be tested by sample. A finished glass lens may not: a scratch or an uneven treatment makes one lens weak and its neighbours not, so each is struck by itself. Test these two, and record `impact passed`.',
    example: { wrong: 'impact batch', right: 'impact passed' },
    source: '21 CFR 801.410, as quoted in the FDA guidance of 2010: every finished prescription glass lens is tested.',
  },
  message: () =>
    'Glass is not tested by batch: each finished lens is tested by itself. Test them and record the result.',
  check: ({ order, evaluation, block }, report) => {
    if (!evaluation.set?.jurisdiction.includes('United States')) return;
    if (!EYES.some((eye) => isGlass(order.lenses[eye]))) return;
    const told = new Set<string>();
    for (const { place } of Object.values(evaluation.values.facts.impact ?? {})) {
      const { line, start, end } = place;
      const word = block.lines[line]?.text.slice(start, end).toLowerCase();
      const key = `${line}.${start}`;
      if (word !== 'batch' || told.has(key)) continue;
      told.add(key);
      report(place);
    }
  },
};
