import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';

export const meridiansNotSquare: Rule = {
  code: 'meridians-not-square',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'The two principal meridians of a power are not 90 degrees apart.',
    why: 'The principal meridians of a lens stand square to each other. One of the two figures is wrong, and with it the axis.',
    example: { wrong: 'R -4.50 @ 022 / -5.25 @ 100', right: 'R -4.50 @ 022 / -5.25 @ 112' },
    fix: 'Two fixes: the first meridian is right, or the second.',
    source:
      'Transposition as taught by the National Federation of Opticianry Schools: the second meridian lies 90 degrees from the first.',
  },
  message: () => 'The principal meridians must be 90 degrees apart. Which of the two is right?',
  fixes: eitherOne,
};

function eitherOne(site: FixSite): readonly Fix[] {
  const [, first, between, second] = /^(\d{1,3})(\D.*@\s*)(\d{1,3})$/.exec(typed(site)) ?? [];
  if (first === undefined || second === undefined) return [];
  return [
    replace(site, `${first} is right: write ${across(first)} for ${second}`, first + between + across(first), false),
    replace(site, `${second} is right: write ${across(second)} for ${first}`, across(second) + between + second, false),
  ];
}

const across = (meridian: string): string =>
  String(Number(meridian) > 90 ? Number(meridian) - 90 : Number(meridian) + 90).padStart(3, '0');
