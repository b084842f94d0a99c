/** Stands around every request, so that none of them can hold up or end the server. */
import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import type { Session } from './session';
import type { Snapshot } from './snapshot';

interface AboutDocument {
  readonly textDocument: { readonly uri: string };
}

type Answer<R> = R | null | ResponseError<void>;

/**
 * A handler that lets one turn of the event loop pass, so that a cancellation or a newer text behind the request is
 * seen first. A cancelled request is answered as such, one about a text that has changed meanwhile as outdated. A
 * feature that fails is logged and answers nothing.
 */
export const guard =
  <P extends AboutDocument, R>(
    name: string,
    session: Session,
    log: (message: string) => void,
    feature: (snapshot: Snapshot, params: P) => R | null,
  ): ((params: P, token: CancellationToken) => Promise<Answer<R>>) =>
  async (params, token) => {
    const { uri } = params.textDocument;
    const version = session.snapshot(uri)?.version;
    await turn();
    await session.ready(uri);
    if (token.isCancellationRequested) return new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled');
    const snapshot = session.snapshot(uri);
    if (!snapshot) return null;
    if (snapshot.version !== version) return new ResponseError(LSPErrorCodes.ContentModified, 'the text has changed');
    try {
      return feature(snapshot, params);
    } catch (error) {
      log(`${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
      return null;
    }
  };

const turn = (): Promise<void> =>
  new Promise((resolve) => {
    // Browsers have no setImmediate.
    if (typeof setImmediate === 'function') setImmediate(resolve);
    else setTimeout(resolve, 0);
  });
