/** A tolerance set in words, as a page of Markdown: the same text is its documentation and what an editor shows of it. */
import type { Source, ToleranceSet } from '../../tables';
import { type StandardSection, standardSections } from './sections';
import { standardSources } from './sources-of';

/**
 * The page of a set: what it is for, what to beware of, every limit with its evidence, and the sources.
 * The first heading is the title of the set.
 */
export function standardInWords(set: ToleranceSet): string {
  const { id, title, publisher, edition, jurisdiction, scope, cautions } = set;
  const sources = standardSources(set);
  const about = `\`${id}\`: ${publisher}, edition ${edition}; ${jurisdiction}; for ${scope.join(', ')} lenses.`;
  const parts = [
    `# ${title}`,
    about,
    cautions.map((caution) => `- ${caution}`).join('\n'),
    EVIDENCE,
    ...standardSections(set).map((section) => sectionInWords(section, sources)),
    `## Sources\n\n${sources.map(sourceInWords).join('\n')}`,
    RULES,
  ];
  return `${parts.join('\n\n')}\n`;
}

const EVIDENCE =
  'Each limit says how well it is established: *published* was seen in the text itself, *secondary* in an account of it, ' +
  '*memory* was not seen. Figures stand as printed: 0.12, 0.125 and 0.13 are three figures, and exactly the limit is inside.';

const RULES =
  'This is no medical device. The bought text of the standard and the local code rule; licensed practice decides.';

function sectionInWords({ title, head, rows, notes }: StandardSection, sources: readonly Source[]): string {
  const cited = (id: string | undefined): string => `[${sources.findIndex((source) => source.id === id) + 1}]`;
  const lines = [
    [...head.slice(0, -1), 'source'],
    head.map(() => '---'),
    ...rows.map((row) => [...row.slice(0, -1), cited(row.at(-1))]),
  ].map((cells) => `| ${cells.join(' | ')} |`);
  return [`## ${title}`, lines.join('\n'), ...notes].join('\n\n');
}

const sourceInWords = ({ title, where, note }: Source, at: number): string =>
  `${at + 1}. ${title}. ${where}.${note ? ` ${note}` : ''}`;
