/** The page: complete by itself, safe against whatever a file holds, and usable in a real browser. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ReportJson, reportInHtml } from '../../../exchange';
import { findBrowser } from '../../../scripts/workbench/needs.mjs';
import { folderWith } from '../../cli/support/folder';
import { launchBrowser } from '../../support/browser';
import { BENCH, yearOfWork } from '../../support/year-of-work';
import { root } from '../support/examples';
import { reportOf, summaryOf } from './support';

const { files } = yearOfWork(40);
const report = reportOf(files, { bench: BENCH });
const page = reportInHtml(report);

const HOSTILE = '<img src=x onerror=alert(1)>"\'&</style></svg><script>alert(2)</script>';

/** The same report with every name that comes from a file turned into an attack. */
function spoilt(): ReportJson {
  const summary = summaryOf(files, { bench: BENCH });
  summary.unreadable(HOSTILE, HOSTILE);
  const { instruments, operators, remakes, open, deviations, scope, ...rest } = summary.result();
  return {
    ...rest,
    scope: { ...scope, standards: [{ name: HOSTILE, orders: 1 }] },
    instruments: instruments.map((one) => ({ ...one, name: HOSTILE, kind: HOSTILE })),
    operators: operators.map((one) => ({ ...one, by: HOSTILE })),
    remakes: { ...remakes, reasons: [{ why: HOSTILE, count: 1 }] },
    open: { ...open, oldest: open.oldest.map((one) => ({ ...one, order: HOSTILE, path: HOSTILE })) },
    deviations: deviations.map((one) => ({ ...one, worst: one.worst.map((at) => ({ ...at, path: HOSTILE })) })),
  };
}

test('the page fetches nothing and runs nothing', () => {
  expect(page).not.toMatch(/<script|<link|<img|<iframe|@import|url\((?!#)|\ssrc=|\son[a-z]+=/i);
  const addresses = [...page.matchAll(/href="([^"]*)"/g)].map(([, address]) => address ?? '');
  expect(addresses.filter((address) => !/^(?:#|https:\/\/)/.test(address))).toEqual([]);
});

test('what a file holds is shown as text', () => {
  const hostile = reportInHtml(spoilt());
  expect(hostile).not.toMatch(/<script|<img/);
  expect(hostile.split('&lt;img src=x onerror=alert(1)&gt;&quot;&#39;&amp;').length).toBeGreaterThan(20);
  expect(hostile.match(/<\/style>/g)).toHaveLength(1);
});

test('every link within the page leads somewhere, and no two places share a name', () => {
  const ids = [...page.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
  expect(new Set(ids).size).toBe(ids.length);
  const targets = [...page.matchAll(/href="#([^"]*)"/g)].map(([, id]) => id);
  expect(targets.filter((id) => !ids.includes(id))).toEqual([]);
});

test('every picture has a name and a table beside it', () => {
  const pictures = page.match(/<svg viewBox/g) ?? [];
  expect(pictures.length).toBeGreaterThan(8);
  expect(page.match(/<svg viewBox[^>]* role="img" aria-label="[^"]{20,}"/g)).toHaveLength(pictures.length);
  for (const section of page.split('<section').slice(1))
    if (section.includes('<svg')) expect(section).toContain('<table>');
});

test('no rate stands without its count and interval, and small samples are said to be small', () => {
  const { yield: overall } = report.firstPass;
  expect(page).toContain(`${((overall.rate as number) * 100).toFixed(1)}\u00a0%`);
  expect(page).toContain(
    `${((overall.low as number) * 100).toFixed(1)} to ${((overall.high as number) * 100).toFixed(1)}\u00a0%`,
  );
  const few = reportInHtml(reportOf(yearOfWork(1).files, { bench: BENCH }));
  expect(few).toContain('small sample');
});

test('the cautions and the sources of published figures are on the page', () => {
  expect(page).toContain('not a medical device');
  expect(page).toContain('licensed practice decides');
  expect(page).toContain('no targets');
  expect(page.match(/href="https:\/\//g)?.length).toBeGreaterThan(5);
});

test('the same report gives the same page', () => {
  expect(reportInHtml(reportOf(files, { bench: BENCH }))).toBe(page);
});

const executablePath = findBrowser();
if (!executablePath) console.info('No Chromium was found: the report is not looked at in a browser');

describe.skipIf(!executablePath)('in a browser', () => {
  const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
  let browser: Browser;

  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterAll(() => browser?.close());

  /** Opens a page from a file, as a person would; whatever the browser complains of is gathered. */
  async function open(html: string, options: { colorScheme?: 'light' | 'dark'; width?: number } = {}) {
    const address = pathToFileURL(join(folderWith({ 'report.html': html }), 'report.html')).href;
    const { colorScheme = 'light', width = 1100 } = options;
    // The page forbids all scripts; the check of its accessibility is one.
    const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme, bypassCSP: true });
    const shown = await context.newPage();
    const complaints: string[] = [];
    const requests: string[] = [];
    shown.on('console', (message) => complaints.push(message.text()));
    shown.on('pageerror', (error) => complaints.push(error.message));
    shown.on('request', (request) => requests.push(request.url()));
    await shown.goto(address);
    return { shown, complaints, requests: requests.filter((one) => one !== address) };
  }

  async function seriousFindings(shown: Page): Promise<readonly string[]> {
    await shown.addScriptTag({ path: axe });
    const found = await shown.evaluate(async () => {
      const { axe: checker } = globalThis as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } };
      return (await checker.run()).violations;
    });
    return found
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
  }

  interface Violation {
    readonly id: string;
    readonly impact: string;
    readonly nodes: readonly { readonly html: string }[];
  }

  test.each([
    ['light', page],
    ['dark', page],
    ['light', reportInHtml(spoilt())],
    ['light', reportInHtml(reportOf({}))],
  ] as const)('it is quiet and free of serious findings, %s', async (colorScheme, html) => {
    const { shown, complaints, requests } = await open(html, { colorScheme });
    expect(await seriousFindings(shown)).toEqual([]);
    expect({ complaints, requests }).toEqual({ complaints: [], requests: [] });
    await shown.context().close();
  });

  test('it fits a narrow screen, and tables scroll by themselves', async () => {
    const { shown } = await open(page, { width: 390 });
    const width = await shown.evaluate(() => document.documentElement.scrollWidth);
    expect(width).toBeLessThanOrEqual(390);
    await shown.context().close();
  });

  test('no word of a picture is cut off or lies on another', async () => {
    const { shown } = await open(page);
    const faults = await shown.evaluate(() => {
      const faults: string[] = [];
      for (const svg of Array.from(document.querySelectorAll('svg[role=img]'))) {
        const frame = svg.getBoundingClientRect();
        const words = Array.from(svg.querySelectorAll('text')).map((one) => ({
          text: one.textContent,
          box: one.getBoundingClientRect(),
        }));
        for (const { text, box } of words)
          if (box.left < frame.left - 1 || box.right > frame.right + 1 || box.bottom > frame.bottom + 1)
            faults.push(`cut off: ${text}`);
        for (const [at, one] of words.entries())
          for (const other of words.slice(at + 1))
            if (
              one.box.left < other.box.right - 1 &&
              other.box.left < one.box.right - 1 &&
              one.box.top < other.box.bottom - 3 &&
              other.box.top < one.box.bottom - 3
            )
              faults.push(`${one.text} on ${other.text}`);
      }
      return faults;
    });
    expect(faults).toEqual([]);
    await shown.context().close();
  });

  test('on paper nothing is cut off and tables are whole', async () => {
    const { shown } = await open(page);
    await shown.emulateMedia({ media: 'print' });
    const scrolling = await shown.evaluate(
      () =>
        Array.from(document.querySelectorAll('.scroll')).filter((one) => one.scrollHeight > one.clientHeight + 1)
          .length,
    );
    expect(scrolling).toBe(0);
    const kept = join(root, 'test-output', 'screenshots');
    mkdirSync(kept, { recursive: true });
    await shown.emulateMedia({ media: 'screen' });
    writeFileSync(join(kept, 'report.png'), await shown.screenshot({ fullPage: true }));
    await shown.context().close();
  });
});
