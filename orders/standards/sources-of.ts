import { type Source, sources, type ToleranceSet } from '../../tables';

/** The sources that the limits of a set cite, in the order of the list of sources. */
export function standardSources(set: ToleranceSet): readonly Source[] {
  const cited = new Set<unknown>();
  const visit = (value: unknown, key: string): void => {
    if (key === 'source') cited.add(value);
    else if (key === 'alsoIn') for (const one of value as readonly unknown[]) cited.add(one);
    else if (typeof value === 'object' && value !== null)
      for (const [name, part] of Object.entries(value)) visit(part, name);
  };
  visit(set, '');
  return sources.filter(({ id }) => cited.has(id));
}
