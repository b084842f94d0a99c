/** A task that runs `lentil check` over a workspace folder. There is none in a workspace that is not trusted. */
import {
  type Disposable,
  l10n,
  ProcessExecution,
  Task,
  TaskGroup,
  type TaskProvider,
  tasks,
  type Uri,
  type WorkspaceFolder,
  workspace,
} from 'vscode';
import { ID } from './language-client';

const MATCHER = '$lentil';

interface CheckDefinition {
  readonly type: typeof ID;
  readonly task: 'check';
  /** Files and folders, from the workspace folder; the whole folder where none are named. */
  readonly paths?: readonly string[];
  /** Counts warnings as errors. */
  readonly strict?: boolean;
}

/** How the command is started: a program that runs it, and its environment. */
export interface Runner {
  readonly program: string;
  readonly command: Uri;
  readonly env: Readonly<Record<string, string>>;
}

export const checkTask = (runner: Runner): Disposable => tasks.registerTaskProvider(ID, provider(runner));

const provider = (runner: Runner): TaskProvider => ({
  provideTasks: () =>
    workspace.isTrusted
      ? (workspace.workspaceFolders ?? []).map((folder) => taskFor({ type: ID, task: 'check' }, folder, runner))
      : [],
  resolveTask: ({ definition, scope }) => {
    const folder = typeof scope === 'object' ? scope : workspace.workspaceFolders?.[0];
    if (definition.task !== 'check' || !folder || !workspace.isTrusted) return undefined;
    return taskFor(definition as unknown as CheckDefinition, folder, runner);
  },
});

function taskFor(definition: CheckDefinition, folder: WorkspaceFolder, { program, command, env }: Runner): Task {
  const paths = definition.paths && definition.paths.length > 0 ? definition.paths : ['.'];
  const args = [command.fsPath, 'check', ...(definition.strict ? ['--strict'] : []), ...paths];
  const execution = new ProcessExecution(program, args, { cwd: folder.uri.fsPath, env: { ...env } });
  const task = new Task({ ...definition }, folder, l10n.t('check'), ID, execution, MATCHER);
  task.group = TaskGroup.Test;
  return task;
}
