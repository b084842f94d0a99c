/** The server in a worker of a browser. It reads no files, so only bench files that are open in the editor are found. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { serve } from './connection';

type Port = ConstructorParameters<typeof BrowserMessageReader>[0];

const worker = globalThis as unknown as Port;
const connection = createConnection(new BrowserMessageReader(worker), new BrowserMessageWriter(worker));

serve(connection, { read: async () => null });
connection.listen();
