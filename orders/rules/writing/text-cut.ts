import type { Rule } from '../rule';

export const textCut: Rule = {
  code: 'text-cut',
  family: 'writing',
  level: 'warning',
  page: {
    checks: 'A `#` behind free words starts a comment, though it looks like part of the words.',
    why: 'The words behind it are lost: `ref tray #7` keeps “tray” and no 7. Quoted words keep it.',
    example: { wrong: 'ref tray #7', right: 'ref "tray #7"' },
    fix: 'Puts the words in quotes.',
    source: 'common practice, no source',
  },
  message: ({ lost }) => `${typeof lost === 'string' ? `“${lost}”` : 'This'} is a comment here, not part of the words.`,
  fixes: (site) => {
    const line = site.lines[site.finding.line] ?? '';
    const before = /^\s*\S+\s+/.exec(line)?.[0].length ?? 0;
    const words = line.slice(before, site.finding.end);
    if (words.includes('"')) return [];
    return [
      {
        title: `Write "${words}"`,
        safe: false,
        edits: [{ line: site.finding.line, start: before, end: site.finding.end, text: `"${words}"` }],
      },
    ];
  },
};
