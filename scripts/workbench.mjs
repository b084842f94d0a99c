import { join } from 'node:path';
import { installWhatIsMissing } from './install.mjs';
import { root } from './project.mjs';
import { fail } from './run.mjs';

const preferredPort = 8421;

try {
  await installWhatIsMissing();
  const { addressOf, serveWorkbench } = await import('./workbench/serve.mjs');
  const server = await serveWorkbench({ name: 'workbench', port: Number(process.env.PORT ?? preferredPort) });
  console.log(`\nThe editor is open at ${addressOf(server.address, join(root, 'examples'))}\nCtrl+C ends it.`);
  process.on('SIGINT', () => server.stop().then(() => process.exit(0)));
  process.on('SIGTERM', () => server.stop().then(() => process.exit(0)));
} catch (error) {
  fail(error);
}
