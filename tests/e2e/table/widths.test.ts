import { afterAll, beforeAll, describe, it } from 'vitest';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';
import { overprintsAtWidths, watchLettering } from '../../support/overprint.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterAll(() => live.close());

const LOW = '/?lander=trivet&site=saddlers-bench&world=moon&start=low&seed=2';
const BY_INSTRUMENTS = `${LOW}&sensorTrouble=seeded`;

// each on a page of its own, side by side
describe.concurrent('nothing lies on top of anything, or leaves the window, from 320 pixels on', () => {
  it('on the start page, in the settings, the choice and the lobby', async ({ expect }) => {
    const page = await live.openPage('/');
    expect(await overprintsAtWidths(page)).toEqual([]);
    for (const [name, sheet] of [
      ['Settings', 'Settings'],
      ['Fly with a failure', 'Fly with a failure'],
    ] as const) {
      await page.getByRole('button', { name }).click();
      await page.getByRole('dialog', { name: sheet }).waitFor();
      expect(await overprintsAtWidths(page)).toEqual([]);
      await page.keyboard.press('Escape');
    }
    await page.getByRole('button', { name: 'Open a table' }).click();
    await page.getByRole('button', { name: 'Begin the descent' }).waitFor();
    await watchLettering(page);
    expect(await overprintsAtWidths(page)).toEqual([]);
    expect(live.faults).toEqual([]);
  });

  it.for([
    ['in ink', LOW, 'Flying'],
    ['in pencil', BY_INSTRUMENTS, 'Flying'],
    ['in pencil, from Sensors', BY_INSTRUMENTS, 'Sensors'],
  ] as const)('in flight %s', async ([, address, seat], { expect }) => {
    const page = await live.openPage(address);
    if (address === BY_INSTRUMENTS) await page.getByRole('radio', { name: seat, exact: true }).check();
    await page.getByRole('button', { name: 'Fly this landing' }).click();
    await page.getByRole('region', { name: 'Coach' }).waitFor();
    await watchLettering(page);
    for (const passed of [500, 2500]) {
      await page.waitForTimeout(passed);
      await page.keyboard.press('h');
      expect(await overprintsAtWidths(page)).toEqual([]);
      await page.keyboard.press('h');
    }
  });
});
