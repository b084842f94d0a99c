import { powersOf } from '../../order-elsewhere';
import type { Rule } from '../rule';

export const orderElsewhere: Rule = {
  code: 'order-elsewhere',
  family: 'writing',
  level: 'warning',
  page: {
    checks:
      'Another file has an order of the same name with other powers. A copy of the same order, in whatever form its powers are written, is none. The command compares the files of one run, the editor those of the workspace.',
    why: 'The tray and the slip bear one number. Of two orders with that number one is out of date or misnumbered, and a pair that fits the one may be handed out for the other.',
    example: { wrong: 'order QL-1042', right: 'order QL-1043' },
    source: 'Common practice, no source.',
  },
  message: ({ name, path, line }) =>
    `Order “${name}” has other powers in ${path}, line ${line}. Check which of the two is the order of this pair.`,
  check: ({ order, context }, report) => {
    if (order.name === null || context.elsewhere.size === 0) return;
    const others = context.elsewhere.get(order.name);
    const own = others && powersOf(order);
    const other = own == null ? undefined : others?.find(({ powers }) => powers !== own);
    if (other) report(order.place, { name: order.name, path: other.path, line: other.line });
  },
};
