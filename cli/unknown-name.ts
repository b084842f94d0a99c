import { nearestWord } from '../grammar';
import { toleranceSets } from '../orders';
import { UnusableArgument } from './unusable-argument';

/** The refusal of a name that is none of the known ones, with the one that was probably meant. */
export function unknownName(what: string, name: string, known: readonly string[], list: string): UnusableArgument {
  const near = nearestWord(name, known);
  return new UnusableArgument(`there is no ${what} called ${name}. ${near ? `Did you mean ${near}?` : list}`);
}

export function noSuchSet(name: string): UnusableArgument {
  const ids = toleranceSets.map(({ id }) => id);
  return unknownName('tolerance set', name, ids, `There are ${ids.join(', ')}.`);
}
