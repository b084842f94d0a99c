import { expect, test } from 'vitest';
import { ACTION_COMMANDS } from '../../client/actions';
import manifest from '../../package.json';
import { ACTION_KINDS } from '../../server/features/code-actions';

test.each(ACTION_COMMANDS)(
  'the command $command is listed, and asks for actions that the server has',
  ({ command, kind }) => {
    expect(manifest.contributes.commands).toContainEqual(expect.objectContaining({ command, category: 'Lentil' }));
    expect(ACTION_KINDS.filter((one) => one === kind || one.startsWith(`${kind}.`))).not.toEqual([]);
  },
);
