/// <reference lib="dom" />
import axe from 'axe-core';
import type { Frame, Page } from 'playwright-core';
import { expect } from 'vitest';
import { documentationImage, goTo, patience, runCommand, screenshot, THEMES, test, viewFrame } from './editor';

const text = `standard z80.1-2015

order QL-1042
  R           -4.50 -0.75 x 022
  L           -4.25 -1.00 x 168
  add         +2.00
  pd          63 near 60
  height      17
  design      bifocal flat-top 28
  lens        resin-1.50
  base-curve  4.00
  frame       A 52  B 36  DBL 18  ED 55
  supply      glazed

  reading 2026-11-24
    R         -4.50 -0.75 x 030
    L         -4.25 -1.00 x 168
    pd        63 near 60
    prism     R 0  L 0
    height    R 17  L 17

order QL-1043
  both        -1.00
  pd          61
`;

/** Opens the sheet with the cursor in the first order. */
async function openSheet(page: Page): Promise<Frame> {
  await goTo(page, 4, 3);
  await runCommand(page, 'Lentil: Show the Job Sheet');
  const frame = await viewFrame(page);
  await frame.locator('h1', { hasText: 'Job QL-1042' }).waitFor({ timeout: patience });
  return frame;
}

test('the sheet follows the cursor and every edit', async ({ openText }) => {
  const page = await openText('sheet.lentil', text);
  const frame = await openSheet(page);
  expect(await frame.locator('.because').textContent()).toContain('R axis 8°');
  expect(await frame.locator('svg.picture').count()).toBeGreaterThan(5);

  await goTo(page, 16, 29);
  await page.keyboard.press('Shift+End');
  await page.keyboard.type('022');
  await frame.locator('.because', { hasNotText: 'R axis' }).waitFor();
  expect(await frame.locator('tr', { hasText: 'R axis' }).locator('.outcome').textContent()).toContain('pass');

  await goTo(page, 23, 3);
  await frame.locator('h1', { hasText: 'Job QL-1043' }).waitFor();
  expect(await frame.locator('figcaption').first().textContent()).toContain('No frame given');
  await goTo(page, 1, 1);
  await frame.getByText('Put the cursor into an order').waitFor();
  expect(await frame.locator('button').first().isDisabled()).toBe(true);
});

test('the view lets nothing in from outside, and its buttons are reached by key', async ({ openText }) => {
  const page = await openText('sheet-policy.lentil', text);
  const frame = await openSheet(page);
  const policy = await frame.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
  expect(policy).toMatch(/^default-src 'none'; style-src 'nonce-[\w-]+'; script-src 'nonce-[\w-]+'$/);
  await frame.locator('button', { hasText: 'Save as HTML' }).focus();
  await page.keyboard.press('Tab');
  expect(await frame.evaluate(() => document.activeElement?.textContent)).toContain('Save Picture as SVG');
});

test.for(Object.entries(THEMES))(
  'nothing serious keeps anybody from reading it: %s',
  async ([name, theme], { openText, set }) => {
    set({ 'workbench.colorTheme': theme });
    const page = await openText(`sheet-${name}.lentil`, text);
    const frame = await openSheet(page);
    await frame.evaluate(axe.source);
    const { violations } = await frame.evaluate(() => (window as unknown as { axe: typeof axe }).axe.run());
    const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
    expect(
      grave.map(
        ({ id, nodes }) =>
          `${id}: ${nodes
            .map(({ html }) => html)
            .join(' ')
            .slice(0, 300)}`,
      ),
    ).toEqual([]);
    await screenshot(page, `sheet-${name}`);
    if (name === 'light') {
      // The sheet has the room that it has on a wide screen.
      await page.keyboard.press('Control+b');
      await documentationImage(page, 'job-sheet');
    }
  },
);
