import { readdirSync, readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { cache } from '../../scripts/workbench/places.mjs';
import { goTo, lineText, patience, runCommand, test } from './editor';

/** Processes of the language server that the editor under test has started, by their command lines. */
function servers(): readonly number[] {
  return readdirSync('/proc').flatMap((name) => {
    if (!/^\d+$/.test(name)) return [];
    try {
      const line = readFileSync(`/proc/${name}/cmdline`, 'utf8');
      return line.includes(`${cache}/tests/extensions`) && line.includes('lentil.mjs\0serve') ? [Number(name)] : [];
    } catch {
      // It has ended meanwhile.
      return [];
    }
  });
}

test.skipIf(process.platform !== 'linux')(
  'a server that is killed is started again, which is told once',
  async ({ openText }) => {
    const page = await openText('recovery.lentil', 'order A\n  R           -4.50 -0.75 x 022\n');
    const hint = (beginning: string) => expect.poll(() => lineText(page, beginning), { timeout: patience });
    await hint('R  ').toContain('-5.25 +0.75 x 112');

    for (const [figure, other] of [
      ['-4.25', '-5.00 +0.75 x 112'],
      ['-4.00', '-4.75 +0.75 x 112'],
    ] as const) {
      const before = servers();
      expect(before.length).toBeGreaterThan(0);
      for (const id of before) process.kill(id, 'SIGKILL');
      await expect.poll(() => servers().some((id) => !before.includes(id)), { timeout: patience }).toBe(true);
      await goTo(page, 2, 15);
      for (const _ of figure) await page.keyboard.press('Shift+ArrowRight');
      await page.keyboard.type(figure);
      await hint('R  ').toContain(other);
    }
    expect(await lineText(page, 'order A')).toContain('order A');
    await runCommand(page, 'Notifications: Show Notifications');
    const told = page.locator('.notifications-center .notification-list-item', { hasText: 'No text is lost' });
    await told.first().waitFor();
    expect(await told.count()).toBe(1);
  },
);
