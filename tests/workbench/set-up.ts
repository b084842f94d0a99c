import { cpSync, mkdirSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { editor } from '../../scripts/workbench/places.mjs';
import { serveWorkbench } from '../../scripts/workbench/serve.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the editor with the packed extension is served. */
    readonly editor: string;
    /** An editor without the extension; a test can install it into the browser from `extensionPath` there. */
    readonly bareEditor: string;
    /** Where the editors serve the built extension, below their own static files. */
    readonly extensionPath: string;
    /** The folder that the tests write their files to and the editor opens. */
    readonly workspace: string;
  }
}

/** Serves the editors for all test files, on a copy of the examples, so that typing never touches the project's own. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const output = join(project.config.root, 'test-output');
  const workspace = join(output, 'workspace');
  rmSync(join(output, 'screenshots'), { recursive: true, force: true });
  rmSync(workspace, { recursive: true, force: true });
  mkdirSync(workspace, { recursive: true });
  cpSync(join(project.config.root, 'examples'), join(workspace, 'examples'), { recursive: true });

  const server = await serveWorkbench({ name: 'tests' });
  const bareServer = await serveWorkbench({
    name: 'tests-bare',
    withExtension: false,
    // A folder opened for the first time is not trusted.
    settings: { 'security.workspace.trust.enabled': true, 'security.workspace.trust.startupPrompt': 'never' },
  });
  project.provide('editor', server.address);
  project.provide('bareEditor', bareServer.address);
  project.provide('extensionPath', serveBuild(project.config.root));
  project.provide('workspace', workspace);
  return async () => {
    await Promise.all([server.stop(), bareServer.stop()]);
  };
}

/** An extension for the browser is fetched from an address, which has to be the editor's own to be let in. */
function serveBuild(root: string): string {
  const name = 'lentil-build';
  rmSync(join(editor, name), { force: true });
  symlinkSync(root, join(editor, name));
  return name;
}
