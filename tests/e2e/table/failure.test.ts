import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterAll(() => live.close());

/** The altimeter freezes 4.9 s after the start. */
const FREEZES = '/?lander=trivet&site=saddlers-bench&world=moon&start=low&seed=2&sensorTrouble=seeded';

/** Sits down at Sensors, and leaves the rest to stand-ins; returns what the scorecard says. */
async function watchSources(address: string, reject: boolean): Promise<string> {
  const page = await live.openPage(address);
  const sheet = page.getByRole('dialog', { name: 'Fly with a failure' });
  await sheet.getByRole('radio', { name: 'Sensors' }).check();
  await sheet.getByRole('button', { name: 'Fly this landing' }).click();
  const sources = page.getByRole('region', { name: 'Sources' });
  await sources.waitFor();
  expect(await page.locator('body').innerText()).toContain(CAUTION);
  if (reject) {
    // the coach says when something is wrong; whoever watches judges
    await page.getByText('Altimeter: something is wrong').waitFor();
    const altimeter = sources.getByRole('group', { name: /altimeter/i });
    await altimeter.getByRole('button', { name: 'Rejected' }).press('Enter');
    await altimeter.getByRole('button', { name: 'Rejected', pressed: true }).waitFor();
  }
  const scorecard = page.getByRole('region', { name: 'Scorecard' });
  await scorecard.waitFor({ timeout: 100_000 });
  return scorecard.innerText();
}

/** The pair of a row: what was believed, and what was true. */
function pairOf(card: string, label: string): readonly number[] {
  const row = new RegExp(`${label}\\s+([−\\d.]+)\\s*m(?:/s)?\\s+([−\\d.]+)\\s*m`).exec(card);
  if (row === null) throw new Error(`no row ${label} in ${card}`);
  return [Number(row[1]), Number(row[2])];
}

describe('a landing with a failure, from the seat at Sensors', () => {
  it('comes down softly when the frozen altimeter is rejected, and hard when it is believed', async () => {
    const [caught, believed] = await Promise.all([watchSources(FREEZES, true), watchSources(FREEZES, false)]);
    for (const card of [caught, believed]) expect(card).toMatch(/believed\s+true/);
    expect(caught).toMatch(/The altimeter froze [\d.]+\s*s after the start; it was doubted [\d.]+\s*s later/);
    expect(believed).toMatch(/The altimeter froze [\d.]+\s*s after the start; nobody doubted it/);
    const [, softly = 0] = pairOf(caught, 'came down at');
    const [, hard = 0] = pairOf(believed, 'came down at');
    // when it is rejected is a matter of the page's speed: before the estimate gives in to it, or soon after
    expect(softly).toBeLessThan(1.6);
    expect(hard).toBeGreaterThan(1.7);
    expect(live.faults).toEqual([]);
  }, 180_000);
});
