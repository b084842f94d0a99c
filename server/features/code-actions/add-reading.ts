/** A new reading below an order, with a line for everything the order calls for. */
import type { CodeAction } from 'vscode-languageserver';
import { lastLine } from '../lines';
import { readingToFillIn } from '../reading-to-fill-in';
import { type Asking, actionOf, linesBelow } from './asking';
import { ADD_READING } from './kinds';

export function addReading(asking: Asking): CodeAction[] {
  const { snapshot, params, options } = asking;
  const { block: index } = snapshot.site(params.range.start);
  const { order, block } = snapshot.block(index);
  const lines = order && readingToFillIn(order, snapshot.context, options.today);
  if (!order || lines === null) return [];
  const last = lastLine(block.lines.map(({ text }) => text));
  // A blank line sets the first reading apart from the order.
  const gap = order.readings.length === 0 ? '\n' : '';
  const edits = [linesBelow(asking, index, last, gap + lines)];
  return [actionOf(asking, { title: 'Add a reading of what this order calls for', kind: ADD_READING, edits })];
}
