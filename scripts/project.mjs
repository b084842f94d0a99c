import { fileURLToPath } from 'node:url';

/** The project's folder; every script works from there, wherever it was started. */
export const root = fileURLToPath(new URL('..', import.meta.url));

/** True on a build machine, where a missing tool is a failure and not a reason to skip. */
export const onBuildMachine = process.env.CI === 'true' || process.env.CI === '1';
