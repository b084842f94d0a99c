import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Browser, Frame, Locator, Page } from 'playwright-core';
import { inject, test as plainTest } from 'vitest';
import { addressOf } from '../../scripts/workbench/serve.mjs';
import { launchBrowser } from '../support/browser';

/** Set-up, loading and a cold extension host together may take this long on a busy machine. */
export const patience = 60_000;

const screenshots = join(inject('workspace'), '..', 'screenshots');

const SETTINGS = '.vscode/settings.json';

interface Fixtures {
  /** Writes a file of the workspace, or of a folder in it that is opened by itself, and opens it in a window of the editor. */
  readonly openText: (name: string, text: string, folder?: string) => Promise<Page>;
  /** Writes a file of the workspace that is not opened. */
  readonly write: (name: string, text: string) => void;
  /** Writes the settings of the workspace; they hold for this test alone. */
  readonly set: (settings: object) => void;
  /** Which of the served editors is opened. */
  readonly editor: 'editor' | 'bareEditor';
}

/** A test with a browser of its own; when it fails, what the windows showed last is kept as a screenshot. */
export const test = plainTest.extend<Fixtures>({
  editor: 'editor',
  // biome-ignore lint/correctness/noEmptyPattern: a fixture is told what it rests on by its first argument
  set: async ({}, use) => {
    await use((settings) => writeFile(SETTINGS, JSON.stringify(settings)));
    rmSync(join(inject('workspace'), SETTINGS), { force: true });
  },
  // biome-ignore lint/correctness/noEmptyPattern: as above
  write: async ({}, use) => use((name, text) => writeFile(name, text)),
  openText: async ({ task, editor }, use) => {
    const browser = await launchBrowser();
    const pages: Page[] = [];
    await use(async (name, text, folder = '') => {
      writeFile(join(folder, name), text);
      const page = await openFile(browser, inject(editor), join(inject('workspace'), folder), name);
      pages.push(page);
      return page;
    });
    if (task.result?.state === 'fail') {
      for (const [index, page] of pages.entries())
        await screenshot(page, `failed-${task.name.replace(/\W+/g, '-')}-${index}`);
    }
    await browser.close();
  },
});

function writeFile(name: string, text: string): void {
  const file = join(inject('workspace'), name);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
}

/** Waits until the file is drawn; the language server may still be starting then. */
async function openFile(browser: Browser, editor: string, folder: string, name: string): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
  const page = await context.newPage();
  page.setDefaultTimeout(patience);
  await page.goto(addressOf(editor, folder, name));
  await page.locator('.monaco-workbench').waitFor();
  await page.locator('.editor-instance .view-line').first().waitFor();
  return page;
}

/** Puts the cursor at a line and column, both counted from 1 as the editor shows them. */
export async function goTo(page: Page, line: number, column: number): Promise<void> {
  // Below the first lines, where nothing can be pressed; how far the text has been scrolled does not matter.
  await page.keyboard.press('Escape');
  await page
    .locator('.editor-instance .editor-scrollable')
    .first()
    .click({ position: { x: 300, y: 120 } });
  await page.keyboard.press('Control+g');
  await page.locator('.quick-input-widget input').fill(`:${line}:${column}`);
  await page.keyboard.press('Enter');
  await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
  await page.locator('#status\\.editor\\.selection', { hasText: `Ln ${line}, Col ${column}` }).waitFor();
}

/** Runs a command by its title in the palette, which is opened again until the editor has registered the command. */
export async function runCommand(page: Page, title: string): Promise<void> {
  await until(`the command ${title}`, async () => {
    await page.keyboard.press('F1');
    await page.locator('.quick-input-widget input').fill(`>${title}`);
    const found = await appears(page.locator('.quick-input-list .monaco-list-row', { hasText: title }), 3_000);
    await page.keyboard.press(found ? 'Enter' : 'Escape');
    return found || undefined;
  });
}

/** The scopes of the grammar at a place, the innermost first, as the editor's own inspector lists them. */
export async function scopesAt(page: Page, line: number, column: number): Promise<string> {
  await goTo(page, line, column);
  await runCommand(page, 'Developer: Inspect Editor Tokens and Scopes');
  const inspector = page.locator('.token-inspect-widget');
  // It asks the server first what the word means.
  await inspector.filter({ hasText: 'textmate scopes' }).waitFor();
  const inspected = await inspector.textContent();
  await page.keyboard.press('Escape');
  return inspected?.split('textmate scopes').at(-1)?.trim() ?? '';
}

export async function screenshot(page: Page, name: string): Promise<void> {
  await page.screenshot({ path: join(screenshots, `${name}.png`) });
}

const images = join(inject('workspace'), '..', '..', 'docs', 'images');

/** A picture for the documentation; `UPDATE_PAGES=1` in the environment takes it anew. */
export async function documentationImage(page: Page, name: string): Promise<void> {
  if (!process.env.UPDATE_PAGES) return;
  mkdirSync(images, { recursive: true });
  await page.setViewportSize({ width: 1120, height: 640 });
  await page.waitForTimeout(1_000);
  await page.screenshot({ path: join(images, `${name}.png`), scale: 'css' });
}

/** Installs the extension into the browser, where it runs in a worker with no machine behind it. */
export async function installInBrowser(page: Page): Promise<void> {
  // The address of the static files holds the editor's build number.
  const files = await page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));
  const base = files.find((file) => file.includes('/static/'))?.replace(/\/static\/.*/, '/static');
  await runCommand(page, 'Developer: Install Extension from Location...');
  await page.getByPlaceholder('Location of the web extension').fill(`${base}/${inject('extensionPath')}`);
  await page.keyboard.press('Enter');
}

/** The page inside the view beside the text. */
export async function viewFrame(page: Page): Promise<Frame> {
  const inner = page.frameLocator('iframe.webview').frameLocator('iframe#active-frame');
  const handle = await inner.locator('body').elementHandle({ timeout: patience });
  const frame = await handle?.ownerFrame();
  if (!frame) throw new Error('the view has no page');
  return frame;
}

/** The themes in which everything is looked at. */
export const THEMES = {
  light: 'Default Light Modern',
  dark: 'Default Dark Modern',
  'high-contrast': 'Default High Contrast',
} as const;

/** The text of the drawn line that begins with a given text, its inlay hints included, with plain blanks and minus signs. */
export async function lineText(page: Page, beginning: string): Promise<string> {
  const lines = await page.locator('.editor-instance .view-line').allTextContents();
  return lines.map(plain).find((line) => line.trimStart().startsWith(beginning)) ?? '';
}

/**
 * What the editor shows when it is asked for the hover at a place; asked again until it holds what is waited for: the editor
 * shows its own findings first and adds what the server answers when that arrives.
 */
export async function hoverText(page: Page, line: number, column: number, holding = ''): Promise<string> {
  const hover = page.locator('.monaco-hover:not(.hidden) .monaco-hover-content');
  return until(`a hover at ${line}:${column}`, async () => {
    await goTo(page, line, column);
    await runCommand(page, 'Show or Focus Hover');
    if (!(await appears(hover, 3_000))) return undefined;
    const text = plain((await hover.allTextContents()).join('\n'));
    return text.includes(holding) ? text : undefined;
  });
}

/** Tries again until there is an answer. */
async function until<T>(what: string, attempt: () => Promise<T | undefined>): Promise<T> {
  for (const end = Date.now() + patience; Date.now() < end; ) {
    const answer = await attempt();
    if (answer !== undefined) return answer;
  }
  throw new Error(`there never was ${what}`);
}

const appears = (found: Locator, timeout: number): Promise<boolean> =>
  found
    .first()
    .waitFor({ timeout })
    .then(
      () => true,
      () => false,
    );

/** The editor draws blanks as no-break blanks. */
const plain = (text: string): string => text.replaceAll('\u00A0', ' ').replaceAll('\u2212', '-');
