import { nearestWord } from '../../../grammar';
import { toleranceSets } from '../../../tables';
import { type Rule, replace } from '../rule';

export const standardUnknown: Rule = {
  code: 'standard-unknown',
  family: 'bench',
  level: 'error',
  page: {
    checks: 'The named tolerance set is not one of the built-in sets.',
    why: 'Nothing is judged by a set that is not known, and another edition is not taken in its place: the figures differ.',
    example: { wrong: 'standard z80.1-2016', right: 'standard z80.1-2015' },
    fix: 'Writes the nearest name that is known.',
    source: 'Common practice, no source.',
  },
  message: ({ name, named }) =>
    `There is no tolerance set “${name}”${named ? '' : ', which the settings name'}. Nothing is judged by it.`,
  fixes: (site) => {
    const { name, named } = site.finding.data;
    const near = named ? nearestSet(String(name)) : null;
    return near === null ? [] : [replace(site, `Write ${near}`, near, false)];
  },
  // The name in the `standard` line of the file is told where that line stands.
  check: ({ order, evaluation, context }, report) => {
    if (evaluation.set !== null || evaluation.standard === null) return;
    const [first] = order.readings;
    if (order.standard) report(order.standard.place, { name: evaluation.standard, named: true });
    else if (!context.standard && first) report(first.place, { name: evaluation.standard, named: false });
  },
};

/** The set meant by a name: one with a slip in it, or the newest edition of a name without one. */
function nearestSet(name: string): string | null {
  const ids = toleranceSets.map(({ id }) => id);
  const typed = name
    .toLowerCase()
    .replaceAll(/[\s_/]+/g, '-')
    .replace(/^(ansi|iso|din|bs|en)-?(?=z|\d)/, (prefix) => (prefix.startsWith('iso') ? 'iso-' : ''));
  return ids.find((id) => id === typed) ?? ids.find((id) => id.startsWith(`${typed}-`)) ?? nearestWord(typed, ids);
}
