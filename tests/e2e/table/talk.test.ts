import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';
import { press } from '../../support/press.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterAll(() => live.close());

/** The altimeter freezes 4.9 s after the start. */
const FREEZES = '/?lander=trivet&site=saddlers-bench&world=moon&start=middle&seed=2&sensorTrouble=seeded';
/** Three windows are drawn at once: those of phones, so that they keep up. */
const SMALL = { width: 390, height: 844 };

const slip = (page: Page, words: string | RegExp) => page.locator('.slip', { hasText: words });

/** Reads back by its key whatever waits for this seat, the oldest first. */
async function readBackAll(page: Page): Promise<void> {
  await expect
    .poll(async () => {
      const waiting = await page.locator('.slip[data-act="readBack"]').count();
      if (waiting > 0) await page.locator('body').press('r');
      return waiting;
    })
    .toBe(0);
}

/** All lines of the log of the crew on a page, the newest first. */
async function log(page: Page): Promise<string> {
  return (await page.locator('.talk-log li').allTextContents()).join('\n');
}

/** Lead, Sensors and somebody who watches. */
async function seatCrew(): Promise<{ readonly lead: Page; readonly sensors: Page; readonly watcher: Page }> {
  const lead = await live.openPage(FREEZES, SMALL);
  await lead.getByRole('dialog').getByRole('button', { name: 'Open a table for it' }).press('Enter');
  const code = (await lead.locator('.big-code').innerText()).replaceAll(' ', '');
  const sensors = await live.openPage(`/#table=${code}`, SMALL);
  const watcher = await live.openPage(`/#table=${code}`, SMALL);
  await press(lead, 'Take Lead');
  await press(sensors, 'Take Sensors');
  await press(lead, 'Begin the descent');
  await sensors.locator('.talk-card').waitFor();
  return { lead, sensors, watcher };
}

describe('a crew that talks', () => {
  it('calls out, reads back, confirms, polls and decides, by keys and by buttons', async () => {
    const { lead, sensors, watcher } = await seatCrew();

    // by key: the sentence goes to Lead with the source that is chosen
    await sensors.locator('body').press('2');
    // a stand-in may have spoken before: a phone's tray shows one slip at a time
    await slip(lead, 'Altimeter is frozen').waitFor({ state: 'attached' });
    expect(await slip(sensors, 'Altimeter is frozen').innerText()).toMatch(/You to Lead/);
    await lead
      .getByRole('status')
      .filter({ hasText: 'Sensors to you: Altimeter is frozen' })
      .waitFor({ state: 'attached' });
    // Lead is told which loop is open; a watcher hears nothing of what is said to one seat
    await lead.getByText(/Sensors: said to Lead \d+\ss ago, not read back/).waitFor();
    expect(await slip(watcher, 'Altimeter is frozen').count()).toBe(0);

    await readBackAll(lead);
    await slip(sensors, 'read back: confirm it')
      .getByRole('button', { name: /^Confirm/ })
      .press('Enter');
    await slip(sensors, 'Altimeter is frozen').waitFor({ state: 'detached' });
    await slip(lead, 'Altimeter is frozen').waitFor({ state: 'detached' });

    // a typed line to all is heard by whoever watches too
    await press(lead, 'Say');
    await lead.getByLabel('One line of your own').fill('who flies the drift?');
    await lead.getByLabel('One line of your own').press('Enter');
    await slip(watcher, 'who flies the drift?').waitFor({ state: 'attached' });

    await press(lead, /^Ask: go/);
    const poll = sensors.getByRole('region', { name: 'Poll' });
    await poll.getByLabel('Why, in a few words').fill('no height');
    await poll.getByRole('button', { name: 'No-go' }).press('Enter');
    await poll.getByText('You: No-go.').waitFor();
    // the stand-ins answer after some seconds: then everybody sees all
    const told = watcher.getByRole('region', { name: 'Poll' });
    await told.getByText('All answers are in.').waitFor();
    const seats = await told.locator('.poll-answers li').allInnerTexts();
    expect(new Set(seats.map((line) => line.split(/\s+/)[0]))).toEqual(
      new Set(['Flying', 'Sensors', 'Propellant', 'Site']),
    );
    expect(await told.getByText('no height').count()).toBe(1);
    await lead.getByRole('group', { name: 'You decide' }).getByRole('button', { name: 'No-go' }).press('Enter');
    await told.getByText('Decided: No-go.').waitFor();

    // what was said stands in the log, where it was heard
    expect(await log(sensors)).toMatch(/Sensors confirms: Altimeter is frozen/);
    expect(await log(watcher)).toMatch(/Lead → all: who flies the drift\?/);
    expect(await log(watcher)).not.toMatch(/Altimeter is frozen/);
    expect(live.faults).toEqual([]);
  });
});
