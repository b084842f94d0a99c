/// <reference lib="dom" />
import { expect } from 'vitest';
import { scopesAt, screenshot, test } from './editor';

test('a file of the notation opens in its colours', async ({ openText }) => {
  const page = await openText('colours.lentil', '# Quay Lane bench\norder QL-1042\n  R   -4.50 -0.75 x 022\n');
  expect(await scopesAt(page, 1, 4)).toContain('comment.line.number-sign.lentil');
  expect(await scopesAt(page, 2, 2)).toContain('keyword.control.block.lentil');
  expect(await scopesAt(page, 2, 8)).toContain('entity.name.function.lentil');
  expect(await scopesAt(page, 3, 3)).toContain('variable.language.eye.lentil');
  expect(await scopesAt(page, 3, 8)).toContain('constant.numeric.lentil');
  expect(await scopesAt(page, 3, 22)).toContain('constant.numeric.axis.lentil');

  const colourOf = (text: string) =>
    page
      .locator('.view-line span[class^="mtk"]', { hasText: new RegExp(`^${text}$`) })
      .first()
      .evaluate((span) => getComputedStyle(span).color);
  const colours = await Promise.all(['order', 'QL-1042', 'R', '-4.50'].map(colourOf));
  expect(new Set(colours).size).toBeGreaterThanOrEqual(3);
  await screenshot(page, 'colours');
});
