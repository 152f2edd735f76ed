import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { SEAT_NAMES } from '../../../client/text/en.ts';
import { CAUTION } from '../../../engine/constants.ts';
import { SEATS, type Seat } from '../../../engine/table/index.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';
import { press } from '../../support/press.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'kilter-six-'));
let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable([], folder);
});

afterAll(async () => {
  await live.close();
  rmSync(folder, { recursive: true });
});

/** Six windows are drawn at once: small ones, so that they keep up. */
const SMALL = { width: 640, height: 480 };
const PHONE = { width: 390, height: 844 };

const reads = (page: Page, words: string | RegExp) => page.getByText(words).first().waitFor({ timeout: 20_000 });
const isFlying = (page: Page) => page.locator('main[data-stage="descending"]').waitFor({ timeout: 20_000 });

type Crew = Readonly<Record<Seat, Page>>;

async function brief(): Promise<{ readonly facilitator: Page; readonly crew: Crew }> {
  const facilitator = await live.openPage('/', { width: 1280, height: 720 });
  await facilitator.getByLabel('your name').fill('Fay');
  await press(facilitator, 'Run a drill');
  await facilitator.getByRole('radio', { name: /Quiet altimeter/ }).check();
  await press(facilitator, 'Open a table and run it');
  const code = (await facilitator.locator('.big-code').innerText()).replaceAll(' ', '');
  const crew: Partial<Record<Seat, Page>> = {};
  for (const seat of SEATS) {
    const page = await live.openPage(`/?table=${code}`, seat === 'sensors' ? PHONE : SMALL);
    await press(page, `Take ${SEAT_NAMES[seat]}`);
    await press(page, 'I have read it');
    crew[seat] = page;
  }
  await reads(facilitator, '5 of 5 in the crew have read it.');
  const { lead, flying, sensors, propellant, site } = crew;
  if (!lead || !flying || !sensors || !propellant || !site) throw new Error('every seat is taken');
  return { facilitator, crew: { lead, flying, sensors, propellant, site } };
}

it('six people play a drill through a reload, a dropped line, a hand-over and a server that is killed', async () => {
  const { facilitator, crew } = await brief();
  const all = [facilitator, ...Object.values(crew)];
  await press(facilitator, 'Begin the descent');
  for (const page of all) await isFlying(page);

  // the altimeter falls silent: said, read back by whoever was told, confirmed
  await press(facilitator, /^Send now: The altimeter falls silent/);
  await reads(crew.sensors, /altimeter is lost/i);
  await crew.sensors
    .getByRole('group', { name: 'Altimeter: what you make of it' })
    .getByRole('button', { name: 'Rejected' })
    .press('Enter');
  await crew.sensors.locator('body').press('1');
  await crew.lead.locator('.slip', { hasText: /Altimeter/ }).waitFor();
  await crew.lead.locator('body').press('r');
  await crew.sensors.locator('.slip', { hasText: 'confirm it' }).waitFor();
  await crew.sensors.locator('body').press('r');
  await crew.lead.locator('.slip', { hasText: /Altimeter/ }).waitFor({ state: 'detached' });

  // one reloads, one loses the line for two seconds: both are back at their seats
  await crew.sensors.reload();
  await isFlying(crew.sensors);
  await crew.sensors.getByRole('group', { name: 'Altimeter: what you make of it' }).waitFor();
  await crew.flying.context().setOffline(true);
  await new Promise((resolve) => setTimeout(resolve, 2000));
  await crew.flying.context().setOffline(false);
  await crew.flying.locator('.connection', { hasText: 'Reconnecting' }).waitFor({ state: 'hidden', timeout: 20_000 });

  // Lead deals the seats anew: Propellant and Site change places, and each is told
  const people = crew.lead.getByLabel('Person', { exact: true });
  const propellant = await people.locator('option', { hasText: '(Propellant)' }).getAttribute('value');
  await people.selectOption(propellant);
  await crew.lead.getByLabel('Seat', { exact: true }).selectOption('site');
  await press(crew.lead, 'Deal');
  await reads(crew.propellant, 'You sit at Site now.');
  await reads(crew.site, 'You sit at Propellant now.');

  // the server is killed in mid-drill: everybody is back by themselves, on hold, and the facilitator goes on
  await live.crashServer();
  for (const page of all) await isFlying(page);
  await reads(facilitator, 'On hold');
  await press(facilitator, 'Resume');
  await facilitator.getByText('On hold').first().waitFor({ state: 'hidden' });
  expect(await facilitator.locator('body').innerText()).toContain(CAUTION);

  await press(facilitator, /^End the descent/);
  await press(facilitator, 'End it');
  for (const page of all) await page.locator('main[data-stage="resolved"]').waitFor({ timeout: 20_000 });
  expect(live.faults.filter((fault) => !/ERR_|WebSocket|Failed to load/.test(fault))).toEqual([]);
});
