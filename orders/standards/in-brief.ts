import { EVIDENCE_FROM_FIRM_TO_WEAK, type Evidence, type ToleranceSet } from '../../tables';
import { standardSections } from './sections';

/** A tolerance set in short, as Markdown: what it is for, a line for each of its tables, and how well the limits are established. */
export function standardInBrief(set: ToleranceSet): string {
  const { id, title, edition, publisher, jurisdiction, scope, cautions } = set;
  const sections = standardSections(set);
  const evidence = sections.flatMap(({ rows }) => rows.map((row) => row.at(-2)));
  const tables = sections.map(({ title: table, rows }) => `- ${table}: ${rows.map(limitOf).join('; ')}`);
  const about = `**${title}** (\`${id}\`): ${publisher}, edition ${edition}; ${jurisdiction}; for ${scope.join(', ')} lenses.`;
  return [about, tables.join('\n'), establishedInWords(evidence), ...cautions].join('\n\n');
}

/** The cells of a row without its evidence and its source. */
const limitOf = (row: readonly string[]): string => row.slice(0, -2).join(' ');

function establishedInWords(evidence: readonly (string | undefined)[]): string {
  const counts = EVIDENCE_FROM_FIRM_TO_WEAK.map(
    (one) => [one, evidence.filter((other) => other === one).length] as const,
  );
  const told = counts.filter(([, count]) => count > 0).map(([one, count]) => `${count} ${MEANING[one]}`);
  return `${evidence.length} limits: ${told.join(', ')}. The bought text of the standard and the local code rule.`;
}

const MEANING: Readonly<Record<Evidence, string>> = {
  published: 'seen in the text itself',
  secondary: 'seen in an account of it',
  memory: 'from memory',
};
