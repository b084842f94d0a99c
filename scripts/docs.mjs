import { installWhatIsMissing } from './install.mjs';
import { fail, mustRun } from './run.mjs';

try {
  await installWhatIsMissing();
  await mustRun(process.execPath, ['node_modules/typedoc/bin/typedoc']);
  console.log('\nThe library’s documentation: docs/library/index.html');
} catch (error) {
  fail(error);
}
