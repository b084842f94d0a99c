/// <reference lib="dom" />
import { existsSync, readFileSync } from 'node:fs';
import axe from 'axe-core';
import type { Frame, Page } from 'playwright-core';
import { expect } from 'vitest';
import { goTo, patience, runCommand, screenshot, THEMES, test, viewFrame } from './editor';

const text = `standard z80.1-2015

order RV-1
  R           -2.00
  make        R
  supply      uncut
  reading 2026-11-24
    R         -9.50
    prism     R 0

order RV-2
  both        -1.00
`;

/** Has the report made with a text open, and waits until it is shown. */
async function openReport(page: Page): Promise<Frame> {
  await runCommand(page, 'Lentil: Show the Quality Report');
  const frame = await viewFrame(page);
  await frame.locator('h1', { hasText: 'Quality report' }).waitFor({ timeout: patience });
  return frame;
}

test('the report on the workspace leads to its orders, and is made anew when asked', async ({ openText }) => {
  const page = await openText('report/jump.lentil', text);
  const frame = await openReport(page);
  expect(await frame.locator('h2').allTextContents()).toContain('Orders that wait');
  // The examples lie in the same workspace.
  expect(await frame.locator('.scope').textContent()).toMatch(/^[1-9]\d+ orders/);

  const order = frame
    .locator('section', { hasText: 'Deviations against' })
    .locator('a.order', { hasText: 'jump.lentil:3' });
  await order.focus();
  await page.keyboard.press('Enter');
  await page.locator('#status\\.editor\\.selection', { hasText: 'Ln 3, Col 1' }).waitFor();
  // The order stands beside the report, which is still in sight.
  expect(await page.locator('iframe.webview').isVisible()).toBe(true);
  await screenshot(page, 'report-beside-its-order');

  await goTo(page, 8, 15);
  await page.keyboard.press('Shift+End');
  await page.keyboard.type('-2.00');
  // A text left unsaved would be opened again in the windows of other tests.
  await page.keyboard.press('Control+s');
  await frame.locator('button', { hasText: 'Make It Anew' }).click();
  await expect
    .poll(async () => (await viewFrame(page)).locator('a.order', { hasText: 'jump.lentil:3' }).count(), {
      timeout: patience,
    })
    .toBe(0);
});

test('the view lets nothing in from outside, and its buttons and links are reached by key', async ({ openText }) => {
  const page = await openText('report/policy.lentil', text);
  const frame = await openReport(page);
  const policy = await frame.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
  expect(policy).toMatch(/^default-src 'none'; style-src 'nonce-[\w-]+'; script-src 'nonce-[\w-]+'$/);
  await frame.locator('button', { hasText: 'Make It Anew' }).focus();
  const focused = (): Promise<string> => frame.evaluate(() => document.activeElement?.textContent ?? '');
  await page.keyboard.press('Tab');
  expect(await focused()).toBe('Save as HTML…');
  await page.keyboard.press('Tab');
  expect(await focused()).toBe('At a glance');
});

test('it is saved as a page that runs nothing', async ({ openText }) => {
  const page = await openText('report/saved.lentil', text);
  const frame = await openReport(page);
  await frame.locator('button', { hasText: 'Save as HTML' }).click();
  const path = page.locator('.quick-input-widget input').first();
  await expect.poll(() => path.inputValue(), { timeout: patience }).toMatch(/Quality report, [\d-]+ to [\d-]+\.html$/);
  const target = await path.inputValue();
  await page.locator('.quick-input-widget .monaco-button', { hasText: 'OK' }).click();
  await expect.poll(() => existsSync(target), { timeout: patience }).toBe(true);
  await expect.poll(() => readFileSync(target, 'utf8')).toContain('<h1>Quality report</h1>');
  expect(readFileSync(target, 'utf8')).not.toMatch(/<script|class="order"/);
});

test.for(Object.entries(THEMES))(
  'nothing serious keeps anybody from reading it: %s',
  async ([name, theme], { openText, set }) => {
    set({ 'workbench.colorTheme': theme });
    const page = await openText(`report/${name}.lentil`, text);
    const frame = await openReport(page);
    await frame.evaluate(axe.source);
    const { violations } = await frame.evaluate(() => (window as unknown as { axe: typeof axe }).axe.run());
    const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
    expect(grave.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 300)}`)).toEqual([]);
    await screenshot(page, `report-${name}`);
    await frame.locator('#deviations').scrollIntoViewIfNeeded();
    await screenshot(page, `report-${name}-charts`);
  },
);
