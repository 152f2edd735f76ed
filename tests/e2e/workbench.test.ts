import { readFileSync } from 'node:fs';
import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { meaningOf } from '../../client/text/glossary.ts';
import { BENCH } from '../../client/text/workbench.ts';
import { OUTSIDE_CHECKS } from '../../engine/checks/index.ts';
import { CAUTION } from '../../engine/constants.ts';
import { findLander } from '../../levels/index.ts';
import { callJson } from '../contract/cli/runKilter.ts';
import { barriers } from '../support/barriers.ts';
import { setLiveTable, type LiveTable } from '../support/liveTable.ts';
import { press } from '../support/press.ts';

const WIDE = { width: 1280, height: 720 };
const PHONE = { width: 390, height: 844 };

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterAll(() => live.close());

const field = (page: Page, name: string) => page.getByRole('spinbutton', { name, exact: true });
const headline = (page: Page, kind: string) => page.locator(`[data-kind="${kind}"] .bench-headline`);

describe('the workbench', () => {
  it('answers a changed lander at once, refines, is watched, and opens again from its link', async () => {
    const page = await live.openPage('/');
    await press(page, 'Workbench');
    await headline(page, 'tilt').filter({ hasText: 'Falls at 44.8°' }).waitFor();

    // typed: what needs no simulation stands there with the same press of a key
    await field(page, 'foot to the long axis').fill('2.5');
    const { least } = (await callJson(['stand', await savedLander(page)])) as { least: { tiltDeg: number } };
    expect(await headline(page, 'tilt').innerText()).toBe(`Falls at ${least.tiltDeg.toFixed(1)}° of tilt`);
    expect(least.tiltDeg).not.toBeCloseTo(44.8, 0);

    // what cannot be is said at the field, and nothing else changes
    await field(page, 'tanks filled to').fill('3');
    await page.getByText('a number from 0 to 1', { exact: true }).waitFor();
    await field(page, 'tanks filled to').fill('0.3');
    await headline(page, 'limit')
      .filter({ hasText: /^Tips above \d/ })
      .waitFor();

    // any touchdown of the plane can be watched
    await headline(page, 'plane')
      .filter({ hasText: /^\d+ % of this plane stands/ })
      .waitFor();
    await press(page, 'Watch this arrival');
    const watch = page.getByRole('region', { name: 'One touchdown' });
    await watch.getByText('Stays upright').waitFor();
    expect(await watch.locator('code').innerText()).toMatch(/^npx kilter touchdown trivet-changed\.json --slope 5/);

    // a term says what it is to whoever points at it; the pointer can go onto the note, and Escape closes it
    await page.locator('[data-kind="limit"]').getByRole('button', { name: 'closed form' }).hover();
    const said = page.getByRole('tooltip');
    await said.filter({ hasText: meaningOf('closed form') }).waitFor();
    await said.hover();
    await page.keyboard.press('Escape');
    expect(await said.count()).toBe(0);

    // nothing is laid anew while a keyboard goes through it
    await expect.poll(() => page.getByText(BENCH.reading).count(), { timeout: 90_000 }).toBe(0);
    for (const size of [PHONE, WIDE]) {
      await page.setViewportSize(size);
      expect(await barriers(page)).toEqual([]);
    }

    // a link holds both cases
    await press(page, 'Keep this one beside');
    await page.getByLabel('World', { exact: true }).selectOption('mars');
    await page.getByRole('row', { name: /^World mars moon/ }).waitFor();
    const again = await live.openPage(page.url().slice(page.url().indexOf('/?')), PHONE);
    expect(await field(again, 'foot to the long axis').inputValue()).toBe('2.5');
    await again.getByRole('row', { name: /^World mars moon/ }).waitFor();
    await again.locator('#desk').getByText(CAUTION.slice('Exercise. '.length)).waitFor();
    // nothing reaches past a phone's edge
    expect(await again.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);

    await press(page, 'Start page');
    await page.getByRole('button', { name: 'Fly a landing' }).waitFor();
    // faults also list requests that leave the origin
    expect(live.faults).toEqual([]);
  });
});

describe('the page about trust', () => {
  it('runs every check in the visitor’s own browser, and says that all agree', async () => {
    const page = await live.openPage('/');
    await press(page, 'About');
    const agree = `${OUTSIDE_CHECKS.length} of ${OUTSIDE_CHECKS.length} checks agree`;
    await page.getByRole('status').filter({ hasText: agree }).waitFor();
    expect(await page.getByRole('row').count()).toBe(OUTSIDE_CHECKS.length + 1);

    // the lettering came along, with a minus of its own; figures that change stay in their places
    const widths = await page.evaluate(widthsOf, ['0123456789', '−+']);
    expect(widths.isLoaded).toBe(true);
    expect(new Set(widths.drawn[0]).size).toBe(1);
    expect(new Set(widths.drawn[1]).size).toBe(1);
    expect(await (await page.request.get(`${live.origin}/typeface-license.txt`)).text()).toMatch(
      /SIL OPEN FONT LICENSE/,
    );
    for (const size of [WIDE, PHONE]) {
      await page.setViewportSize(size);
      expect(await barriers(page)).toEqual([]);
    }
    expect(live.faults).toEqual([]);
  });
});

/** Runs in the page. How wide each letter of the words is in its lettering [px]. */
function widthsOf(words: readonly string[]): { readonly isLoaded: boolean; readonly drawn: readonly number[][] } {
  const isLoaded = [...document.fonts].some(({ family, status }) => family.includes('Ysabeau') && status === 'loaded');
  const context = document.createElement('canvas').getContext('2d');
  if (context === null) throw new Error('No canvas');
  context.font = '100px "Ysabeau Office", monospace';
  const drawn = words.map((word) => Array.from(word, (letter) => context.measureText(letter).width));
  return { isLoaded, drawn };
}

/** The file that the page hands over. */
async function savedLander(page: Page): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent('download'), press(page, 'Save the lander')]);
  const file = await download.path();
  expect(download.suggestedFilename()).toBe('trivet-changed.json');
  expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({ id: findLander('trivet')?.id });
  return file;
}
