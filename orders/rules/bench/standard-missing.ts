import { toleranceSets } from '../../../tables';
import type { Rule } from '../rule';

export const standardMissing: Rule = {
  code: 'standard-missing',
  family: 'bench',
  level: 'info',
  page: {
    checks: 'The order has a reading, and neither the file, the order nor the settings name a tolerance set.',
    why: 'Without a set nothing is judged. Sets differ from country to country and from edition to edition, so none is taken silently.',
    example: { wrong: 'order QL-1042', right: 'standard z80.1-2015' },
    fix: 'Names one of the built-in sets in this order. Which one holds is for the lab to say.',
    source: 'Common practice, no source.',
  },
  message: () => 'Nothing is judged: no standard is named.',
  fixes: ({ finding, lines }) => {
    const supply = String(finding.data.supply);
    const header = /^\s*/.exec(lines[0] ?? '')?.[0] ?? '';
    const end = (lines[0] ?? '').length;
    return toleranceSets
      .filter(({ scope }) => scope.some((one) => one === supply))
      .map(({ id, title }) => ({
        title: `Judge this order by ${title}`,
        safe: false,
        edits: [{ line: 0, start: end, end, text: `\n${header}  standard ${id}` }],
      }));
  },
  check: ({ order, evaluation, context }, report) => {
    if (context.missing.length > 0) return;
    const [first] = order.readings;
    if (first && evaluation.set === null && evaluation.standard === null) report(first.place, { supply: order.supply });
  },
};
