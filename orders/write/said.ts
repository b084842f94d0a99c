/** What the lines of a block say, in the words of its writer: what an export quotes and takes written digits from. */
import { type Block, commentStart, type Figure, type LineNode, type SectionKind, sectionsOf } from '../../grammar';
import { isSame } from '../exact';
import type { Place } from '../finding';
import { decimal } from './figures';

/** One line that is not blank. */
export interface SaidLine {
  /** Number in the block, from 0. */
  readonly line: number;
  readonly section: SectionKind;
  readonly kind: LineNode['kind'];
  /** The first word by its canonical spelling; null in a line of words that nobody knows. */
  readonly word: string | null;
  /** The line without its indent and its comment. */
  readonly text: string;
  /** What follows the first word; free words come without their quotes. */
  readonly rest: string;
  /** The comment with its mark, or nothing. */
  readonly comment: string;
  /** Words beside the figures that the model keeps nothing of, such as which end of a segment is higher. */
  readonly details: readonly string[];
}

/** The lines of a block that say something, comments included. */
export function saidLines(block: Block): readonly SaidLine[] {
  return sectionsOf(block).flatMap(({ kind: section }, line) => {
    const { text } = block.lines[line] as Block['lines'][number];
    if (text.trim() === '') return [];
    const { node } = (block.lines[line] as Block['lines'][number]).parsed(block.kind);
    const cut = commentStart(text);
    const free = node.kind === 'text' ? node.text?.text : undefined;
    return {
      line,
      section,
      kind: node.kind,
      word: node.head?.word ?? null,
      text: text.slice(0, cut).trim(),
      rest: free ?? text.slice(node.head?.end ?? 0, cut).trim(),
      comment: text.slice(cut).trim(),
      details: detailsOf(node),
    };
  });
}

function detailsOf(node: LineNode): readonly string[] {
  const words: readonly (string | null | undefined)[] =
    node.kind === 'segment'
      ? node.entries.map(({ value }) => value.tiltTowards)
      : node.kind === 'add'
        ? node.entries.map(({ value }) => value.surface)
        : node.kind === 'results'
          ? [node.results.some(({ word }) => word === 'batch') ? 'batch' : null, node.detail?.text]
          : [];
  return words.filter((word): word is string => Boolean(word));
}

/**
 * Returns a value as a decimal without a plus, with the digits that were written for it at a place, and never fewer than
 * its value needs.
 * @param least decimals where none were written, as for plano, a default or a figure that was worked out
 */
export function writtenDigits(block: Block, place: Place, value: number, least: number): string {
  const figures = figuresIn(block, place);
  const own = figures.find((figure) => figure.value !== null && isSame(Math.abs(figure.value), Math.abs(value)));
  const written = own ?? figures.toSorted((one, other) => other.decimals - one.decimals)[0];
  return decimal(value, Math.min(written && (value !== 0 || written.decimals > 0) ? written.decimals : least, 4));
}

/** Whether a value stands at a place as a figure. Where no figures stand, as for a default, nothing is known against it. */
export function isWritten(block: Block, place: Place, value: number): boolean {
  const figures = figuresIn(block, place);
  return (
    figures.length === 0 ||
    figures.some((figure) => figure.value !== null && isSame(Math.abs(figure.value), Math.abs(value)))
  );
}

function figuresIn(block: Block, { line, start, end }: Place): readonly Figure[] {
  const found: Figure[] = [];
  const visit = (part: unknown): void => {
    if (typeof part !== 'object' || part === null) return;
    if ('decimals' in part && 'sign' in part) {
      const figure = part as Figure;
      if (figure.start >= start && figure.end <= end) found.push(figure);
    } else for (const inner of Object.values(part)) visit(inner);
  };
  visit(block.lines[line]?.parsed(block.kind).node);
  return found;
}
