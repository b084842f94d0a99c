import { expect } from 'vitest';
import { hoverText, screenshot, test } from './editor';

test('hovering a power shows how its other forms come about', async ({ openText }) => {
  const page = await openText('hover.lentil', 'order QL-1042\n  R           -4.50 -0.75 x 022\n');
  const shown = await hoverText(page, 2, 17, '-4.87');
  expect(shown).toContain('-5.25');
  expect(shown).toContain('112');
  expect(shown).toContain('-4.87');
  await screenshot(page, 'hover');
});
