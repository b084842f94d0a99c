/** The prism under the cursor as one base, or by its parts in and up. */
import type { CodeAction } from 'vscode-languageserver';
import type { EyeWord, PrismComponent } from '../../../grammar';
import { prismInOtherForm } from '../../../orders';
import { type Asking, actionOf, type LineAsked, lineAsked, textEdits } from './asking';
import { PRISM_FORM } from './kinds';
import { entryAt } from './power-forms';

export function prismForms(asking: Asking): CodeAction[] {
  const line = lineAsked(asking);
  const { eye, components = [] } = (line && prismAt(line)) ?? {};
  const [first, last] = [components[0], components.at(-1)];
  if (!line || !eye || eye.eye === 'both' || !first || !last) return [];
  const text = prismInOtherForm(components, eye.eye);
  if (text === null) return [];
  const edit = { line: line.line, start: first.start, end: last.end, text };
  return [
    actionOf(asking, {
      title: `Write the prism as ${text}`,
      kind: PRISM_FORM,
      edits: textEdits(asking.snapshot, line.block, [edit]),
    }),
  ];
}

function prismAt({
  node,
  character,
}: LineAsked): { readonly eye: EyeWord | null; readonly components: readonly PrismComponent[] } | null {
  if (node.kind === 'prism') {
    const entry = node.total ? undefined : entryAt(node.entries, character);
    return entry ? { eye: entry.eye, components: entry.value } : null;
  }
  if (node.kind !== 'power' && node.kind !== 'powers') return null;
  const entry = entryAt(node.entries, character);
  return entry ? { eye: entry.eye, components: entry.prism } : null;
}
