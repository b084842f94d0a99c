import { expect } from 'vitest';
import { lineText, patience, runCommand, screenshot, test } from './editor';

test('the first steps open a sample that shows its faults', async ({ openText }) => {
  const page = await openText('first-steps.lentil', 'order A\n');
  await runCommand(page, 'Welcome: Open Walkthrough...');
  await page.locator('.quick-input-list .monaco-list-row', { hasText: 'Start with Lentil' }).click();
  const steps = page.locator('.gettingStartedDetailsContent');
  await steps.getByText('Look at the job sheet').waitFor();
  await screenshot(page, 'first-steps');
  await steps.getByRole('button', { name: 'Open a Sample', exact: true }).click();
  await expect.poll(() => lineText(page, 'order SS-2001'), { timeout: patience }).toContain('reject: R axis');
});

test('the task checks the files of the workspace and its findings are matched', async ({ openText, write }) => {
  write('task/closed.lentil', 'order B\n  R 1.50\n');
  const page = await openText('a.lentil', 'order A\n  both -1.00\n', 'task');
  await runCommand(page, 'Tasks: Run Test Task');
  const question = page.locator('.quick-input-widget');
  const terminal = page.locator('.terminal-wrapper .xterm-rows');
  // Which task, and whether its output is to be looked through: the first answer is the right one each time.
  await expect
    .poll(
      async () => {
        if (await question.isVisible()) await question.locator('input').first().press('Enter');
        return (await terminal.count()) > 0;
      },
      { timeout: patience },
    )
    .toBe(true);
  await runCommand(page, 'View: Focus Problems');
  const problems = page.locator('.markers-panel .monaco-list-row');
  await expect
    .poll(async () => (await problems.allTextContents()).join('\n'), { timeout: patience })
    .toContain('closed.lentil');
  await screenshot(page, 'check-task');
});
