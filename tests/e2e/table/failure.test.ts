import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import type { Page } from 'playwright';
import { callKilter } from '../../contract/cli/runKilter.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';
import { overprintsAtWidths, watchLettering } from '../../support/overprint.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterAll(() => live.close());

/** The altimeter freezes 4.9 s after the start. */
const FREEZES = '/?lander=trivet&site=saddlers-bench&world=moon&start=low&seed=2&sensorTrouble=seeded';

/** Sits down at Sensors, and leaves the rest to stand-ins; returns what the scorecard says. */
async function watchSources(address: string, reject: boolean): Promise<{ readonly page: Page; readonly card: string }> {
  const page = await live.openPage(address);
  const sheet = page.getByRole('dialog', { name: 'Fly with a failure' });
  await sheet.getByRole('radio', { name: 'Sensors', exact: true }).check();
  await sheet.getByRole('button', { name: 'Fly this landing' }).click();
  const sources = page.getByRole('region', { name: 'Sources' });
  await sources.waitFor();
  await watchLettering(page);
  expect(await page.locator('body').innerText()).toContain(CAUTION);
  if (reject) {
    // the coach says when something is wrong; whoever watches judges
    const coach = page.getByRole('region', { name: 'Coach' });
    await coach.getByText('Altimeter: something is wrong').waitFor();
    const altimeter = sources.getByRole('group', { name: /altimeter/i });
    await altimeter.getByRole('button', { name: 'Rejected' }).press('Enter');
    await altimeter.getByRole('button', { name: 'Rejected', pressed: true }).waitFor();
  }
  const scorecard = page.getByRole('region', { name: 'Scorecard' });
  await scorecard.waitFor({ timeout: 100_000 });
  const card = await scorecard.innerText();
  // what was believed lies under what is true, with its words: also on a phone
  expect(await overprintsAtWidths(page)).toEqual([]);
  return { page, card };
}

/** What a healthy altimeter would have given, which comes after the card: name, as it was, healthy. */
async function healthyRows(page: Page): Promise<readonly (readonly string[])[]> {
  const again = page.getByRole('button', { name: 'Again', exact: true });
  const part = page.getByRole('region', { name: 'And with a healthy altimeter?' });
  const focused = (await part.count()) === 0 ? again : undefined;
  await focused?.focus();
  await part.getByRole('img', { name: /^Two lines over time/ }).waitFor({ timeout: 60_000 });
  // it is laid onto the card, which stays the same: whoever is about to press something still is
  const isStillFocused = await focused?.evaluate((node) => document.activeElement === node);
  expect(isStillFocused ?? true).toBe(true);
  const rows = await part.getByRole('row').all();
  return Promise.all(rows.slice(1).map((row) => row.locator('th, td').allInnerTexts()));
}

/** The pair of a row: what was believed, and what was true. */
function pairOf(card: string, label: string): readonly number[] {
  const row = new RegExp(`${label}\\s+([−\\d.]+)\\s*m(?:/s)?\\s+([−\\d.]+)\\s*m`).exec(card);
  if (row === null) throw new Error(`no row ${label} in ${card}`);
  return [Number(row[1]), Number(row[2])];
}

/** The file is a record of what was flown, for the command line to play again. */
async function keepsItsRecord(page: Page): Promise<void> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the record' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('kilter-trivet-saddlers-bench-2.jsonl');
  const replayed = await callKilter(['replay', await file.path()]);
  expect(replayed.out).toMatch(/then at rest\nevery mark is as it was recorded/);
  expect(replayed.status).toBe(0);
}

/** From the same seat, over other ground, and with the way back to the start page as it was. */
async function fliesAnother(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Another failure' }).click();
  await page.locator('main[data-stage="descending"]').waitFor();
  const seed = new URLSearchParams(new URL(page.url()).search).get('seed');
  expect(Number(seed)).toBeGreaterThan(0);
  expect(await page.getByRole('region', { name: 'Sensors', exact: true }).count()).toBe(1);
  await page.getByRole('button', { name: 'Leave the table' }).click();
  await page.getByRole('button', { name: 'Fly a landing' }).waitFor();
}

describe('a landing with a failure, from the seat at Sensors', () => {
  it('comes down softly when the frozen altimeter is rejected, and hard when it is believed', async () => {
    const flights = await Promise.all([watchSources(FREEZES, true), watchSources(FREEZES, false)]);
    const [caught, believed] = flights.map(({ card }) => card) as [string, string];
    for (const card of [caught, believed]) expect(card).toMatch(/believed\s+true/);
    expect(caught).toMatch(/The altimeter froze [\d.]+\s*s after the start; it was doubted [\d.]+\s*s later/);
    expect(believed).toMatch(/The altimeter froze [\d.]+\s*s after the start; nobody doubted it/);
    const [, softly = 0] = pairOf(caught, 'came down at');
    const [, hard = 0] = pairOf(believed, 'came down at');
    // when it is rejected is a matter of the page's speed: before the estimate gives in to it, or soon after
    expect(softly).toBeLessThan(1.6);
    expect(hard).toBeGreaterThan(1.7);

    // up to the failure the two were one descent, so a healthy altimeter would have given both the same
    const [besideCaught, besideBelieved] = await Promise.all(flights.map(({ page }) => healthyRows(page)));
    expect(besideBelieved?.map(([name]) => name)).toEqual([
      'how it ended',
      'moved sideways',
      'came down at',
      'of the speed that tips it',
    ]);
    const healthy = besideBelieved?.map(([, , would]) => would);
    expect(besideCaught?.map(([, , would]) => would)).toEqual(healthy);
    expect(Number.parseFloat(healthy?.[2] ?? '')).toBeLessThan(1.6);
    expect(Number.parseFloat(besideBelieved?.[2]?.[1] ?? '')).toBe(hard);

    const [, { page }] = flights as [unknown, { readonly page: Page }];
    await keepsItsRecord(page);
    await fliesAnother(page);
    expect(live.faults).toEqual([]);
  }, 180_000);
});
