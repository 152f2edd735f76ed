import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { SEAT_NAMES } from '../../../client/text/en.ts';
import { CAUTION } from '../../../engine/constants.ts';
import { SEATS, type Seat } from '../../../engine/table/index.ts';
import { barriers } from '../../support/barriers.ts';
import { dropLine } from '../../support/dropLine.ts';
import { keepReport, leadDebrief } from '../../support/leadDebrief.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';
import { press } from '../../support/press.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'kilter-six-'));
let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable({ records: folder, framesApartMs: 100 });
});

afterAll(async () => {
  await live.close();
  rmSync(folder, { recursive: true });
});

/** Six windows are drawn at once: mostly small ones, and seldom, so that they keep up. */
const WIDE = { width: 1280, height: 720 };
const PHONE = { width: 390, height: 844 };

/** Six windows on a small machine: what is waited for comes, however late. */
const LATE = { timeout: 60_000 };

const reads = (page: Page, words: string | RegExp) =>
  page.getByText(words).filter({ visible: true }).first().waitFor(LATE);
const isFlying = (page: Page) => page.locator('main[data-stage="descending"]').waitFor(LATE);

type Crew = Readonly<Record<Seat, Page>>;

async function brief(): Promise<{ readonly facilitator: Page; readonly crew: Crew }> {
  const facilitator = await live.openPage('/', WIDE);
  await facilitator.getByLabel('your name').fill('Fay');
  await press(facilitator, 'Run a drill');
  await facilitator.getByRole('radio', { name: /Quiet altimeter/ }).check();
  await press(facilitator, 'Open a table and run it');
  const code = (await facilitator.locator('.big-code').innerText()).replaceAll(' ', '');
  const crew: Partial<Record<Seat, Page>> = {};
  for (const seat of SEATS) {
    const page = await live.openPage(`/#table=${code}`, seat === 'lead' ? WIDE : PHONE);
    await press(page, `Take ${SEAT_NAMES[seat]}`);
    await press(page, 'I have read it');
    crew[seat] = page;
  }
  await reads(facilitator, '5 of 5 in the crew have read it.');
  for (const page of [facilitator, crew.sensors, crew.lead]) expect(page && (await barriers(page))).toEqual([]);
  const { lead, flying, sensors, propellant, site } = crew;
  if (!lead || !flying || !sensors || !propellant || !site) throw new Error('every seat is taken');
  return { facilitator, crew: { lead, flying, sensors, propellant, site } };
}

/** The altimeter falls silent: said, read back by whoever was told, confirmed. */
async function losesAltimeter(facilitator: Page, { sensors, lead }: Crew): Promise<void> {
  await press(facilitator, /^Send now: The altimeter falls silent/);
  await reads(sensors, /altimeter is lost/i);
  await sensors
    .getByRole('group', { name: 'Altimeter: what you make of it' })
    .getByRole('button', { name: 'Rejected' })
    .press('Enter');
  await sensors.locator('body').press('1');
  await lead.locator('.slip', { hasText: /Altimeter/ }).waitFor(LATE);
  await lead.locator('body').press('r');
  await sensors.locator('.slip', { hasText: 'confirm it' }).waitFor(LATE);
  await sensors.locator('body').press('r');
  await lead.locator('.slip', { hasText: /Altimeter/ }).waitFor({ state: 'detached', ...LATE });
}

/** One reloads, one loses the line: both are back at their seats. */
async function comeBack({ sensors, flying }: Crew): Promise<void> {
  await sensors.reload();
  await isFlying(sensors);
  await sensors.getByRole('group', { name: 'Altimeter: what you make of it' }).waitFor(LATE);
  await dropLine(flying, () => flying.locator('main[data-line="reconnecting"]').waitFor(LATE));
  await flying.locator('main[data-line="connected"]').waitFor(LATE);
}

/** Lead deals the seats anew: Propellant and Site change places, and each is told. */
async function dealsSeats({ lead, propellant, site }: Crew): Promise<void> {
  const people = lead.getByLabel('Person', { exact: true });
  const value = await people.locator('option', { hasText: '(Propellant)' }).getAttribute('value');
  await people.selectOption(value);
  await lead.getByLabel('Seat', { exact: true }).selectOption('site');
  await press(lead, 'Deal');
  await reads(propellant, 'You sit at Site now.');
  await reads(site, 'You sit at Propellant now.');
}

it(
  'six people play a drill through a reload, a dropped line, a hand-over and a killed server, and look back at it up to the printed report',
  { timeout: 600_000 },
  async () => {
    const { facilitator, crew } = await brief();
    const all = [facilitator, ...Object.values(crew)];
    await press(facilitator, 'Begin the descent');
    for (const page of all) await isFlying(page);
    await losesAltimeter(facilitator, crew);
    await comeBack(crew);
    await dealsSeats(crew);

    // the server is killed in mid-drill: everybody is back by themselves, on hold, and the facilitator goes on
    await live.crashServer();
    for (const page of all) await isFlying(page);
    await reads(facilitator, 'On hold');
    // a page whose line is not back yet still shows the descent, and loses what is pressed
    await reads(crew.lead, 'On hold');
    await press(crew.lead, /^Ask: go\?/);
    for (const page of all) {
      await reads(page, /Go for landing\?/);
      expect(await barriers(page)).toEqual([]);
      // each seat once as on a desk too
      if (page === facilitator || page === crew.lead) continue;
      await page.setViewportSize(WIDE);
      expect(await barriers(page)).toEqual([]);
      await page.setViewportSize(PHONE);
    }
    await press(facilitator, 'Resume');
    await facilitator
      .getByText('On hold')
      .first()
      .waitFor({ state: 'hidden', ...LATE });
    expect(await facilitator.locator('body').innerText()).toContain(CAUTION);

    // it has been silent for long enough to be seen so in a clip
    await reads(crew.sensors, /^no data/);
    await press(facilitator, /^End the descent/);
    await press(facilitator, 'End it');
    for (const page of all) await page.getByRole('region', { name: 'Scorecard' }).waitFor(LATE);
    for (const page of [facilitator, crew.sensors, crew.lead]) expect(await barriers(page)).toEqual([]);
    await leadDebrief({ facilitator, sensors: crew.sensors, all });
    await keepReport(facilitator);
    expect(live.lostFocus).toEqual([]);
    expect(live.faults.filter((fault) => !/ERR_|WebSocket|Failed to load/.test(fault))).toEqual([]);
  },
);
