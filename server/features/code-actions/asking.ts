/** What every action starts from, and how its edits become an answer. */
import type {
  AnnotatedTextEdit,
  CodeAction,
  CodeActionKind,
  CodeActionParams,
  Diagnostic,
  SnippetTextEdit,
  TextEdit,
} from 'vscode-languageserver';
import { type LineSection, type ParsedLine, sectionsOf } from '../../../grammar';
import type { BlockAnalysis, Edit } from '../../../orders';
import type { Site, Snapshot } from '../../snapshot';
import { lineEndOf } from '../lines';
import type { Options } from '../options';
import { literally, withoutStops } from '../stops';

export interface Asking {
  readonly snapshot: Snapshot;
  readonly params: CodeActionParams;
  readonly options: Options;
}

/** The line on which the asked range begins, with what is known of it. */
export interface LineAsked extends Site, ParsedLine {
  readonly analysis: BlockAnalysis;
  readonly text: string;
  readonly section: LineSection['kind'];
}

export function lineAsked({ snapshot, params }: Asking): LineAsked | null {
  const site = snapshot.site(params.range.start);
  const analysis = snapshot.block(site.block);
  const line = analysis.block.lines[site.line];
  if (!line) return null;
  const section = sectionsOf(analysis.block)[site.line]?.kind ?? 'none';
  return { ...site, analysis, section, text: line.text, ...line.parsed(analysis.block.kind) };
}

export interface Draft {
  readonly title: string;
  readonly kind: CodeActionKind;
  readonly edits: readonly (TextEdit | AnnotatedTextEdit | SnippetTextEdit)[];
  readonly marks?: readonly Diagnostic[];
  readonly isPreferred?: boolean;
}

export function actionOf({ snapshot, options: { abilities } }: Asking, draft: Draft): CodeAction {
  const { title, kind, edits, marks = [], isPreferred = false } = draft;
  const { uri, version } = snapshot;
  return {
    title,
    kind,
    ...(marks.length > 0 ? { diagnostics: [...marks] } : {}),
    ...(abilities.preferredActions && isPreferred ? { isPreferred } : {}),
    edit: abilities.versionedEdits
      ? { documentChanges: [{ textDocument: { uri, version }, edits: [...edits] }] }
      : { changes: { [uri]: edits as TextEdit[] } },
  };
}

/** Edits of one block in the order of the text; one that overlaps the edit before it is left out, and line ends are the document’s own. */
export function textEdits(snapshot: Snapshot, block: number, edits: readonly Edit[]): TextEdit[] {
  const end = lineEndOf(snapshot);
  const sorted = [...edits].sort((a, b) => a.line - b.line || a.start - b.start);
  let last: Edit | undefined;
  return sorted.flatMap((edit) => {
    if (last && last.line === edit.line && edit.start < last.end) return [];
    last = edit;
    return [{ range: snapshot.range(block, edit), newText: edit.text.replace(/\r\n|\r|\n/g, end) }];
  });
}

/**
 * New lines below a line of a block, with places to fill in where the editor has them. The edit begins at a first column,
 * since an editor sets lines with such places as deep as the line they are put into.
 */
export function linesBelow(
  { snapshot, options: { abilities } }: Asking,
  block: number,
  line: number,
  lines: string,
): TextEdit | SnippetTextEdit {
  const above = snapshot.document.line(snapshot.firstLine(block) + line);
  const typed = above?.text ?? '';
  const hasNext = above?.end !== '';
  // Below the last line of a text there is no column to begin at, so that line is written once more.
  const place = hasNext ? { line: line + 1, start: 0, end: 0 } : { line, start: 0, end: typed.length };
  const text = hasNext ? `${lines}\n` : `${literally(typed)}\n${lines}`;
  const range = snapshot.range(block, place);
  if (abilities.snippetEdits) return { range, snippet: { kind: 'snippet', value: text } };
  return { range, newText: withoutStops(text).replaceAll('\n', lineEndOf(snapshot)) };
}
