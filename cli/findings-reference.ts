/** The pages of all findings in Markdown: an index, and one page for each family. */
import { type Family, RULES, type Rule } from '../orders';
import { kindOf, partsOf } from './finding-page';

const FAMILIES: Readonly<Record<Family, string>> = {
  writing: 'Writing: what the next person could misread',
  order: 'Order: what cannot be made as ordered, or will surprise someone',
  tolerance: 'Tolerance: readings outside a limit',
  bench: 'Bench: readings that may not mean what they say',
  cause: 'Cause: what probably happened',
};

/** Every page by the name of its file. Families without a rule have no page. */
export function findingsReference(): ReadonlyMap<string, string> {
  const families = (Object.keys(FAMILIES) as Family[])
    .map((family) => ({ family, rules: RULES.filter((rule) => rule.family === family) }))
    .filter(({ rules }) => rules.length > 0);
  return new Map([
    ['README.md', page('Findings', INTRODUCTION, ...families.map(({ family, rules }) => indexOf(family, rules)))],
    ...families.map(({ family, rules }) => [`${family}.md`, page(FAMILIES[family], ...rules.map(section))] as const),
  ]);
}

const INTRODUCTION = `Every finding has a code, a level and a page. \`lentil explain CODE\` shows the same page.

| level | what it does at the bench |
| --- | --- |
| error | stops the job |
| warning | asks a person |
| info | is worth knowing, and blocks nothing |
| hint | concerns the writing only |

Lentil is not a medical device. The bought text of a standard and the local code rule; licensed practice decides.`;

const page = (title: string, ...parts: readonly string[]): string => `# ${title}\n\n${parts.join('\n\n')}\n`;

function indexOf(family: Family, rules: readonly Rule[]): string {
  const rows = rules.map(
    (rule) => `| [\`${rule.code}\`](${family}.md#${rule.code}) | ${levelsOf(rule)} | ${inCell(rule.page.checks)} |`,
  );
  return `## ${FAMILIES[family]}\n\n| code | level | what it looks at |\n| --- | --- | --- |\n${rows.join('\n')}`;
}

/** `error or warning`, in the order in which the page names them. */
function levelsOf({ level, page: { levels } }: Rule): string {
  if (!levels) return typeof level === 'string' ? level : 'by where it stands';
  return [...new Set(levels.match(/\b(?:error|warning|info|hint)\b/g))].join(' or ');
}

/** A stroke would end the cell. */
const inCell = (text: string): string => inProse(text).replaceAll('|', '\\|');

/** What would be a tag or an emphasis in Markdown stands as it is. */
const inProse = (text: string): string => text.replace(/[<*_]/g, '\\$&');

function section(rule: Rule): string {
  const parts = partsOf(rule).map(({ heading, body, isTyped }) =>
    isTyped ? `${capital(heading)}:\n\n\`\`\`text\n${body}\n\`\`\`` : `**${capital(heading)}:** ${inProse(body)}`,
  );
  return `## ${rule.code}\n\n*${kindOf(rule)}*\n\n${parts.join('\n\n')}`;
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
