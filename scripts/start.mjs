import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './project.mjs';
import { fail, mustRun, node } from './run.mjs';

try {
  await mustRun(process.execPath, ['scripts/build.mjs']);
  console.log('\n$ lentil check examples/\n');
  // The examples show orders that fail on purpose, so status 1 is what they are for; 2 would be a broken program.
  const status = await node(['dist/lentil.mjs', 'check', 'examples/']);
  if (status > 1) process.exit(status);

  const { name, version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  console.log(`
To open the examples in the editor:
  npm run package                                        packs ${name}-${version}.vsix
  code --install-extension ${name}-${version}.vsix && code examples/
or, without an editor installed, in the browser:
  npm run workbench
The command: node dist/lentil.mjs --help
`);
} catch (error) {
  fail(error);
}
