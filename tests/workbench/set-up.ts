import { cpSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { serveWorkbench } from '../../scripts/workbench/serve.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the editor with the packed extension is served. */
    readonly editor: string;
    /** The folder that the tests write their files to and the editor opens. */
    readonly workspace: string;
  }
}

/** Serves one editor for all test files, on a copy of the examples, so that typing never touches the project's own. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const output = join(project.config.root, 'test-output');
  const workspace = join(output, 'workspace');
  rmSync(join(output, 'screenshots'), { recursive: true, force: true });
  rmSync(workspace, { recursive: true, force: true });
  mkdirSync(workspace, { recursive: true });
  cpSync(join(project.config.root, 'examples'), join(workspace, 'examples'), { recursive: true });

  const server = await serveWorkbench({ name: 'tests' });
  project.provide('editor', server.address);
  project.provide('workspace', workspace);
  return server.stop;
}
