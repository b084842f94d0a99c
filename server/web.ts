/** The server in a worker of a browser. It has no files of its own and asks the editor for them. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { serve } from './connection';
import { NO_FILES } from './platform';

type Port = ConstructorParameters<typeof BrowserMessageReader>[0];

const worker = globalThis as unknown as Port;
const connection = createConnection(new BrowserMessageReader(worker), new BrowserMessageWriter(worker));

serve(connection, NO_FILES);
connection.listen();
