import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, inject } from 'vitest';
import { goTo, lineText, patience, runCommand, test } from './editor';

const UNSIGNED = 'order MD-1\n  R           -1.25 -0.50 x 090\n  L           1.50 -0.50 x 090\n  pd          62\n';

/** Opens the list of actions at the cursor, goes down to the one that reads so, and takes it. */
async function takeAction(page: Page, title: RegExp): Promise<void> {
  const actions = page.locator('.action-widget .monaco-list-row.action');
  await expect
    .poll(
      async () => {
        await page.keyboard.press('Escape');
        await page.keyboard.press('Control+.');
        await page.waitForTimeout(1_500);
        return actions.filter({ hasText: title }).count();
      },
      { timeout: patience },
    )
    .toBeGreaterThan(0);
  const chosen = page.locator('.action-widget .monaco-list-row.action.focused', { hasText: title });
  for (let step = await actions.count(); step > 0 && (await chosen.count()) === 0; step--)
    await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
}

test('a quick fix takes an error away', async ({ openText }) => {
  const page = await openText('mending.lentil', UNSIGNED);
  const underlined = page.locator('.squiggly-error');
  await underlined.first().waitFor();
  await goTo(page, 3, 16);
  await takeAction(page, /minus|-1\.50/i);
  await underlined.first().waitFor({ state: 'detached' });
  expect(await lineText(page, 'L  ')).toContain('L           -1.50 -0.50 x 090');
});

test('a power is written in its other form', async ({ openText }) => {
  const page = await openText('transposing.lentil', UNSIGNED.replace(' 1.50', ' -1.50'));
  await goTo(page, 2, 16);
  await takeAction(page, /plus/i);
  // -1.25 + -0.50 = -1.75, sign of the cylinder changed, axis turned by 90 degrees.
  await expect.poll(() => lineText(page, 'R  '), { timeout: patience }).toContain('-1.75 +0.50 x 180');
});

test('an instrument is renamed in every file that names it', async ({ openText, write }) => {
  write('renaming/week.lentil', 'order RN-1\n  both -1.00\n  reading 2026-11-24 with FOC-OLD\n    R -1.00\n');
  const page = await openText('renaming/bench.lentil', 'instrument FOC-OLD\n  reads-to 0.125\n');
  await goTo(page, 1, 14);
  const box = page.locator('.rename-box input');
  await expect
    .poll(
      async () => {
        await page.keyboard.press('F2');
        await page.waitForTimeout(1_000);
        return box.isVisible();
      },
      { timeout: patience },
    )
    .toBe(true);
  await box.fill('FOC-NEW');
  await page.keyboard.press('Enter');
  await expect.poll(() => lineText(page, 'instrument'), { timeout: patience }).toContain('FOC-NEW');
  await runCommand(page, 'File: Save All');
  const other = join(inject('workspace'), 'renaming', 'week.lentil');
  await expect.poll(() => readFileSync(other, 'utf8'), { timeout: patience }).toContain('with FOC-NEW');
});

test('a file is laid out when it is saved', async ({ openText, set }) => {
  set({ '[lentil]': { 'editor.formatOnSave': true } });
  const page = await openText('layout.lentil', 'order LY-1\nR    -1.25 -0.50 x 090\n pd 62\n');
  await expect.poll(() => lineText(page, 'order LY-1'), { timeout: patience }).toContain('unread');
  await goTo(page, 1, 1);
  await page.keyboard.press('Control+End');
  await page.keyboard.type('# done');
  await page.keyboard.press('Control+s');
  const file = join(inject('workspace'), 'layout.lentil');
  await expect
    .poll(() => readFileSync(file, 'utf8'), { timeout: patience })
    .toMatch(/^ {2}R {2,}-1\.25 -0\.50 x 090$/m);
  expect(readFileSync(file, 'utf8')).toMatch(/^ {2}pd {2,}62$/m);
});
