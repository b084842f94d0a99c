import { installWhatIsMissing } from './install.mjs';
import { fail, mustRun, node } from './run.mjs';

const bundled = 'test-output/bench/run.mjs';

try {
  await installWhatIsMissing();
  await mustRun(process.execPath, ['scripts/build.mjs']);
  const { build } = await import('esbuild');
  // Packages stay outside, so that a bench can also measure a peer as its users would load it.
  await build({
    entryPoints: ['tests/bench/run.ts'],
    outfile: bundled,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'warning',
  });
  process.exit(await node(['--expose-gc', bundled, ...process.argv.slice(2)]));
} catch (error) {
  fail(error);
}
