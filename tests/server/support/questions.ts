/** Every question an editor asks about a document, by the name of the feature that answers it. */
import {
  CodeActionRequest,
  CodeLensRequest,
  CompletionRequest,
  DefinitionRequest,
  DocumentFormattingRequest,
  DocumentHighlightRequest,
  DocumentLinkRequest,
  DocumentOnTypeFormattingRequest,
  DocumentRangeFormattingRequest,
  DocumentSymbolRequest,
  FoldingRangeRequest,
  HoverRequest,
  InlayHintRequest,
  type Position,
  PrepareRenameRequest,
  type ProtocolConnection,
  type Range,
  ReferencesRequest,
  RenameRequest,
  SelectionRangeRequest,
  SemanticTokensRangeRequest,
  SemanticTokensRequest,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver/node';

export interface Question {
  readonly uri: string;
  readonly position: Position;
}

type Ask = (client: ProtocolConnection, question: Question) => Promise<unknown>;

const LAYOUT = { tabSize: 2, insertSpaces: true };
export const EVERYTHING: Range = { start: { line: 0, character: 0 }, end: { line: 1_000_000, character: 0 } };

const at = ({ uri, position }: Question) => ({ textDocument: { uri }, position });
const about = ({ uri }: Question) => ({ textDocument: { uri } });

export const QUESTIONS: Readonly<Record<string, Ask>> = {
  jobSheetAt: (client, question) => client.sendRequest('lentil/sheet', at(question)),
  orderStatus: (client, question) => client.sendRequest('lentil/orderStatus', at(question)),
  orderList: (client) => client.sendRequest('lentil/orders', {}),
  codeActions: (client, question) =>
    client.sendRequest(CodeActionRequest.type, {
      ...about(question),
      range: { start: question.position, end: question.position },
      context: { diagnostics: [] },
    }),
  codeLens: (client, question) => client.sendRequest(CodeLensRequest.type, about(question)),
  completion: (client, question) => client.sendRequest(CompletionRequest.type, at(question)),
  definition: (client, question) => client.sendRequest(DefinitionRequest.type, at(question)),
  documentHighlights: (client, question) => client.sendRequest(DocumentHighlightRequest.type, at(question)),
  documentLinks: (client, question) => client.sendRequest(DocumentLinkRequest.type, about(question)),
  documentSymbols: (client, question) => client.sendRequest(DocumentSymbolRequest.type, about(question)),
  folding: (client, question) => client.sendRequest(FoldingRangeRequest.type, about(question)),
  formatting: (client, question) =>
    client.sendRequest(DocumentFormattingRequest.type, { ...about(question), options: LAYOUT }),
  hover: (client, question) => client.sendRequest(HoverRequest.type, at(question)),
  inlayHints: (client, question) =>
    client.sendRequest(InlayHintRequest.type, { ...about(question), range: EVERYTHING }),
  onTypeFormatting: (client, question) =>
    client.sendRequest(DocumentOnTypeFormattingRequest.type, { ...at(question), ch: '\n', options: LAYOUT }),
  prepareRename: (client, question) => client.sendRequest(PrepareRenameRequest.type, at(question)),
  rangeFormatting: (client, question) =>
    client.sendRequest(DocumentRangeFormattingRequest.type, {
      ...about(question),
      range: EVERYTHING,
      options: LAYOUT,
    }),
  references: (client, question) =>
    client.sendRequest(ReferencesRequest.type, { ...at(question), context: { includeDeclaration: true } }),
  rename: (client, question) => client.sendRequest(RenameRequest.type, { ...at(question), newName: 'NEW-1' }),
  selectionRanges: (client, question) =>
    client.sendRequest(SelectionRangeRequest.type, { ...about(question), positions: [question.position] }),
  semanticTokens: (client, question) => client.sendRequest(SemanticTokensRequest.type, about(question)),
  semanticTokensInRange: (client, question) =>
    client.sendRequest(SemanticTokensRangeRequest.type, { ...about(question), range: EVERYTHING }),
  workspaceSymbols: (client) => client.sendRequest(WorkspaceSymbolRequest.type, { query: '' }),
};

/** Asks everything; a refusal is an answer like any other. */
export async function askEverything(client: ProtocolConnection, question: Question): Promise<Record<string, unknown>> {
  const answers: Record<string, unknown> = {};
  for (const [name, ask] of Object.entries(QUESTIONS)) {
    answers[name] = await ask(client, question).catch(({ code, message }) => ({ code, message }));
  }
  return answers;
}
