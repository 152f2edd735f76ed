import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { SEAT_NAMES } from '../../../client/text/en.ts';
import { SEATS, type Seat } from '../../../engine/table/index.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';
import { press } from '../../support/press.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterAll(() => live.close());

/** The altimeter freezes 4.9 s after the start. */
const FREEZES = '/?lander=trivet&site=saddlers-bench&world=moon&start=low&seed=2&sensorTrouble=seeded';

/** Five windows are drawn at once: those of phones, so that they keep up. */
const SMALL = { width: 360, height: 640 };

const again = (page: Page) => page.getByRole('button', { name: 'Again', exact: true });

/** Presses Again until the countdown stands there: the card is laid anew when the fork comes, and a press in that moment is lost. */
async function askAgain(page: Page): Promise<void> {
  const countdown = page.getByRole('region', { name: 'Next descent' });
  await expect
    .poll(
      async () => {
        if (!(await countdown.isVisible())) await again(page).press('Enter');
        return countdown.isVisible();
      },
      { timeout: 15_000, interval: 500 },
    )
    .toBe(true);
}

type Crew = Readonly<Record<Seat, Page>>;

/** Five people, each in a browser of their own, each in a seat. */
async function seatCrew(): Promise<Crew> {
  const lead = await live.openPage(FREEZES, SMALL);
  await lead.getByRole('dialog').getByRole('button', { name: 'Open a table for it' }).press('Enter');
  const code = (await lead.locator('.big-code').innerText()).replaceAll(' ', '');
  const [flying, sensors, propellant, site] = await Promise.all(
    [1, 2, 3, 4].map(() => live.openPage(`/#table=${code}`, SMALL)),
  );
  if (flying === undefined || sensors === undefined || propellant === undefined || site === undefined)
    throw new Error('Four pages were opened');
  const crew = { lead, flying, sensors, propellant, site };
  for (const seat of SEATS) await press(crew[seat], `Take ${SEAT_NAMES[seat]}`);
  await press(lead, 'Begin the descent');
  return crew;
}

/** Waits until every page but that of this seat says so. */
async function everybodyElseReads(crew: Crew, seat: Seat, words: string | RegExp): Promise<void> {
  const others = SEATS.filter((other) => other !== seat).map((other) => crew[other]);
  await Promise.all(others.map((page) => page.getByText(words).first().waitFor({ timeout: 10_000 })));
}

/** What each page says at the end, which is the same on all. */
async function cardOf(crew: Crew): Promise<string> {
  const cards = SEATS.map((seat) => crew[seat].getByRole('region', { name: 'Scorecard' }));
  await Promise.all(cards.map((card) => card.waitFor({ timeout: 60_000 })));
  let texts: readonly string[] = [];
  // what a sound source would have given reaches one page a moment before another
  await expect
    .poll(async () => {
      texts = await Promise.all(cards.map((card) => card.locator('.sheet-body').innerText()));
      return new Set(texts).size;
    })
    .toBe(1);
  return texts[0] ?? '';
}

/** How fast it came down in truth [m/s]. */
function trueRate(card: string): number {
  const row = /came down at\s+[−\d.]+\s*m\/s\s+([−\d.]+)\s*m/.exec(card);
  if (row === null) throw new Error(`no descent rate in ${card}`);
  return Number(row[1]);
}

describe('five people at one table, by instruments', () => {
  it('each do what only they can, all see it, and Sensors saves the landing that is lost without', async () => {
    const crew = await seatCrew();
    await crew.propellant.getByRole('region', { name: /^Propellant: what only you set/ }).waitFor();
    await press(crew.lead, 'Hold');
    await everybodyElseReads(crew, 'lead', /^On hold/);
    for (const seat of SEATS) expect(await crew[seat].locator('body').innerText()).toContain(CAUTION);

    await press(crew.propellant, '− Lower the thrust ceiling by 5 %');
    await everybodyElseReads(crew, 'propellant', /Propellant: ceiling 95/);
    await crew.site.getByRole('slider', { name: 'Spot to land at' }).press('ArrowRight');
    await press(crew.site, 'State it');
    await everybodyElseReads(crew, 'site', /Site: spot .+ · limit [\d.]+/);
    // the stand-in then lands where it would anyway
    await press(crew.site, 'Clear');
    await press(crew.sensors, 'Align the inertial unit');
    await crew.lead.getByText(/Sensors: aligning the inertial unit/).waitFor();
    // what is armed is open for Lead alone; it is disarmed again
    await press(crew.propellant, '1. Arm');
    await crew.lead.getByText(/Propellant: cut-off armed/).waitFor();
    await press(crew.propellant, 'Disarm');
    // the commanded thrust stands on the page of Propellant, who holds it against what is felt
    const before = await crew.propellant.getByText(/^felt .+, commanded/).innerText();
    await crew.flying.keyboard.press('ArrowUp');
    await expect.poll(() => crew.propellant.getByText(/^felt .+, commanded/).innerText()).not.toBe(before);
    // Flying stands up; Lead deals the seat to nobody: the stand-in lands
    await crew.flying.getByText('Your seat: stand up, hand over').press('Enter');
    await press(crew.flying, 'Stand up');
    for (const seat of ['lead', 'sensors', 'propellant', 'site'] as const)
      await crew[seat]
        .getByRole('listitem')
        .filter({ hasText: /^Flying\s*stand-in/ })
        .waitFor();

    await press(crew.lead, 'Resume');
    const coach = crew.sensors.getByRole('region', { name: 'Coach' });
    await coach.getByText('Altimeter: something is wrong').waitFor({ timeout: 30_000 });
    await crew.sensors
      .getByRole('group', { name: 'Altimeter: what you make of it' })
      .getByRole('button', { name: 'Rejected' })
      .press('Enter');
    await crew.sensors.getByRole('combobox', { name: /^Altimeter/ }).selectOption('frozen');
    await everybodyElseReads(crew, 'sensors', /Sensors: altimeter: frozen/);
    const caught = await cardOf(crew);
    expect(caught).toMatch(/The altimeter froze [\d.]+\s*s after the start; it was doubted \d+\s*s later/);
    expect(caught).toMatch(/Its cause was named rightly \d+\s*s after it began/);

    // Again is for Lead; everybody is told, and may ask to wait
    expect(await again(crew.site).isDisabled()).toBe(true);
    const countdowns = SEATS.map((seat) => crew[seat].getByRole('region', { name: 'Next descent' }));
    await askAgain(crew.lead);
    await Promise.all(countdowns.map((countdown) => countdown.waitFor()));
    await press(crew.site, 'Wait');
    await Promise.all(countdowns.map((countdown) => countdown.waitFor({ state: 'hidden' })));
    await askAgain(crew.lead);
    await crew.lead.getByRole('region', { name: 'Scorecard' }).waitFor({ state: 'hidden', timeout: 15_000 });
    // the same descent, and nobody judges
    const believed = await cardOf(crew);
    expect(believed).toMatch(/The altimeter froze [\d.]+\s*s after the start; nobody doubted it/);
    expect(trueRate(caught)).toBeLessThan(1.6);
    expect(trueRate(believed)).toBeGreaterThan(1.7);
    expect(live.faults).toEqual([]);
  }, 180_000);
});
