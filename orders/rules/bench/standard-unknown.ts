import { nearestWord } from '../../../grammar';
import { toleranceSets } from '../../../tables';
import type { Context } from '../../context';
import { type Rule, replace } from '../rule';

export const standardUnknown: Rule = {
  code: 'standard-unknown',
  family: 'bench',
  level: 'error',
  page: {
    checks:
      'The named tolerance set is neither one of the built-in sets nor a house set of this file or of the bench file.',
    why: 'Nothing is judged by a set that is not known, and another edition is not taken in its place: the figures differ.',
    example: { wrong: 'standard z80.1-2016', right: 'standard z80.1-2015' },
    fix: 'Writes the nearest name that is known.',
    source: 'Common practice, no source.',
  },
  message: ({ name, named }) =>
    `There is no tolerance set “${name}”${named ? '' : ', which the settings name'}. Nothing is judged by it.`,
  fixes: (site) => {
    const { near } = site.finding.data;
    return typeof near === 'string' ? [replace(site, `Write ${near}`, near, false)] : [];
  },
  // The name in the `standard` line of the file is told where that line stands.
  check: ({ order, evaluation, context }, report) => {
    const { set, house, standard: name } = evaluation;
    if (set !== null || name === null || house !== null || context.missing.length > 0) return;
    const [first] = order.readings;
    if (order.standard) report(order.standard.place, { name, named: true, near: nearestSet(name, context) });
    else if (!context.standard && first) report(first.place, { name, named: false });
  },
};

/** The set meant by a name: one with a slip in it, or the newest edition of a name without one; a house set as well. */
export function nearestSet(name: string, context: Context | null): string | null {
  const ids = toleranceSets.map(({ id }) => id);
  const typed = name
    .toLowerCase()
    .replaceAll(/[\s_/]+/g, '-')
    .replace(/^(ansi|iso|din|bs|en)-?(?=z|\d)/, (prefix) => (prefix.startsWith('iso') ? 'iso-' : ''));
  const known = ids.find((id) => id === typed) ?? ids.find((id) => id.startsWith(`${typed}-`));
  return known ?? nearestWord(typed, ids) ?? nearestWord(name, [...(context?.houses.keys() ?? [])]);
}
