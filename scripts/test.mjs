import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { installWhatIsMissing } from './install.mjs';
import { onBuildMachine, root } from './project.mjs';
import { fail, mustRun, node } from './run.mjs';
import { missingForWorkbench } from './workbench/needs.mjs';
import { vsix } from './workbench/places.mjs';

const results = 'test-output/results.json';

try {
  // A run that breaks off early must not leave the totals of an earlier one behind.
  rmSync(join(root, results), { force: true });
  await installWhatIsMissing();
  const withWorkbench = canTestWorkbench();
  await (withWorkbench ? prepareWorkbench() : mustRun(process.execPath, ['scripts/build.mjs']));
  console.log('Checking the types …');
  await mustRun(process.execPath, ['node_modules/typescript/bin/tsc', '--noEmit']);

  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${results}`];
  const projects = withWorkbench ? [] : ['--project=unit'];
  process.exit(
    await node(['node_modules/vitest/vitest.mjs', 'run', ...reporters, ...projects, ...process.argv.slice(2)]),
  );
} catch (error) {
  fail(error);
}

/** Elsewhere the tests in the real editor may be left out, but not on a build machine. */
function canTestWorkbench() {
  const missing = missingForWorkbench();
  if (missing.length === 0) return true;
  const list = missing.join(', ');
  if (onBuildMachine) throw new Error(`The workbench tests cannot run here: ${list} missing`);
  console.log(`The workbench tests are left out: ${list} missing.`);
  return false;
}

/** Packing builds as well; it is done before any test starts, since tests of the command run from the same folder. */
async function prepareWorkbench() {
  const [{ packExtension }, { installEditor }] = await Promise.all([
    import('./workbench/pack.mjs'),
    import('./workbench/editor.mjs'),
  ]);
  await packExtension(vsix);
  await installEditor();
}
