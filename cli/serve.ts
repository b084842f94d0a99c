/** `lentil serve`: the language server. Nothing but the protocol may be written to standard output from here on. */
import { UnusableArgument } from './unusable-argument';

export async function serve(args: readonly string[], { stdio }: { readonly stdio?: boolean }): Promise<0> {
  if (!stdio && !args.includes('--node-ipc')) throw new UnusableArgument('say how to speak: lentil serve --stdio');
  const { serveStdio } = await import('../server/node');
  serveStdio();
  return 0;
}
