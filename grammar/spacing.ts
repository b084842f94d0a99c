/** Where blanks stand between the parts of a line. */
import type { IToken } from 'chevrotain';
import { indentOf } from './text';
import * as T from './tokens';
import type { LineNode } from './tree';
import { lineWord, meaningsOf } from './vocabulary';

export interface Spaced {
  readonly head: string;
  /** The parts after the head, each with the blanks that follow it. */
  readonly values: readonly string[];
  /** How many leading values are the sphere and cylinder figures of a single power. */
  readonly columns: number;
}

/** Lines whose values are free words: the blanks inside them are the writer’s. */
const FREE = new Set<LineNode['kind']>([
  'text',
  'confirmed',
  'tint',
  'remake-of',
  'eyes',
  'choice',
  'results',
  'decided',
  'unknown',
]);

/** Designs and frames write figures into one another (`7x28`, `D28`, `52[]18`); nothing is taken apart there. */
const CLOSE = new Set<LineNode['kind']>(['design', 'lens', 'order', 'instrument', 'standard', 'tolerance', 'reading']);

/** Takes a line’s content (without indent and comment) apart into head and values; null when it has no head. */
export function spaceOut(content: string, node: LineNode): Spaced | null {
  const tokens = T.tokenize(content);
  const first = tokens[0];
  if (!first || !node.head) return null;
  const head = content.slice(0, T.endOf(first));
  const rest = tokens.slice(1);
  if (rest.length === 0) return { head, values: [], columns: 0 };
  // A design without its line word, `FT28`, has no columns.
  if (node.kind === 'design' && lineWord(first.image)?.word !== 'design')
    return { head: content, values: [], columns: 0 };
  if (FREE.has(node.kind)) {
    const text = content.slice(T.endOf(first));
    return { head, values: [text.slice(indentOf(text))], columns: 0 };
  }
  const values: string[] = [];
  let current = '';
  for (const [at, token] of rest.entries()) {
    const next = rest[at + 1];
    current += token.image;
    const gap = next ? gapBetween(token, next, node) : 0;
    if (gap === 0 && next) continue;
    values.push(current + ' '.repeat(gap));
    current = '';
  }
  return { head, values, columns: powerColumns(node, rest, values) };
}

const isWord = (token: IToken): boolean => token.tokenType === T.Word;
const isEye = (token: IToken): boolean => isWord(token) && meaningsOf(token.image).some(({ role }) => role === 'eye');
const isCross = (token: IToken): boolean => token.tokenType === T.CrossSign || /^[xX\u0445]$/.test(token.image);

/**
 * Blanks between two neighbouring parts: two before what opens a new group, none where parts belong together. Parts that
 * touch and are set apart get the blanks they would get if they had stood apart, so that a second layout changes nothing.
 */
function gapBetween(left: IToken, right: IToken, node: LineNode): number {
  if (T.touches(left, right) && !comesApart(left, right, node)) return 0;
  return opensGroup(left, right, node) ? 2 : 1;
}

/** Whether two parts that touch are set apart. */
function comesApart(left: IToken, right: IToken, node: LineNode): boolean {
  if (CLOSE.has(node.kind)) return false;
  if (left.tokenType === T.Arrow || right.tokenType === T.Arrow) return true;
  if (right.tokenType === T.Figure) {
    const signed = /^[^\d.,]/.test(right.image);
    return isWord(left) || isCross(left) || (left.tokenType === T.Figure && signed);
  }
  return left.tokenType === T.Figure && (isCross(right) || isEye(right));
}

/** A second eye, or the next keyword of a list such as `A 52  B 36`. */
function opensGroup(left: IToken, right: IToken, node: LineNode): boolean {
  if (left.tokenType !== T.Figure && !isWord(left)) return false;
  if (isEye(right) && left.tokenType === T.Figure) return true;
  return node.kind === 'settings' && isWord(right) && left.tokenType === T.Figure;
}

/** `R -4.50 -0.75 x 022` has two columns, `R -4.50` one; anything else stands for itself. */
function powerColumns(node: LineNode, rest: readonly IToken[], values: readonly string[]): number {
  if (node.kind !== 'power' || node.again || node.entries.length !== 1) return 0;
  if (node.entries[0]?.power?.form !== 'sphero-cylinder') return 0;
  const figures = values.map((value) => /^[^\sA-Za-z]*[\d][\d.,]*\s*$/.test(value));
  if (!figures[0] || rest[0]?.tokenType !== T.Figure) return 0;
  return figures[1] && node.entries[0].power.cylinder ? 2 : 1;
}
