/** The fixes of the findings that the asked range touches, and the line that confirms such a finding. */
import { type CodeAction, CodeActionKind, type CodeActionParams, type Diagnostic } from 'vscode-languageserver';
import { sectionsOf } from '../../../grammar';
import { canBeConfirmed, type Finding, type Fix, quoteOf, ruleOf } from '../../../orders';
import type { Snapshot } from '../../snapshot';
import { diagnosticOf } from '../diagnostics';
import { literally } from '../stops';
import { type Asking, actionOf, linesBelow, textEdits } from './asking';

/**
 * Fixes are made anew from the present text, by code and data; what the editor sends along only says which of its marks
 * an action belongs to.
 */
export function fixes(asking: Asking): CodeAction[] {
  const { snapshot, params } = asking;
  return findingsAt(snapshot, params.range).flatMap(({ block, finding }) => {
    const marks = marksOf(asking, block, finding);
    const mending = fixesOf(snapshot, block, finding).map(({ title, safe, edits }, _, all) =>
      actionOf(asking, {
        title,
        kind: CodeActionKind.QuickFix,
        edits: textEdits(snapshot, block, edits),
        marks,
        // Where several fixes stand side by side the meaning has to be chosen, so none of them is put forward.
        isPreferred: safe && all.length === 1,
      }),
    );
    return [...mending, ...confirming(asking, block, finding, marks)];
  });
}

export function fixesOf(snapshot: Snapshot, block: number, finding: Finding): readonly Fix[] {
  const lines = snapshot.document.blocks[block]?.lines.map(({ text }) => text) ?? [];
  return ruleOf(finding.code)?.fixes?.({ finding, lines }) ?? [];
}

function marksOf({ snapshot, params }: Asking, block: number, finding: Finding): Diagnostic[] {
  const shown = diagnosticOf(snapshot, block, finding, false);
  const { line, character } = shown.range.start;
  return params.context.diagnostics.filter(
    ({ code, range: { start } }) => code === shown.code && start.line === line && start.character === character,
  );
}

/** Findings whose place touches a range, in the order of the text. */
export function findingsAt(
  snapshot: Snapshot,
  range: CodeActionParams['range'],
): { readonly block: number; readonly finding: Finding }[] {
  const [from, to] = [snapshot.site(range.start), snapshot.site(range.end)];
  const found = [];
  for (let block = from.block; block <= to.block; block++) {
    for (const finding of snapshot.block(block).findings) {
      const startsTooLate =
        block === to.block && (finding.line > to.line || (finding.line === to.line && finding.start > to.character));
      const endsTooEarly =
        block === from.block &&
        (finding.line < from.line || (finding.line === from.line && finding.end < from.character));
      if (!startsTooLate && !endsTooEarly) found.push({ block, finding });
    }
  }
  return found;
}

/**
 * The line that confirms a finding, below the order’s own lines, with its quote written and the reason and the person
 * left to be filled in. What cannot be read has to be mended, and a hint is only a matter of style.
 */
function confirming(asking: Asking, index: number, finding: Finding, marks: readonly Diagnostic[]): CodeAction[] {
  const { block, order } = asking.snapshot.block(index);
  const isUnreadable = finding.level === 'error' && ruleOf(finding.code)?.family === 'writing';
  const isAsked = finding.level === 'warning' || finding.level === 'error';
  if (!order || !isAsked || isUnreadable || !canBeConfirmed(finding)) return [];
  const sections = sectionsOf(block).map(({ kind }) => kind);
  const reading = sections.indexOf('reading-header');
  const end = reading < 0 ? sections.length : reading;
  const last = sections.findLastIndex((kind, line) => line < end && (kind === 'body' || kind === 'header'));
  const quote = quoteOf(block.lines[finding.line]?.text ?? '').replaceAll('"', '""');
  const line = `  confirmed   ${finding.code} "${literally(quote)}" "$1" by $2`;
  const edits = [linesBelow(asking, index, last, line)];
  const title = `Confirm ${finding.code} for this order`;
  return [actionOf(asking, { title, kind: CodeActionKind.QuickFix, edits, marks })];
}
