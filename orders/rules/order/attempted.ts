import { sectionsOf } from '../../../grammar';
import type { Subject } from '../subject';

/**
 * Whether the order has a line that begins with a word, or a clause of that kind on a power line, of which something is
 * told. What was typed and could not be read is told once, by the finding that says why, and not a second time as missing.
 */
export function isAttempted({ block }: Subject, word: 'add' | 'pd' | 'height' | 'design'): boolean {
  const sections = sectionsOf(block);
  return block.lines.some((line, number) => {
    const { node, problems } = line.parsed(block.kind);
    if (problems.length === 0) return false;
    if (sections[number]?.kind !== 'body' && node.kind !== 'unknown') return false;
    if (node.head?.word === word) return true;
    return word === 'add' && node.kind === 'power' && node.entries.some(({ add }) => add !== null);
  });
}

/** Whether a line of the order looks like a power whose eye is not said. */
export const hasPowerWithoutEye = ({ block }: Subject): boolean =>
  block.lines.some((line) => line.parsed(block.kind).problems.some(({ code }) => code === 'eye-unsaid'));
