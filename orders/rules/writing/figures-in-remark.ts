import { type Rule, replace } from '../rule';

export const figuresInRemark: Rule = {
  code: 'figures-in-remark',
  family: 'writing',
  level: 'warning',
  page: {
    checks:
      'A comment behind a line of figures is itself nothing but a figure: a power, a prism with its base, an eye with its value.',
    why: 'Nothing behind a `#` is read. A figure that was meant for the line and stands in the comment is lost without a trace, and the rest of the line is judged as if it were whole.',
    example: { wrong: 'prism R 0 L 0 #3 BU', right: 'prism R 3 BU L 0' },
    fix: 'Takes the comment mark away.',
    source: 'Common practice, no source.',
  },
  message: ({ lost }) => `“${lost}” stands in a comment and is not read. Does it belong to the line?`,
  fixes: (site) => [replace(site, 'Take it into the line', String(site.finding.data.lost), false)],
};
