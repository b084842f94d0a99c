/**
 * What a design calls for, written down once more from the table of the reference and not from the program: power of each
 * lens that is made, add, place across and up, heights and near distance of segments.
 */
import { parseLine } from '../../../grammar';

const headOf = (line: string): string => parseLine(line).node.head?.word ?? '';

/** The lines at which the order and its last reading open. */
export function partsOf(lines: readonly string[]): { readonly order: number; readonly reading: number } {
  const heads = lines.map(headOf);
  return { order: heads.lastIndexOf('order'), reading: heads.lastIndexOf('reading') };
}

/** Whether the lines of the readings measure everything that the order calls for, each lens that is made and the pair. */
export function coversAll(lines: readonly string[]): boolean {
  const { order } = partsOf(lines);
  const first = lines.findIndex((line, at) => at > order && headOf(line) === 'reading');
  const [said, read] = [lines.slice(0, first).join('\n'), lines.slice(first).join('\n')];
  const design = /^\s*(?:design|type)\s+(\S+)(\s+near|)/m.exec(said);
  const kind = design?.[1] ?? 'single-vision';
  const has = (pattern: string): boolean => new RegExp(`^\\s*(?:again\\s+)?(?:${pattern})`, 'm').test(read);
  const eyes = ['R', 'L'].filter((eye) => isMade(said, eye));
  const power = (eye: string): boolean => has(`${eye}\\s|both\\s`);
  if (!eyes.every((eye) => power(eye) || isBalance(said, eye))) return false;
  const adds = /^\s*add\s/m.test(said) && kind !== 'office' && !(kind === 'single-vision' && design?.[2] !== '');
  const add = (eye: string): boolean =>
    has(`(?:add|clock)\\s+(?:[+-]?\\d|both|.*\\b${eye}\\b)`) || has(`${eye}\\s.*(?:add|near-point)`);
  if (adds && kind !== 'single-vision' && !eyes.filter((eye) => !isBalance(said, eye)).every(add)) return false;
  if (/^\s*supply\s+uncut/m.test(said)) return !/^\s*prism/m.test(said) || has('prism');
  if (eyes.length < 2) return true;
  const isSegment = /^(bifocal|trifocal|double)/.test(kind);
  if (isSegment)
    return (has('prism') || has('pd')) && has('height') && has('near-pd|pd\\s.*near') && has('prism|height');
  if (kind === 'progressive' || kind === 'office') return has('pd\\s.*R.*L') && has('height') && has('prism');
  return (has('prism') || has('pd') || has('optical-centres')) && (has('prism') || has('height'));
}

const isBalance = (said: string, eye: string): boolean => new RegExp(`^\\s*balance\\s+${eye}\\b`, 'm').test(said);

const isMade = (said: string, eye: string): boolean =>
  !new RegExp(`^\\s*kept\\s+${eye}\\b`, 'm').test(said) &&
  (!/^\s*make\s/m.test(said) || new RegExp(`^\\s*make\\s.*${eye}\\b`, 'm').test(said));
