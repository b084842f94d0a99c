import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type Diagnostic,
  type TextEdit,
} from 'vscode-languageserver';
import { type Edit, type Finding, type Fix, ruleOf } from '../../orders';
import type { Snapshot } from '../snapshot';
import { diagnosticOf } from './diagnostics';
import { lineEndOf } from './lines';
import type { Options } from './options';

/**
 * The fixes of the findings that the asked range touches. They are made anew from the present text, by code and data;
 * what the editor sends along only says which of its marks an action belongs to.
 */
export function codeActions(snapshot: Snapshot, params: CodeActionParams, { abilities }: Options): CodeAction[] | null {
  const { only, diagnostics } = params.context;
  if (!abilities.literalActions || (only && !only.some(isQuickFix))) return null;
  const actions = findingsAt(snapshot, params.range).flatMap(({ block, finding }) => {
    const shown = diagnosticOf(snapshot, block, finding, false);
    const marks = diagnostics.filter((mark) => mark.code === shown.code && isSameStart(mark, shown));
    return fixesOf(snapshot, block, finding).map((fix, at, fixes): CodeAction => {
      const edits = textEdits(snapshot, block, fix.edits);
      return {
        title: fix.title,
        kind: CodeActionKind.QuickFix,
        ...(marks.length > 0 ? { diagnostics: marks } : {}),
        // Where several fixes stand side by side the meaning has to be chosen, so none of them is put forward.
        ...(abilities.preferredActions && fix.safe && at === 0 && fixes.length === 1 ? { isPreferred: true } : {}),
        edit: abilities.versionedEdits
          ? { documentChanges: [{ textDocument: { uri: snapshot.uri, version: snapshot.version }, edits }] }
          : { changes: { [snapshot.uri]: edits } },
      };
    });
  });
  return actions;
}

const isQuickFix = (kind: string): boolean => kind === '' || kind === CodeActionKind.QuickFix;

const isSameStart = (a: Diagnostic, b: Diagnostic): boolean =>
  a.range.start.line === b.range.start.line && a.range.start.character === b.range.start.character;

export function fixesOf(snapshot: Snapshot, block: number, finding: Finding): readonly Fix[] {
  const lines = snapshot.document.blocks[block]?.lines.map(({ text }) => text) ?? [];
  return ruleOf(finding.code)?.fixes?.({ finding, lines }) ?? [];
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

/** Edits in the order of the text; one that overlaps the edit before it is left out, and line ends are the document’s own. */
function textEdits(snapshot: Snapshot, block: number, edits: readonly Edit[]): TextEdit[] {
  const end = lineEndOf(snapshot);
  const sorted = [...edits].sort((a, b) => a.line - b.line || a.start - b.start);
  return sorted
    .filter((edit, at) => {
      const before = sorted[at - 1];
      return !before || before.line < edit.line || before.end <= edit.start;
    })
    .map((edit) => ({ range: snapshot.range(block, edit), newText: edit.text.replace(/\r\n|\r|\n/g, end) }));
}
