/** `lentil standards`: the built-in tolerance sets, each limit with what it rests on. */
import {
  type StandardSection,
  standardSections,
  standardSources,
  type ToleranceSet,
  toleranceSetById,
  toleranceSets,
} from '../orders';
import { print } from './output';
import { noSuchSet } from './unknown-name';
import { columnsOf, indented, wrapped } from './wrap';

export async function standards(name: string | undefined): Promise<0> {
  await print(name === undefined ? listOfSets() : setInWords(setCalled(name)));
  return 0;
}

function setCalled(name: string): ToleranceSet {
  const set = toleranceSetById.get(name.toLowerCase());
  if (set) return set;
  throw noSuchSet(name);
}

function listOfSets(): string {
  const width = Math.max(...toleranceSets.map(({ id }) => id.length));
  const lines = toleranceSets.map(
    ({ id, title, jurisdiction, scope }) =>
      `${id.padEnd(width)}  ${title}\n${' '.repeat(width)}  ${jurisdiction}; for ${scope.join(', ')} lenses\n`,
  );
  return `${lines.join('')}\n${wrapped(EVIDENCE, columnsOf(process.stdout))}\n`;
}

const EVIDENCE =
  '`lentil standards NAME` shows the tables of a set. Each limit says how well it is established: published (seen in ' +
  'the text itself), secondary (seen in an account of it) or memory (not seen). The bought text of the standard and ' +
  'the local code rule.';

function setInWords(set: ToleranceSet): string {
  const columns = columnsOf(process.stdout);
  const { publisher, edition, jurisdiction, scope } = set;
  const about = `${publisher}, edition ${edition}; ${jurisdiction}; for ${scope.join(', ')} lenses`;
  const head = `${set.id}  ${set.title}\n${wrapped(about, columns)}`;
  const cautions = set.cautions.map((caution) => `\n${wrapped(caution, columns)}\n`).join('');
  const sources = standardSources(set);
  const numberOf = (id: string): string => `[${sources.findIndex((source) => source.id === id) + 1}]`;
  const tables = standardSections(set).map((section) => sectionInWords(section, columns, numberOf));
  const cited = sources.map(({ id, title, where, note }) => {
    const text = `${title}. ${where}.${note ? ` ${note}` : ''}`;
    return `${numberOf(id)} ${id}\n${indented(wrapped(text, columns - 2))}\n`;
  });
  return `${head}\n${cautions}\n${tables.join('\n')}\nSources\n${cited.join('')}`;
}

/** The id of a source is long, so a table names it by its number in the list of sources. */
function sectionInWords(
  { title, notes, head, rows }: StandardSection,
  columns: number,
  numberOf: (id: string) => string,
): string {
  const lines = [head, ...rows.map((row) => [...row.slice(0, -1), numberOf(row.at(-1) ?? '')])];
  const widths = head.map((_, at) => Math.max(...lines.map((line) => (line[at] ?? '').length)));
  const table = lines.map((line) =>
    `  ${line.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join('  ')}`.trimEnd().concat('\n'),
  );
  const remarks = notes.map((note) => `${indented(wrapped(note, columns - 2))}\n`);
  return `${title}\n${table.join('')}${remarks.join('')}`;
}
