/** Two eyes on one line, or one line for each. */
import { type CodeAction, CodeActionTriggerKind } from 'vscode-languageserver';
import { commentStart, indentOf, type LineNode, type PowerEntry } from '../../../grammar';
import { contentEnd } from '../lines';
import { type Asking, actionOf, type LineAsked, lineAsked, textEdits } from './asking';
import { EYE_LINES } from './kinds';

export function eyeLines(asking: Asking): CodeAction[] {
  const line = lineAsked(asking);
  if (!line) return [];
  return [...oneForEach(asking, line), ...onOneLine(asking, line)];
}

/** The powers of a line that says nothing else and is read without doubt; that two eyes share it is no doubt. */
function powersOf(node: LineNode, problems: LineAsked['problems']): readonly PowerEntry[] {
  const isPlain = node.kind === 'power' && !node.again && !node.qualifiers;
  const isClear = problems.every(({ code }) => code === 'two-eyes' || code === 'add-for-both');
  return isPlain && isClear ? node.entries : [];
}

function oneForEach(asking: Asking, line: LineAsked): CodeAction[] {
  const { text, node, problems } = line;
  const [first, second, third] = powersOf(node, problems);
  if (!first || !second || third) return [];
  // An add that is said once, at the end, holds for both eyes.
  const shared = second.add && !first.add ? ` ${text.slice(second.add.start, second.add.end)}` : '';
  const indent = text.slice(0, indentOf(text));
  const [one, other] = [textOf(text, first), textOf(text, second)];
  const edit = {
    line: line.line,
    start: first.start,
    end: second.end,
    text: `${one}${shared}\n${indent}${other}`,
  };
  const edits = textEdits(asking.snapshot, line.block, [edit]);
  return [actionOf(asking, { title: 'Write a line for each eye', kind: EYE_LINES, edits })];
}

/** Lines of their own are easier to check, so that they are joined only when asked for. */
function onOneLine(asking: Asking, line: LineAsked): CodeAction[] {
  if (asking.params.context.triggerKind === CodeActionTriggerKind.Automatic) return [];
  const { block } = line.analysis;
  const next = block.lines[line.line + 1];
  const below = next?.parsed(block.kind);
  if (!next || !below) return [];
  const [first, more] = powersOf(line.node, line.problems);
  const [second, others] = powersOf(below.node, below.problems);
  const isPair =
    first?.eye?.eye === 'R' ? second?.eye?.eye === 'L' : first?.eye?.eye === 'L' && second?.eye?.eye === 'R';
  if (!first || !second || more || others || !isPair) return [];
  // At the end of the line the add of one eye would hold for both; a comment would swallow the second power.
  if (second.add && !first.add) return [];
  if (commentStart(line.text) < line.text.length) return [];
  const { start } = asking.snapshot.range(line.block, place(line.line, contentEnd(line.text)));
  const { end } = asking.snapshot.range(line.block, place(line.line + 1, second.end));
  const edits = [{ range: { start, end }, newText: `  ${textOf(next.text, second)}` }];
  return [actionOf(asking, { title: 'Write both eyes on one line', kind: EYE_LINES, edits })];
}

const place = (line: number, column: number) => ({ line, start: column, end: column });

const textOf = (text: string, { start, end }: PowerEntry): string => text.slice(start, end);
