import type { Rule } from '../rule';

export const orderTwice: Rule = {
  code: 'order-twice',
  family: 'writing',
  level: 'warning',
  page: {
    checks: 'Several orders of one file have the same name. All of them are judged, each by itself.',
    why: 'The tray, the slip and every report speak of a job by its name. With two of them a verdict lands on the wrong lenses, and a remake cannot say which order it is of.',
    example: { wrong: 'order QL-1042', right: 'order QL-1043' },
    source: 'Common practice, no source.',
  },
  message: ({ name, count }) =>
    `${count === 2 ? 'Two' : count} orders of this file are called “${name}”. Which one is meant by that name?`,
  check: ({ order, context }, report) => {
    const count = order.name === null ? undefined : context.sharedNames.get(order.name);
    if (count !== undefined) report(order.place, { name: order.name, count });
  },
};
