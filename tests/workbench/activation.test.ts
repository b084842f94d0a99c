import { expect } from 'vitest';
import { lineText, patience, runCommand, screenshot, test } from './editor';

test('nothing is started without a file of the notation, and little time is taken with one', async ({ openText }) => {
  const page = await openText('plain.txt', 'order A\n', 'nothing-of-ours');
  await runCommand(page, 'Developer: Show Running Extensions');
  const list = page.locator('.runtime-extensions-editor .monaco-list-rows');
  await list.locator('.monaco-list-row').first().waitFor();
  expect(await list.textContent()).not.toContain('Lentil');

  const other = await openText('a.lentil', 'order A\n  R           -4.50 -0.75 x 022\n', 'one-file');
  await expect.poll(() => lineText(other, 'R  '), { timeout: patience }).toContain('-5.25');
  await runCommand(other, 'Developer: Show Running Extensions');
  const own = other.locator('.runtime-extensions-editor .monaco-list-row', { hasText: 'Lentil' });
  await expect
    .poll(async () => (await own.first().textContent()) ?? '', { timeout: patience })
    .toMatch(/Activation: \d+ ?ms/);
  const told = (await own.first().textContent()) ?? '';
  console.info(`Activation of the extension: ${/Activation: (\d+ ?ms)/.exec(told)?.[1]}`);
  await screenshot(other, 'activation');
});
