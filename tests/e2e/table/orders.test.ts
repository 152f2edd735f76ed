import type { Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { readReading } from '../../support/flyByHand.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterEach(() => live.closePages());

afterAll(() => live.close());

const valueOf = (page: Page, control: string) =>
  page.locator('.controls').getByRole('slider', { name: control, exact: true }).getAttribute('aria-valuetext');

/** Presses a key until the scale says so. */
async function order(page: Page, key: string, control: string, words: RegExp): Promise<void> {
  for (let presses = 0; presses < 20; presses += 1) {
    if (words.test((await valueOf(page, control)) ?? '')) return;
    await page.keyboard.press(key);
  }
  throw new Error(`${control} is ${(await valueOf(page, control)) ?? 'not there'} after 20 presses of ${key}`);
}

async function below(page: Page, height: number): Promise<void> {
  await expect.poll(() => readReading(page, 'height'), { timeout: 30_000 }).toBeLessThan(height);
}

describe('a descent by orders', () => {
  it('is chosen on the sheet and landed by four orders from the keyboard', async () => {
    const page = await live.openPage('/');
    await page.getByRole('button', { name: 'Choose the landing' }).click();
    await page.getByRole('radio', { name: /^By orders/ }).check();
    await page.getByRole('radio', { name: /^Low/ }).check();
    await page.getByRole('button', { name: 'Fly this landing' }).click();
    await page.getByRole('region', { name: 'Controls' }).waitFor();
    expect(page.url()).toContain('mode=by+orders');

    // it holds its height and drifts on until something is ordered
    expect(await valueOf(page, 'Descent')).toBe('hover');
    expect(await valueOf(page, 'Drift')).toMatch(/^1\.0.m\/s →$/);
    await order(page, 'c', 'Drift', /^none$/);
    await order(page, 'ArrowDown', 'Descent', /^2\.0.m\/s$/);
    await below(page, 8);
    await order(page, 'ArrowUp', 'Descent', /^0\.8.m\/s$/);

    const scorecard = page.getByRole('region', { name: 'Scorecard' });
    await scorecard.waitFor({ timeout: 30_000 });
    expect(await scorecard.innerText()).toMatch(/Landed upright/);
    expect(await scorecard.innerText()).toContain(CAUTION);
    expect(live.faults).toEqual([]);
  });

  it('holds a drift or a lean, by key and by mark, and runs at another pace when that is asked for', async () => {
    const page = await live.openPage('/?mode=by+orders&pace=0.5', { width: 390, height: 844 });
    await page.getByRole('button', { name: 'Fly this landing' }).click();
    const drift = page.getByRole('radio', { name: /^Drift/ });
    const lean = page.getByRole('radio', { name: /^Lean/ });
    await expect.poll(() => drift.isChecked()).toBe(true);
    await page.keyboard.press('l');
    await expect.poll(() => lean.isChecked()).toBe(true);
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => valueOf(page, 'Lean')).toBe('2° left');
    await page.getByRole('button', { name: 'upright: order it to stand upright' }).click();
    await expect.poll(() => valueOf(page, 'Lean')).toBe('upright');
    await drift.check();
    await expect.poll(() => valueOf(page, 'Drift')).toMatch(/^3\.4.m\/s →$/);

    const title = page.getByRole('region', { name: 'Title block' });
    expect(await title.innerText()).toContain('×0.5');
    await page.getByRole('button', { name: '×0.25 quarter speed' }).click();
    await expect.poll(() => title.innerText()).toContain('×0.25');
    await page.getByRole('button', { name: '×1 real time' }).click();
    await expect.poll(() => title.innerText()).not.toContain('×');
    expect(live.faults).toEqual([]);
  });
});
