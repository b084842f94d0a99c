/** An ordered PD in halves, or halves in one. Both are somebody’s decision, so they are offered only when asked for. */
import { type CodeAction, CodeActionTriggerKind } from 'vscode-languageserver';
import type { LineOf, PdNode } from '../../../grammar';
import { type Asking, actionOf, lineAsked, textEdits } from './asking';
import { PD_HALVES } from './kinds';

export function pdHalves(asking: Asking): CodeAction[] {
  if (asking.params.context.triggerKind === CodeActionTriggerKind.Automatic) return [];
  const line = lineAsked(asking);
  // What was measured is not written anew as something that was not.
  if (line?.node.kind !== 'pd' || line.section !== 'body' || line.problems.length > 0) return [];
  const { node } = line;
  const isNear = node.head?.word === 'near-pd';
  const distances = (isNear ? [node.near] : [node.distance, node.near]).filter(isSaid);
  const [first, second] = distances.map(spanOf);
  // A near distance alone, or one that stands first, has its word where this would begin.
  if (!first || (!isNear && !isSaid(node.distance)) || (second && second.start < first.end)) return [];
  const { end } = second ?? first;
  return [SPLIT, JOIN].flatMap(({ title, write }) => {
    const written = distances.map(write);
    if (written.some((one) => one === null)) return [];
    const text = written.join(' near ');
    const edit = { line: line.line, start: startOf(node, line.text, first.start), end, text };
    const edits = textEdits(asking.snapshot, line.block, [edit]);
    return [actionOf(asking, { title: `${title}: ${text}`, kind: PD_HALVES, edits })];
  });
}

const SPLIT = {
  title: 'Split the PD into equal halves',
  write: ({ binocular, right, left }: PdNode): string | null => {
    if (binocular?.value == null || right || left) return null;
    const half = plain(binocular.value / 2);
    return `R ${half} L ${half}`;
  },
};

const JOIN = {
  title: 'Join the halves of the PD',
  write: ({ binocular, right, left }: PdNode): string | null =>
    binocular || right?.value == null || left?.value == null ? null : plain(right.value + left.value),
};

/** Millimetres without needless decimals. */
const plain = (value: number): string => String(Math.round(value * 1e4) / 1e4);

const isSaid = ({ binocular, right, left }: PdNode): boolean => binocular !== null || right !== null || left !== null;

function spanOf({ binocular, right, left }: PdNode): { readonly start: number; readonly end: number } {
  const figures = [binocular, right, left].filter((figure) => figure !== null);
  return { start: Math.min(...figures.map(({ start }) => start)), end: Math.max(...figures.map(({ end }) => end)) };
}

/** The eye in front of the first figure goes with it. */
function startOf({ head }: LineOf<'pd'>, text: string, figure: number): number {
  const from = head?.end ?? 0;
  return from + (/^\s*/.exec(text.slice(from, figure))?.[0].length ?? 0);
}
