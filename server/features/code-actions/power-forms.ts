/** The power under the cursor in another form of the same lens, in its place. */
import type { CodeAction } from 'vscode-languageserver';
import type { PowerEntry } from '../../../grammar';
import { type PowerForm, powerInOtherForms } from '../../../orders';
import { type Asking, actionOf, lineAsked, textEdits } from './asking';
import { POWER_FORM } from './kinds';

const TITLES: Readonly<Record<PowerForm, string>> = {
  plus: 'Write with a plus cylinder',
  minus: 'Write with a minus cylinder',
  meridians: 'Write as two meridians',
};

export function powerForms(asking: Asking): CodeAction[] {
  const line = lineAsked(asking);
  if (line?.node.kind !== 'power' && line?.node.kind !== 'powers') return [];
  const power = entryAt(line.node.entries, line.character)?.power;
  if (!power) return [];
  return powerInOtherForms(power).map(({ form, text }) =>
    actionOf(asking, {
      title: `${TITLES[form]}: ${text}`,
      kind: POWER_FORM,
      edits: textEdits(asking.snapshot, line.block, [{ line: line.line, start: power.start, end: power.end, text }]),
    }),
  );
}

/** The entry that a column stands in; of a line with one entry, that one. */
export const entryAt = <E extends Pick<PowerEntry, 'start' | 'end'>>(
  entries: readonly E[],
  column: number,
): E | undefined =>
  entries.length === 1 ? entries[0] : entries.find(({ start, end }) => start <= column && column <= end);
