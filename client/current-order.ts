/** Where the cursor last stood in a text of the notation. It stays there while a view beside the text has the focus. */
import { type Disposable, EventEmitter, languages, type TextEditor, type Uri, window, workspace } from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import { ID } from './language-client';

interface CursorPlace {
  readonly uri: Uri;
  readonly line: number;
  readonly character: number;
}

export class CurrentOrder implements Disposable {
  readonly #client: BaseLanguageClient;
  readonly #changed = new EventEmitter<void>();
  readonly #listeners: Disposable[];
  #place: CursorPlace | null = null;

  /** The cursor has moved, the text was edited or judged again, or the server has come back. */
  readonly onChange = this.#changed.event;

  constructor(client: BaseLanguageClient) {
    this.#client = client;
    this.#listeners = [
      this.#changed,
      window.onDidChangeActiveTextEditor((editor) => this.#moved(editor)),
      window.onDidChangeTextEditorSelection(({ textEditor }) => this.#moved(textEditor)),
      workspace.onDidChangeTextDocument(({ document: { uri } }) => {
        if (this.isIn(uri)) this.#changed.fire();
      }),
      // A slow bench or settings file may have come, and the order is judged again without an edit.
      languages.onDidChangeDiagnostics(({ uris }) => {
        if (uris.some((uri) => this.isIn(uri))) this.#changed.fire();
      }),
      workspace.onDidCloseTextDocument(({ uri }) => {
        if (this.isIn(uri)) this.#put(null);
      }),
      client.onDidChangeState(({ newState }) => {
        if (newState === State.Running) this.#changed.fire();
      }),
    ];
    this.#moved(window.activeTextEditor);
  }

  get isAnywhere(): boolean {
    return this.#place !== null;
  }

  isIn(uri: Uri): boolean {
    return this.#place?.uri.toString() === uri.toString();
  }

  /** What the server answers about the place; null where there is none, or no answer. */
  async ask<A>(method: string, more: object = {}): Promise<A | null> {
    const place = this.#place;
    if (!place || this.#client.state !== State.Running) return null;
    const { uri, line, character } = place;
    const textDocument = { uri: this.#client.code2ProtocolConverter.asUri(uri) };
    return this.#client.sendRequest<A | null>(method, { textDocument, position: { line, character }, ...more });
  }

  dispose(): void {
    for (const one of this.#listeners) one.dispose();
  }

  #moved(editor: TextEditor | undefined): void {
    if (editor?.document.languageId !== ID || editor !== window.activeTextEditor) return;
    const { line, character } = editor.selection.active;
    this.#put({ uri: editor.document.uri, line, character });
  }

  #put(place: CursorPlace | null): void {
    this.#place = place;
    this.#changed.fire();
  }
}
