import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { barriers } from '../../support/barriers.ts';
import { flyByHand } from '../../support/flyByHand.ts';
import { outOfReach } from '../../support/inReach.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';
import { press } from '../../support/press.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterEach(() => live.closePages());

afterAll(() => live.close());

/** Over level ground, on which it comes to rest at once; on the ledge it rocks for forty seconds. */
const FLOWN = '/?lander=steeple&site=pinfold-plain&world=moon&start=low&seed=1';
const CHOSEN = '/?lander=steeple&site=coombe-ledge&world=moon&start=low&seed=1';

describe('a landing of one’s own choice', () => {
  it('is chosen with the keyboard from the start page, flown, and scored', async () => {
    const page = await live.openPage('/');
    await page.getByRole('button', { name: 'Choose the landing' }).press('Enter');
    const sheet = page.getByRole('dialog', { name: 'Choose the landing' });
    expect(await sheet.innerText()).toContain(CAUTION);
    const landers = sheet.getByRole('group', { name: 'Lander' });
    await landers.getByRole('radio', { name: /^Trivet/ }).press('ArrowRight');
    await sheet.getByRole('radio', { name: /^Saddler's Bench/ }).press('ArrowRight');
    await sheet.getByRole('radio', { name: /^High/ }).press('ArrowRight');
    await sheet.getByRole('radio', { name: /^Middle/ }).press('ArrowRight');
    expect(await sheet.getByRole('radio', { name: /^Low/ }).isChecked()).toBe(true);
    expect(new URL(page.url()).search).toBe(FLOWN.slice(1));
    await sheet.getByRole('button', { name: 'Fly this landing' }).press('Enter');

    await page.getByRole('heading', { level: 1, name: 'Steeple over Pinfold Plain' }).waitFor();
    await flyByHand(page, { drift: 0 });
    const scorecard = await page.getByRole('region', { name: 'Scorecard' }).innerText();
    expect(scorecard).toMatch(/Steeple/);
    expect(scorecard).toMatch(/Pinfold Plain/);
    expect(scorecard).toContain(CAUTION);
    expect(await barriers(page)).toEqual([]);
    await press(page, /Earth, Mars, Moon/);
    await page.getByRole('heading', { name: 'The same touchdown on three worlds' }).waitFor();
    expect(await barriers(page)).toEqual([]);
    expect(live.faults).toEqual([]);
  }, 180_000);

  it('is laid out again by its link, and gone on with after a reload', async () => {
    const page = await live.openPage(CHOSEN);
    const sheet = page.getByRole('dialog', { name: 'Choose the landing' });
    await sheet.waitFor();
    for (const name of [/^Steeple/, /^Coombe Ledge/, /^Low/])
      expect(await sheet.getByRole('radio', { name }).isChecked()).toBe(true);
    await sheet.getByRole('button', { name: 'Fly this landing' }).click();
    await page.getByRole('button', { name: 'More thrust' }).waitFor();
    await page.waitForTimeout(1500);
    await page.reload();
    await page.getByRole('button', { name: 'More thrust' }).waitFor();
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toContain('Steeple over Coombe Ledge');
    expect(live.faults).toEqual([]);
  });

  it('gives way in words where the lander cannot be flown on the world of the link', async () => {
    const page = await live.openPage('/?lander=bolster&world=mars');
    const sheet = page.getByRole('dialog', { name: 'Choose the landing' });
    await sheet.waitFor();
    expect(await sheet.getByRole('status').first().innerText()).toMatch(
      /Moon now, in place of Mars, where the engine of Bolster/,
    );
    expect(await sheet.getByLabel('World').inputValue()).toBe('moon');
    await page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'hidden' });
    await expect.poll(() => new URL(page.url()).search).toBe('');
    expect(live.faults).toEqual([]);
  });

  it('says what is wrong with a link, and falls back to the first landing', async () => {
    const page = await live.openPage('/?lander=tripet');
    const sheet = page.getByRole('dialog', { name: 'Choose the landing' });
    await sheet.waitFor();
    expect(await sheet.getByRole('status').first().innerText()).toMatch(/lander: expected one of "trivet"/);
    expect(await sheet.getByRole('radio', { name: /^Trivet/ }).isChecked()).toBe(true);
    expect(live.faults).toEqual([]);
  });

  it('can be played by a crew at a table of its own', async () => {
    const page = await live.openPage(CHOSEN);
    const sheet = page.getByRole('dialog', { name: 'Choose the landing' });
    await sheet.getByRole('button', { name: 'Open a table for it' }).click();
    await page.getByRole('button', { name: 'Begin the descent' }).waitFor();
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toContain('Steeple over Coombe Ledge');
    expect(live.faults).toEqual([]);
  });

  it('is changed in the lobby by whoever decides, and the table is laid anew for everybody', async () => {
    const page = await live.openPage('/');
    await page.getByRole('button', { name: 'Open a table' }).click();
    const change = page.getByRole('button', { name: 'Change the landing' });
    await page.getByRole('button', { name: 'Take Flying' }).click();
    const other = await live.openPage(`/${new URL(page.url()).hash}`);
    await other.getByRole('button', { name: 'Take Site' }).click();
    await change.click();
    const sheet = page.getByRole('dialog', { name: 'Choose the landing' });
    expect(await sheet.innerText()).toContain(CAUTION);
    await sheet.getByRole('radio', { name: /^Steeple/ }).check();
    await sheet.getByRole('radio', { name: /^By orders/ }).check();
    await sheet.getByRole('radio', { name: /^Low/ }).check();
    await sheet.getByRole('button', { name: 'Play this landing' }).click();
    for (const at of [page, other]) await at.getByText("Steeple over Saddler's Bench, low start, by orders.").waitFor();
    expect(await other.getByRole('button', { name: 'Change the landing' }).isVisible()).toBe(false);
    await page.getByRole('button', { name: 'Begin the descent' }).click();
    await page.getByRole('slider', { name: 'Descent' }).waitFor();
    await other.getByRole('region', { name: 'Site', exact: true }).waitFor();
    expect(live.faults).toEqual([]);
  });

  it('keeps the caution and the way on in reach at every size, and shows all fields at once on a usual screen', async () => {
    const page = await live.openPage('/');
    await page.getByRole('button', { name: 'Choose the landing' }).click();
    const below = await page
      .locator('.laid-over-body')
      .evaluate(
        (body) =>
          [...body.querySelectorAll('input, select')].filter(
            (field) => field.getBoundingClientRect().bottom > body.getBoundingClientRect().bottom,
          ).length,
      );
    expect(below).toBe(0);
    expect(await outOfReach(page, page.getByRole('button', { name: 'Fly this landing' }))).toEqual([]);
    expect(await outOfReach(page, page.getByRole('button', { name: 'Back' }))).toEqual([]);
  });
});
