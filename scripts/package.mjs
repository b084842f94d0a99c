import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { installWhatIsMissing } from './install.mjs';
import { root } from './project.mjs';
import { fail } from './run.mjs';

try {
  await installWhatIsMissing();
  const { packExtension } = await import('./workbench/pack.mjs');
  const { name, version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  await packExtension(join(root, `${name}-${version}.vsix`));
} catch (error) {
  fail(error);
}
