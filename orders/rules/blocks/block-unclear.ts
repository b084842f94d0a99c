import { indentOf } from '../../../grammar';
import type { FixSite, Rule } from '../rule';

export const blockUnclear: Rule = {
  code: 'block-unclear',
  family: 'writing',
  level: 'warning',
  bars: true,
  page: {
    checks:
      'A word that an order and a reading can both have stands below a reading, but is indented like the lines of the order. It is taken as measured.',
    why: 'An ordered height taken for a measured one makes any lens pass. Which of the two was meant is for the writer to say.',
    example: {
      wrong: 'reading 2026-11-24\n  R -4.50 -0.75 x 022\nheight 17',
      right: 'reading 2026-11-24\n  R -4.50 -0.75 x 022\n  height 17',
    },
    fix: 'Indents the line like the others of the reading, or closes the reading above it with `end`.',
    source: 'Common practice, no source.',
  },
  message: ({ word }) => `Was “${word}” ordered or measured? It stands below a reading and is taken as measured.`,
  fixes: (site) => [
    {
      title: 'It was measured: indent it like the reading',
      safe: false,
      edits: [{ line: site.finding.line, start: 0, end: site.finding.start, text: insideReading(site) }],
    },
    {
      title: 'It was ordered: close the reading above it',
      safe: false,
      edits: [{ line: site.finding.line, start: 0, end: 0, text: `${indentOfLine(site, site.finding.line)}end\n` }],
    },
  ],
};

const indentOfLine = ({ lines }: FixSite, number: number): string => {
  const line = lines[number] ?? '';
  return line.slice(0, indentOf(line));
};

/** The indentation of the nearest line above that stands deeper than this one. */
function insideReading(site: FixSite): string {
  const own = indentOfLine(site, site.finding.line);
  for (let above = site.finding.line - 1; above > 0; above--) {
    const indent = indentOfLine(site, above);
    if (indent.length > own.length && site.lines[above]?.trim()) return indent;
  }
  return `${own}  `;
}
