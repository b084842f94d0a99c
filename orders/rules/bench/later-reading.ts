/** How an earlier measure of an order stands to what was read and done after it. */
import { type Block, type Line, sectionsOf } from '../../../grammar';
import { isLater } from '../../evaluate';
import type { Measure } from '../../measures/measure';
import type { Order, Reading } from '../../model';

/** Whether the first was taken in a later reading than the second. */
export function readLater({ readings }: Order, now: Measure, before: Measure): boolean {
  if (now.reading === null || before.reading === null || now.reading === before.reading) return false;
  const [a, b] = [readings[now.reading] as Reading, readings[before.reading] as Reading];
  return isLater(a, b) || (!isLater(b, a) && now.reading > before.reading);
}

/** Whether the lens that was measured has been replaced since; for what belongs to the pair, either lens. */
export const isLensReplaced = ({ readings }: Order, { eye, place }: Measure): boolean =>
  place !== null &&
  readings.some(({ replaced }) =>
    replaced.some((one) => one.place.line > place.line && (eye === null || one.value === eye)),
  );

/** Whether somebody wrote a note into the order below a line: a word of what was done. */
export function isNotedBelow(block: Block, line: number): boolean {
  const sections = sectionsOf(block);
  for (let at = line + 1; at < block.lines.length; at++) {
    if (sections[at]?.kind !== 'reading') continue;
    const { node } = (block.lines[at] as Line).parsed(block.kind);
    if (node.kind === 'text' && node.which === 'note' && node.text) return true;
  }
  return false;
}
