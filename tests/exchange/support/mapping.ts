import { type Mapping, readMapping } from '../../../exchange';

/** The mapping that these lines make. */
export function mappingOf(...lines: readonly string[]): Mapping {
  const mapping = readMapping(lines.join('\n'));
  if ('error' in mapping) throw new Error(mapping.error);
  return mapping;
}
