import type { Page } from 'playwright';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { barriers } from '../../support/barriers.ts';
import { cautionInReach, failingSizes, isInReach } from '../../support/inReach.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';
import { press } from '../../support/press.ts';
import { overprints, overprintsAtWidths } from '../../support/overprint.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterEach(() => live.closePages());

afterAll(() => live.close());

const WIDE = { width: 1280, height: 720 };
const PHONE = { width: 390, height: 844 };

const reads = (page: Page, words: string | RegExp) => page.getByText(words).first().waitFor({ timeout: 30_000 });

/** Each page as it is now. */
async function areOpenToAll(pages: readonly Page[]): Promise<void> {
  for (const page of pages) expect(await barriers(page)).toEqual([]);
}

/** The facilitator makes something else of somebody, who is on another page then. */
async function makes(facilitator: Page, name: string, role: string): Promise<void> {
  await press(facilitator, 'People');
  await facilitator.getByLabel(`What to make of ${name}`).selectOption(role);
  await press(facilitator, `Set: what ${name} is`);
}

/** Whoever only watches stops everything too, and the facilitator lifts it. */
async function stops(observer: Page, facilitator: Page): Promise<void> {
  const stands = facilitator.getByRole('dialog', { name: 'Real-world stop' });
  await press(observer, 'Real-world stop');
  await press(observer, 'Stop everything');
  await stands.waitFor();
  await press(facilitator, 'Lift the stop');
  await stands.waitFor({ state: 'hidden' });
  await observer.getByRole('dialog', { name: 'Real-world stop' }).waitFor({ state: 'hidden' });
}

/** Opens the drill as its facilitator, and says its code. */
async function openDrill(): Promise<{ readonly facilitator: Page; readonly code: string }> {
  const facilitator = await live.openPage('/', WIDE);
  await press(facilitator, 'Run a drill');
  await facilitator.getByRole('radio', { name: /Quiet altimeter/ }).check();
  await press(facilitator, 'Open a table and run it');
  const code = (await facilitator.locator('.big-code').innerText()).replaceAll(' ', '');
  return { facilitator, code };
}

async function join(
  code: string,
  name: string,
  as: { readonly role: string; readonly size: typeof WIDE },
): Promise<Page> {
  const page = await live.openPage('/', as.size);
  await page.getByLabel('your name').fill(name);
  await page.getByLabel('as', { exact: true }).selectOption(as.role);
  await page.getByLabel('or join with a code').fill(code);
  await press(page, 'Join');
  await page.getByRole('region', { name: 'Brief' }).waitFor();
  return page;
}

/** How often a page has fetched what there is of drills. */
const shelves = (page: Page) =>
  page.evaluate(
    () => performance.getEntriesByType('resource').filter(({ name }) => name.includes('/drillShelf-')).length,
  );

it('a facilitator, two of a crew and a room screen are briefed, play the start of a drill in all its ways, and stop', async () => {
  const { facilitator, code } = await openDrill();
  const lead = await join(code, 'Ada', { role: 'crew', size: PHONE });
  const sensors = await join(code, 'Bo', { role: 'crew', size: PHONE });
  const room = await join(code, 'Wall', { role: 'observer', size: WIDE });
  const all = [facilitator, lead, sensors, room];

  await stops(room, facilitator);
  await makes(facilitator, 'Wall', 'room screen');

  // the brief, on every screen; who has read it is told; only the facilitator begins
  for (const page of all) await reads(page, 'Call out a lost or wrong source of height within 5 s.');
  await press(lead, 'Take Lead');
  await press(sensors, 'Take Sensors');
  await press(lead, 'I have read it');
  await reads(facilitator, '1 of 2 in the crew have read it.');
  await press(sensors, 'I have read it');
  await reads(facilitator, '2 of 2 in the crew have read it.');
  for (const page of [lead, sensors, room])
    expect(await page.getByRole('button', { name: 'Begin the descent' }).count()).toBe(0);
  await press(facilitator, 'Begin the descent');
  for (const page of all) await page.locator('main[data-stage="descending"]').waitFor();
  for (const page of all) expect(await page.locator('body').innerText()).toContain(CAUTION);
  await areOpenToAll([room]);

  // what comes is on the facilitator's list alone, with a press to deal it, which leaves a trace
  const title = 'Hollin Room wants a decision';
  await press(facilitator, new RegExp(`^${title}`));
  await press(facilitator, `Send now: ${title}`);
  await reads(facilitator, /^sent T\+/);
  for (const page of [lead, sensors, room]) expect(await page.getByText(title).count()).toBe(0);
  // its card lies where the drill has it, and nowhere else
  for (const page of [lead, room]) await reads(page, 'From the desk: tell us by 60 m');
  expect(await sensors.getByText('From the desk').count()).toBe(0);

  // what asks first, and what lies open, is closed by Escape, and whoever opened it is where they were
  for (const [page, name] of [
    [facilitator, /^End the descent/],
    [facilitator, 'Rule card'],
    [sensors, 'Real-world stop'],
  ] as const) {
    await press(page, name);
    await page.locator(':popover-open').waitFor();
    await page.keyboard.press('Escape');
    await page.locator(':popover-open').waitFor({ state: 'hidden' });
    await page.getByRole('button', { name, exact: true }).and(page.locator(':focus')).waitFor();
  }

  // hold, by key; the crew is told who goes on
  await facilitator.keyboard.press('h');
  await reads(facilitator, 'On hold');
  await expect.poll(() => room.locator('.room-clock').innerText()).toContain('On hold');

  // of what was said to a phone one slip lies there, with a press for the others; what it can say opens over the page, and folds once it is said
  await lead.locator('body').press('5');
  await lead.locator('body').press('6');
  await press(sensors, /^\d more waits?$/);
  await expect.poll(() => sensors.locator('.slip', { hasText: 'Read back' }).count()).toBeGreaterThan(1);
  await press(sensors, 'Fewer');
  await press(sensors, 'Say');
  await sensors.locator('.sentences button:enabled').first().click();
  await sensors.locator('.talk-card[data-folded]').waitFor();

  // turns: an order lies face down until it is turned over, and is then carried out
  await press(facilitator, 'turns');
  await reads(sensors, 'The clock stands. Lay your orders.');
  await sensors
    .getByRole('group', { name: 'Altimeter: what you make of it' })
    .getByRole('button', { name: 'Rejected' })
    .press('Enter');
  await reads(sensors, 'Altimeter: rejected');
  await reads(facilitator, 'Every seat has laid an order.');
  await sensors.getByRole('button', { name: '1 more waits', exact: true }).waitFor();
  await areOpenToAll([facilitator, room, sensors]);
  expect(await lead.getByText('Altimeter: rejected').count()).toBe(0);
  await press(sensors, /^Take back/);
  await reads(facilitator, /^Awaited: Sensors\.$/);
  await sensors
    .getByRole('group', { name: 'Altimeter: what you make of it' })
    .getByRole('button', { name: 'Rejected' })
    .press('Enter');
  await press(facilitator, /^Turn over/);
  await reads(lead, /Sensors: .*altimeter rejected/);

  // the real-world stop: two presses by anybody, for all; the facilitator lifts it
  await press(sensors, 'Real-world stop');
  expect(await lead.getByRole('dialog', { name: 'Real-world stop' }).count()).toBe(0);
  await press(sensors, 'Stop everything');
  for (const page of all) await page.getByRole('dialog', { name: 'Real-world stop' }).waitFor();
  await areOpenToAll([facilitator, sensors]);
  await reads(lead, 'Bo called it. This is no part of the exercise.');
  expect(await lead.getByRole('button', { name: 'Lift the stop' }).count()).toBe(0);
  await press(facilitator, 'Lift the stop');
  for (const page of all) await page.getByRole('dialog', { name: 'Real-world stop' }).waitFor({ state: 'hidden' });

  // what the drill hides came to the page that chose it, and to none of the crew
  expect(await shelves(facilitator)).toBeGreaterThan(0);
  for (const page of [lead, sensors, room]) expect(await shelves(page)).toBe(0);

  for (const page of [facilitator, room]) {
    expect(await overprints(page)).toEqual([]);
    expect(await overprintsAtWidths(page)).toEqual([]);
  }
  for (const page of [facilitator, room]) await page.setViewportSize(WIDE);
  // a poll that is open, as whoever does not answer sees it
  await press(lead, /^Ask: go\?/);
  await reads(room, 'Go or no-go?');
  await areOpenToAll([room]);
  await makes(facilitator, 'Wall', 'observer');
  await room.getByRole('region', { name: 'Observer', exact: true }).waitFor();
  await reads(room, 'Go for landing?');
  await areOpenToAll([room]);
  await stops(room, facilitator);
  await makes(facilitator, 'Wall', 'evaluator');
  await room.getByRole('region', { name: 'Observe', exact: true }).waitFor();
  expect(await overprints(room)).toEqual([]);
  await areOpenToAll([room]);
  await room.setViewportSize(PHONE);
  await areOpenToAll([room]);
  await press(room, '+ Strength');
  await reads(room, /^Noted: /);

  // at rest and in the debrief
  await makes(facilitator, 'Wall', 'observer');
  await press(facilitator, /^End the descent/);
  await press(facilitator, 'End it');
  await room.getByRole('region', { name: 'Scorecard' }).waitFor();
  await stops(room, facilitator);
  // on a phone the lander lies above what is said of it
  const card = await sensors.getByRole('region', { name: 'Scorecard' }).boundingBox();
  const drawn = await sensors.locator('.section canvas').boundingBox();
  expect(drawn!.y).toBeLessThan(card!.y);
  await press(facilitator, 'Debrief');
  await press(facilitator, 'Next: Reactions');
  await room.getByRole('region', { name: 'Debrief' }).waitFor();
  await stops(room, facilitator);
  // the analysis has actions within what it says, and hides them while there is no clip
  await press(facilitator, 'Next: Description');
  await press(facilitator, 'Next: Analysis');
  await room.getByRole('heading', { name: 'Analysis' }).waitFor();
  await stops(room, facilitator);
  expect([...live.faults, ...live.lostFocus]).toEqual([]);
}, 600_000);

it('a drill is flown alone, from its brief on, with its event list in a part of the page that nobody else fetches', async () => {
  const page = await live.openPage('/', PHONE);
  const fetched: string[] = [];
  page.on('response', (response) => {
    if (response.url().endsWith('.js'))
      void response.text().then(
        (text) => fetched.push(text),
        () => undefined,
      );
  });
  await page.reload();
  await page.waitForLoadState('networkidle');
  const holdsEvents = () => fetched.filter((text) => text.includes('kilter-drill/1') && text.includes('groundTruth:`'));
  // what lies behind the start page is fetched ahead, once the page rests
  await expect.poll(() => fetched.length, { timeout: 60_000 }).toBeGreaterThan(1);
  expect(holdsEvents()).toEqual([]);
  await press(page, 'Run a drill');
  await page.getByLabel('Your seat').selectOption('flying');
  await press(page, 'Fly it alone');
  await page.getByRole('region', { name: 'Brief' }).waitFor();
  expect(holdsEvents()).toHaveLength(1);
  await press(page, 'Begin the descent');
  await page.getByRole('region', { name: 'Coach' }).waitFor();
  await press(page, 'Rule card');
  await page.getByRole('group', { name: 'Rule card' }).waitFor();
  await page.keyboard.press('Escape');
  // whoever flies finds Hold, what can be said and the caution in every window, with nothing scrolled
  await page.keyboard.press('h');
  const presses = [
    page.getByRole('button', { name: 'Resume' }),
    page.getByRole('button', { name: 'Say', exact: true }),
  ];
  const areInReach = async () =>
    [await cautionInReach(page), ...(await Promise.all(presses.map(isInReach)))].every(Boolean);
  const held = [PHONE, { width: 844, height: 390 }, { width: 320, height: 568 }, { width: 640, height: 480 }];
  expect(await failingSizes(page, areInReach, held)).toEqual([]);
  expect(await overprints(page)).toEqual([]);
  await page.setViewportSize(PHONE);
  await areOpenToAll([page]);
  expect(live.faults).toEqual([]);
});
