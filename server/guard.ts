/** Stands around every request, so that none of them can hold up or end the server. */
import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import type { Session } from './session';
import type { Snapshot } from './snapshot';
import { turn } from './turn';

interface AboutDocument {
  readonly textDocument: { readonly uri: string };
}

type Answer<R> = R | null | ResponseError<void>;

/**
 * A handler that lets one turn of the event loop pass, so that a cancellation or a newer text behind the request is
 * seen first. A cancelled request is answered as such, one about a text that has changed meanwhile as outdated. A
 * feature that fails is logged and answers nothing.
 * @param before what the feature has to wait for
 */
export const guard =
  <P extends AboutDocument, R>(
    name: string,
    session: Session,
    log: (message: string) => void,
    feature: (snapshot: Snapshot, params: P) => R | null,
    before?: (snapshot: Snapshot, params: P) => Promise<unknown>,
  ): ((params: P, token: CancellationToken) => Promise<Answer<R>>) =>
  async (params, token) => {
    const { uri } = params.textDocument;
    const version = session.snapshot(uri)?.version;
    await turn();
    await session.ready(uri);
    const early = session.snapshot(uri);
    if (before && early && !token.isCancellationRequested) await before(early, params);
    if (token.isCancellationRequested) return cancelled();
    const snapshot = session.snapshot(uri);
    if (!snapshot) return null;
    if (snapshot.version !== version) return new ResponseError(LSPErrorCodes.ContentModified, 'the text has changed');
    return attempt(name, log, () => feature(snapshot, params));
  };

/** The same for a request about the whole workspace. */
export const guardWithout =
  <P, R>(
    name: string,
    log: (message: string) => void,
    feature: (params: P) => R | null,
    before: () => Promise<unknown>,
  ): ((params: P, token: CancellationToken) => Promise<Answer<R>>) =>
  async (params, token) => {
    await turn();
    await before();
    if (token.isCancellationRequested) return cancelled();
    return attempt(name, log, () => feature(params));
  };

/** The same for an answer that is long in the making and looks after cancellation while it is made. */
export const guardLong =
  <P, R>(
    name: string,
    log: (message: string) => void,
    work: (params: P, token: CancellationToken) => Promise<R | null>,
  ): ((params: P, token: CancellationToken) => Promise<Answer<R>>) =>
  async (params, token) => {
    await turn();
    try {
      const answer = await work(params, token);
      return token.isCancellationRequested ? cancelled() : answer;
    } catch (error) {
      return failed(name, log, error);
    }
  };

const cancelled = (): ResponseError<void> => new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled');

function attempt<R>(name: string, log: (message: string) => void, feature: () => R | null): R | null {
  try {
    return feature();
  } catch (error) {
    return failed(name, log, error);
  }
}

function failed(name: string, log: (message: string) => void, error: unknown): null {
  log(`${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  return null;
}
