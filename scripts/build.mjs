import { installWhatIsMissing } from './install.mjs';
import { fail } from './run.mjs';

try {
  await installWhatIsMissing();
  // The bundler is a package itself, so it can only be loaded once the packages are there.
  const { bundleAll } = await import('./bundle.mjs');
  await bundleAll();
} catch (error) {
  fail(error);
}
