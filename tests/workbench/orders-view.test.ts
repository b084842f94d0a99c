import { expect } from 'vitest';
import { documentationImage, goTo, patience, runCommand, screenshot, test } from './editor';

const text = `standard z80.1-2015

order OV-1
  R           -2.00
  make        R
  supply      uncut
  reading 2026-11-24
    R         -2.50
    prism     R 0

order OV-2
  both        -1.00
`;

test('the orders of the workspace stand by verdict with their counts, and follow the text', async ({ openText }) => {
  const page = await openText('orders/view.lentil', text);
  await runCommand(page, 'Lentil: Show the Orders by Verdict');
  const rows = page.locator('.pane', { hasText: 'Lentil Orders' }).locator('.monaco-list-row');
  const group = (verdict: string) => rows.filter({ hasText: new RegExp(`^\\s*${verdict}\\s*\\d+\\s*$`) });
  await group('Reject').waitFor({ timeout: patience });
  await rows.filter({ hasText: 'reject:' }).first().waitFor();
  await screenshot(page, 'orders-by-verdict');
  await documentationImage(page, 'orders-by-verdict');
  // Closed up, all groups are in sight.
  await group('Reject').click();
  await rows.filter({ hasText: 'reject:' }).first().waitFor({ state: 'detached' });
  const count = async (verdict: string): Promise<number> =>
    Number(/\d+/.exec((await group(verdict).first().textContent()) ?? '')?.[0]);
  const [rejected, accepted] = [await count('Reject'), await count('Accept')];
  // The examples lie in the same workspace, so there is more than one of each.
  expect(Math.min(rejected, accepted)).toBeGreaterThan(1);

  await goTo(page, 8, 15);
  await page.keyboard.press('Shift+End');
  await page.keyboard.type('-2.00');
  await expect.poll(() => count('Reject'), { timeout: patience }).toBe(rejected - 1);
  expect(await count('Accept')).toBe(accepted + 1);
});

test('the status bar names the order under the cursor with its verdict', async ({ openText }) => {
  const page = await openText('status.lentil', text);
  const status = page.locator('.statusbar-item', { hasText: /OV-\d/ });
  await goTo(page, 4, 3);
  await expect.poll(() => status.textContent(), { timeout: patience }).toContain('OV-1: reject: R power');
  await goTo(page, 12, 3);
  await expect.poll(() => status.textContent(), { timeout: patience }).toContain('OV-2: unread');
});
