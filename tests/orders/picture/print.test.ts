/// <reference lib="dom" />
/** The sheet in a browser: on paper, in every scheme of colours, and for those who cannot see it. Kept in `test-output/sheets`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { sheetPage } from '../../../orders/picture';
import { analysisOf, root } from '../../exchange/support/examples';
import { browserForTest, withoutBrowser } from '../../support/browser';
import { read } from '../../support/job';
import { firstOrder, sheetOf } from './support/drawn';

const output = join(root, 'test-output', 'sheets');

const SHEETS: Readonly<Record<string, string>> = {
  accept: sheetPage(sheetOf(firstOrder(read()))),
  reject: sheetPage(sheetOf(firstOrder(read('R -4.50 -0.75 x 030', 'height R 19 L 17', 'optical-centres R 33 L 31')))),
  unread: sheetPage(sheetOf(firstOrder('order A\n  both -2.00\n  pd 63\n'))),
  progressive: sheetPage(sheetOf(orderOf('examples/progressives.lentil', 'PR-502'))),
};

function orderOf(path: string, name: string) {
  const found = analysisOf(path).blocks.find(({ order }) => order?.name === name);
  if (!found) throw new Error(`no order ${name}`);
  return found;
}

async function opened(html: string, options: object = {}): Promise<{ page: Page; complaints: string[] }> {
  const browser = await browserForTest();
  const page = await browser.newPage({ viewport: { width: 1000, height: 900 }, ...options });
  const complaints: string[] = [];
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  page.on('pageerror', ({ message }) => complaints.push(message));
  page.on('request', (request) => complaints.push(`asked for ${request.url()}`));
  await page.setContent(html);
  return { page, complaints };
}

describe.skipIf(withoutBrowser)('in a browser', () => {
  mkdirSync(output, { recursive: true });

  test.each(Object.entries(SHEETS))('the sheet “%s” fits A4 and asks for nothing', async (name, html) => {
    const { page, complaints } = await opened(html);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    writeFileSync(join(output, `${name}.pdf`), pdf);
    const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(pages).toBeGreaterThanOrEqual(1);
    expect(pages).toBeLessThanOrEqual(3);
    await page.emulateMedia({ media: 'print' });
    // A4 less its margins of 14 mm, at 96 dots an inch.
    await page.setViewportSize({ width: Math.floor(((210 - 28) / 25.4) * 96), height: 1000 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
    expect(complaints).toEqual([]);
  });

  test.each([
    ['light', { colorScheme: 'light' }],
    ['dark', { colorScheme: 'dark' }],
    ['high contrast', { forcedColors: 'active', colorScheme: 'dark' }],
  ])('nothing serious keeps anybody from reading it in %s', async (scheme, options) => {
    // The sheet lets no script in, so the checker is let past its policy.
    const { page } = await opened(SHEETS.reject as string, { ...options, bypassCSP: true });
    await page.evaluate(axe.source);
    const { violations } = await page.evaluate(() => (window as unknown as { axe: typeof axe }).axe.run());
    const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
    expect(grave.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
    await page.screenshot({ path: join(output, `reject-${scheme.replace(' ', '-')}.png`), fullPage: true });
  });

  test('text in the pictures stands clear of other text', async () => {
    for (const [name, html] of Object.entries(SHEETS)) {
      const { page } = await opened(html);
      const touching = await page.evaluate(() =>
        Array.from(document.querySelectorAll('svg')).flatMap((svg) => {
          const texts = Array.from(svg.querySelectorAll('text')).map((one) => ({
            words: one.textContent ?? '',
            box: one.getBoundingClientRect(),
          }));
          const frame = svg.getBoundingClientRect();
          const outside = texts.filter(({ box }) => box.left < frame.left - 1 || box.right > frame.right + 1);
          const pairs = texts.flatMap((a, at) =>
            texts.slice(at + 1).flatMap((b) => {
              const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
              const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
              // Line boxes are higher than letters, so a little may overlap.
              return wide > 2 && high > 5 ? [`“${a.words}” and “${b.words}”`] : [];
            }),
          );
          return [...pairs, ...outside.map(({ words }) => `“${words}” and the edge`)];
        }),
      );
      expect([name, touching]).toEqual([name, []]);
    }
  });
});
