import { expect } from 'vitest';
import { test as editorTest, hoverText, installInBrowser, lineText, patience, screenshot } from './editor';

const test = editorTest.extend({ editor: 'bareEditor' });

test('the extension works in a browser with no machine behind it', async ({ openText }) => {
  const page = await openText('in-browser.lentil', 'order QL-1042\n  R           -4.50 -0.75 x 022\n');
  await installInBrowser(page);
  await expect.poll(() => lineText(page, 'R           -4.50'), { timeout: patience }).toContain('-5.25 +0.75 x 112');
  expect(await hoverText(page, 2, 17, '-4.875')).toContain('-4.875');
  await screenshot(page, 'in-browser');
});
