import { type Rule, replace } from '../rule';

export const measuredWord: Rule = {
  code: 'measured-word',
  family: 'bench',
  level: 'error',
  page: {
    checks:
      'A measured quantity is answered by a word or a tick instead of a figure, or a test by a word that is neither passed nor failed.',
    why: 'A figure can be held against a limit, and looked at again when the wearer comes back; “ok” cannot. It is understood, and it does not count as read.',
    example: { wrong: 'pd ok', right: 'pd 63.5' },
    fix: 'For a test: writes passed or failed. A figure has to be read.',
    source: 'Common practice, no source.',
  },
  message: ({ word, wanted }) =>
    wanted === 'result'
      ? `“${word}” is no result. Did it pass or fail?`
      : `“${word}” is no figure. This does not count as read.`,
  fixes: (site) =>
    site.finding.data.wanted === 'result'
      ? ['passed', 'failed'].map((word) => replace(site, `Write ${word}`, word, false))
      : [],
};
