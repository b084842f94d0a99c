import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { root } from '../cli/support/command';
import { folderWith } from '../cli/support/folder';

// `npm run docs` writes the same pages; they are written nowhere in the repository.
test('every function, class and shape of the library is documented', () => {
  const json = join(folderWith({}), 'library.json');
  const typedoc = [join(root, 'node_modules/typedoc/bin/typedoc'), '--json', json, '--pretty', 'false'];
  const { stdout, stderr } = spawnSync(process.execPath, typedoc, { cwd: root, encoding: 'utf8' });
  expect(`${stdout}${stderr}`.split('\n').filter((line) => /warning|error/i.test(line))).toEqual([]);
  const named = (name: string): number => readFileSync(json, 'utf8').split(`"name":"${name}"`).length - 1;
  for (const name of ['evaluate', 'toFhir', 'transpose']) expect(named(name), name).toBeGreaterThan(0);
});
