import { type Rule, replace } from '../rule';

export const otherSpelling: Rule = {
  code: 'other-spelling',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'A date stands without its zeros or with other marks, or a frame is written as 52-18.',
    why: 'A date of one form is found by a search, and a dash between two lengths is easily read as a minus.',
    example: { wrong: 'due 2026-1-5', right: 'due 2026-01-05' },
    fix: 'Writes it the usual way.',
    source: 'ISO 8601 for the date; for the frame common practice, no source.',
  },
  message: ({ written }) => `Understood as ${written}.`,
  fixes: (site) => {
    const written = String(site.finding.data.written);
    return [replace(site, `Write ${written}`, written, true)];
  },
};
