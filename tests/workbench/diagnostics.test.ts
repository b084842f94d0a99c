import { expect } from 'vitest';
import { goTo, hoverText, patience, screenshot, test } from './editor';

// At a cylinder of 0.75 the axis may be off by 5 degrees (ANSI Z80.1-2015); this one is off by 8.
const text = `standard z80.1-2015

order QL-1042
  R           -4.50 -0.75 x 022
  L           -4.25 -1.00 x 168
  design      single-vision
  pd          63
  supply      glazed

  reading 2026-11-24
    R         -4.50 -0.75 x 030
    L         -4.25 -1.00 x 168
    pd        63
    prism     R 0  L 0
`;

test('a reading outside its limit is underlined, says why, and is no longer once it is mended', async ({
  openText,
}) => {
  const page = await openText('outside.lentil', text);
  const underlined = page.locator('.squiggly-error');
  await underlined.first().waitFor();
  expect(await hoverText(page, 11, 30)).toMatch(/axis.*8/s);
  await screenshot(page, 'outside-its-limit');

  await goTo(page, 11, 29);
  await page.keyboard.press('Shift+End');
  await page.keyboard.type('022');
  await underlined.first().waitFor({ state: 'detached', timeout: patience });
  expect(await underlined.count()).toBe(0);
  await screenshot(page, 'inside-its-limit');
});
