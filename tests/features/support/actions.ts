/** Code actions at a marked place, and the texts they lead to. */
import type {
  CodeAction,
  CodeActionTriggerKind,
  SnippetTextEdit,
  TextDocumentEdit,
  TextEdit,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Abilities } from '../../../server/abilities';
import { codeActions } from '../../../server/features/code-actions';
import { withoutStops } from '../../../server/features/stops';
import { options, sample } from './sample';

export interface AskingFor {
  readonly only?: string[];
  readonly triggerKind?: CodeActionTriggerKind;
  readonly standard?: string;
  readonly abilities?: Partial<Abilities>;
}

export function actionsAt(marked: string, { only, triggerKind, standard, abilities }: AskingFor = {}): CodeAction[] {
  const { snapshot, position } = sample(marked, standard);
  const context = { diagnostics: [], ...(only ? { only } : {}), ...(triggerKind ? { triggerKind } : {}) };
  const params = { textDocument: { uri: '' }, range: { start: position, end: position }, context };
  const { abilities: usual, ...rest } = options();
  return codeActions(snapshot, params, { ...rest, abilities: { ...usual, ...abilities } }) ?? [];
}

export const changesOf = ({ edit }: CodeAction): TextDocumentEdit[] =>
  (edit?.documentChanges ?? []) as TextDocumentEdit[];

/** The text that an action leads to; places to fill in are left empty. */
export function applied(marked: string, action: CodeAction): string {
  const edits = changesOf(action).flatMap((change) => change.edits);
  const plain = edits.map((edit) =>
    'newText' in edit ? edit : { range: edit.range, newText: withoutStops((edit as SnippetTextEdit).snippet.value) },
  );
  return TextDocument.applyEdits(TextDocument.create('', 'lentil', 0, sample(marked).text), plain as TextEdit[]);
}

/** The texts that the actions at a place lead to, by their titles. */
export const results = (marked: string, asking: AskingFor = {}): Record<string, string> =>
  Object.fromEntries(actionsAt(marked, asking).map((action) => [action.title, applied(marked, action)]));
