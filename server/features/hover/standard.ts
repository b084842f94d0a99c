import type { Name } from '../../../grammar';
import { standardInBrief, toleranceSetById } from '../../../orders';
import { covers, type Part, type Spot } from './part';

/** The tolerance set whose name is under the cursor, in short. A set of the house has no page; its definition is its page. */
export function aboutStandard({ node, character }: Spot): Part[] {
  const name = nameOf(node);
  const set = name && covers(name, character) ? toleranceSetById.get(name.text.toLowerCase()) : undefined;
  return name && set ? [{ start: name.start, end: name.end, markdown: standardInBrief(set) }] : [];
}

function nameOf(node: Spot['node']): Name | null {
  if (node.kind === 'standard') return node.name;
  return node.kind === 'tolerance' ? node.from : null;
}
