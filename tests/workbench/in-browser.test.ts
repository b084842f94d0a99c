import { expect } from 'vitest';
import {
  test as editorTest,
  goTo,
  hoverText,
  installInBrowser,
  lineText,
  patience,
  runCommand,
  screenshot,
  viewFrame,
} from './editor';

const test = editorTest.extend({ editor: 'bareEditor' });

test('in a browser with no machine behind it, and a folder that is not trusted, everything works', async ({
  openText,
}) => {
  const page = await openText('in-browser.lentil', 'order QL-1042\n  R           -4.50 -0.75 x 022\n');
  await page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
  await installInBrowser(page);
  await expect.poll(() => lineText(page, 'R           -4.50'), { timeout: patience }).toContain('-5.25 +0.75 x 112');
  expect(await hoverText(page, 2, 17, '-4.875')).toContain('-4.875');

  await goTo(page, 2, 3);
  await runCommand(page, 'Lentil: Show the Job Sheet');
  const frame = await viewFrame(page);
  await frame.locator('h1', { hasText: 'Job QL-1042' }).waitFor({ timeout: patience });
  await frame.locator('figcaption', { hasText: 'R: Ordered -4.50 -0.75 x 022' }).waitFor();
  await expect
    .poll(() => page.locator('.statusbar-item', { hasText: 'QL-1042' }).textContent(), { timeout: patience })
    .toContain('unread');
  await screenshot(page, 'in-browser');
});
