import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { launchBrowser } from '../../support/browser.ts';
import { readReading } from '../../support/flyByHand.ts';
import { setLiveTable } from '../../support/liveTable.ts';
import { ROOT } from '../../support/sources.ts';
import { startTestServer } from '../../support/tableServer.ts';

/** Until the browser keeps so many builds of the page, the last of them whole and in charge. */
async function untilKept(page: Page, builds: number): Promise<void> {
  const state = () =>
    page.evaluate(async () => {
      const { installing, waiting, active } = await navigator.serviceWorker.ready;
      const isSettled = installing === null && waiting === null && active?.state === 'activated';
      const isInCharge = navigator.serviceWorker.controller === active;
      return { builds: (await caches.keys()).length, isSettled, isInCharge };
    });
  await expect.poll(state).toEqual({ builds, isSettled: true, isInCharge: true });
}

describe.concurrent('the page without its server', () => {
  it('opens again after its first load, flies alone, keeps nothing of a table, and says in words that there is none', async ({
    expect,
  }) => {
    const live = await setLiveTable({ isPageKept: true });
    try {
      const page = await live.openPage('/');
      await untilKept(page, 1);
      await page.getByRole('button', { name: 'Open a table' }).click();
      await page.getByRole('button', { name: 'Begin the descent' }).waitFor();
      const kept = await page.evaluate(async () => {
        const [name = ''] = await caches.keys();
        return (await (await caches.open(name)).keys()).map(({ url }) => new URL(url).pathname);
      });
      expect(kept.length).toBeGreaterThan(5);
      expect(
        kept.filter((file) => !/^\/(assets\/[\w-]+\.(js|css|woff2)|plumb\.svg|typeface-license\.txt)?$/.test(file)),
      ).toEqual([]);
      await page.getByRole('button', { name: 'Leave the table' }).first().click();
      expect(live.faults).toEqual([]);

      await live.stopServer();
      await page.goto(live.origin);
      expect(await page.locator('body').innerText()).toContain(CAUTION);
      await page.getByRole('button', { name: 'Fly a landing' }).click();
      await page.getByRole('button', { name: 'More thrust' }).waitFor();
      const height = await readReading(page, 'height');
      await expect.poll(() => readReading(page, 'height')).toBeLessThan(height - 3);
      // in its own lettering
      await expect
        .poll(() => page.evaluate(() => [...document.fonts].map(({ status }) => status)))
        .toEqual(['loaded', 'loaded']);
      await page.keyboard.press('ArrowUp');
      expect(await page.locator('.section canvas').isVisible()).toBe(true);

      await page.getByRole('button', { name: 'Leave the table' }).first().click();
      await page.getByRole('button', { name: 'Open a table' }).click();
      await expect.poll(() => page.locator('#start-status').innerText()).toMatch(/server/i);
    } finally {
      await live.close();
    }
  });

  it('is the newest build that was seen: taken with the next load, and kept', async ({ expect }) => {
    const folder = mkdtempSync(path.join(tmpdir(), 'kilter-'));
    cpSync(path.join(ROOT, '.build/client'), folder, { recursive: true });
    const server = await startTestServer({ clientFolder: folder });
    const browser = await launchBrowser();
    try {
      const page = await browser.newPage();
      await page.goto(server.origin);
      await untilKept(page, 1);
      const change = (file: string, from: string | RegExp, to: string) => {
        const text = readFileSync(path.join(folder, file), 'utf8');
        expect(text).toMatch(from);
        writeFileSync(path.join(folder, file), text.replace(from, to));
      };
      change('index.html', /<title>[^<]*/, '<title>Another build');
      change('offline.js', /"version":"\w+"/, '"version":"another"');
      await page.reload();
      expect(await page.title()).toBe('Another build');
      await untilKept(page, 2);
      await server.close();
      await page.reload();
      expect(await page.title()).toBe('Another build');
    } finally {
      await browser.close();
      await server.close();
      rmSync(folder, { recursive: true });
    }
  });
});
