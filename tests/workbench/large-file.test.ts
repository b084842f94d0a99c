/// <reference lib="dom" />
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { goTo, lineText, patience, test } from './editor';

const ORDERS = 5_000;
const text = Array.from(
  { length: ORDERS },
  (_, at) =>
    `order LF-${at}\n  R           -4.50 -0.75 x 022\n  L           -4.25 -1.00 x 168\n  pd          63\n  supply      uncut\n`,
).join('\n');

/** Milliseconds from each key to the letter being drawn, as the page itself sees it. */
async function typed(page: Page, letters: string): Promise<readonly number[]> {
  await page.evaluate(() => {
    const seen = { pressed: 0, times: [] as number[] };
    (window as unknown as { seen: typeof seen }).seen = seen;
    window.addEventListener('keydown', () => (seen.pressed = performance.now()), true);
    const lines = document.querySelector('.editor-instance .view-lines') as Element;
    new MutationObserver(() => {
      if (seen.pressed === 0) return;
      const { pressed } = seen;
      seen.pressed = 0;
      requestAnimationFrame(() => seen.times.push(performance.now() - pressed));
    }).observe(lines, { childList: true, subtree: true, characterData: true });
  });
  for (const letter of letters) {
    await page.keyboard.type(letter);
    await page.waitForTimeout(150);
  }
  return page.evaluate(() => (window as unknown as { seen: { times: number[] } }).seen.times);
}

test(`typing in a file of ${ORDERS} orders is not held up`, async ({ openText }) => {
  const page = await openText('large.lentil', text);
  const line = 6 * 2_500;
  await goTo(page, line + 2, 15);
  await expect.poll(() => lineText(page, 'R  '), { timeout: patience }).toContain('-5.25');
  await goTo(page, line + 4, 17);
  const words = ' near 60 # typed while somebody looks';
  const times = [...(await typed(page, words))].sort((one, other) => one - other);
  const at = (share: number) => Math.round(times[Math.floor((times.length - 1) * share)] as number);
  console.info(
    `Key to drawing at ${ORDERS} orders: median ${at(0.5)} ms, nine in ten below ${at(0.9)} ms, longest ${at(1)} ms`,
  );
  expect(times.length).toBeGreaterThan(words.length / 2);
  expect(await lineText(page, 'pd          63 near')).toContain('typed while somebody looks');
});
