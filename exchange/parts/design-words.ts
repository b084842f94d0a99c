import { parseLine } from '../../orders';
import { oneLine } from '../../orders/write';

/** Whether words from outside read as one design for either eye, with nothing to tell of them. */
export function isDesign(text: string): boolean {
  if (text.length > 200 || text.includes('#')) return false;
  const { node, problems } = parseLine(`design ${oneLine(text)}`);
  if (node.kind !== 'design' || problems.length > 0 || node.entries.length !== 1) return false;
  const [entry] = node.entries;
  return entry?.eye === null && entry.value.type !== null;
}
