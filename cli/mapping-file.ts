import { type Mapping, readMapping } from '../exchange';
import { readText } from './read-text';
import { UnusableArgument } from './unusable-argument';

/** The mapping that a file holds. */
export function mappingIn(path: string): Mapping {
  const read = readText(path);
  if ('error' in read) throw new UnusableArgument(`${path}: ${read.error}`);
  const mapping = readMapping(read.text);
  if ('error' in mapping) throw new UnusableArgument(`${path}: ${mapping.error}`);
  return mapping;
}
