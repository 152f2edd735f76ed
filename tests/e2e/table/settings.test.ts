import { afterAll, beforeAll, describe, it } from 'vitest';
import { meaningOf } from '../../../client/text/glossary.ts';
import { SETTINGS } from '../../../client/text/en.ts';
import { CAUTION } from '../../../engine/constants.ts';
import { barriers } from '../../support/barriers.ts';
import { flyByHand } from '../../support/flyByHand.ts';
import { loudness, watchSound } from '../../support/soundGauge.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';
import { overprintsAtWidths, watchLettering } from '../../support/overprint.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterAll(() => live.close());

/** A length, a speed or a mass in SI, as the page writes them. */
const IN_SI = /\d\s*(m|m\/s|m\/s²|kg)(?![\w/²])/;

describe.concurrent('a flight by other hands', () => {
  it('goes on stepping while a button is held by a finger, and follows a gamepad until that is unplugged', async ({
    expect,
  }) => {
    const page = await live.openPage('/');
    await page.getByRole('button', { name: 'Fly a landing' }).click();
    const more = page.getByRole('button', { name: 'More thrust' });
    await more.waitFor();
    const percent = async () => Number.parseFloat(await page.locator('.control-value').first().innerText());
    const lean = () => page.locator('.control-value').nth(1).innerText();

    const before = await percent();
    await more.hover();
    await page.mouse.down();
    await expect.poll(percent).toBeGreaterThanOrEqual(before + 15);
    await page.mouse.up();
    await page.waitForTimeout(400);
    const held = await percent();
    await page.waitForTimeout(700);
    expect(await percent()).toBe(held);

    await page.evaluate(() => {
      const buttons = Array.from({ length: 17 }, () => ({ pressed: false, value: 0 }));
      const pad = { connected: true, mapping: 'standard', axes: [1, 0, 0, 0], buttons };
      Object.assign(window, { pads: [pad] });
      navigator.getGamepads = () => (window as unknown as { pads: Gamepad[] }).pads;
    });
    await expect.poll(lean).toMatch(/^([4-9]|\d\d)° right/);
    await page.evaluate(() => Object.assign(window, { pads: [null] }));
    // the figure follows a few times a second
    await page.waitForTimeout(700);
    const left = await lean();
    await page.waitForTimeout(500);
    expect(await lean()).toBe(left);
    expect(live.faults).toEqual([]);
  });
});

describe.concurrent('the settings', () => {
  it('change a key and the units for a whole flight, up to the scorecard and its print', async ({ expect }) => {
    const page = await live.openPage('/?start=low');
    await watchSound(page);
    await page.getByRole('button', { name: 'Back' }).click();
    await page.getByRole('button', { name: 'Settings' }).click();
    const sheet = page.getByRole('dialog', { name: 'Settings' });
    expect(await sheet.innerText()).toContain(CAUTION);
    await sheet.getByRole('radio', { name: /^US/ }).check();

    // a key that another action has is refused in words, and the next one taken
    await sheet.getByRole('button', { name: '↑: more thrust, change the key' }).press('Enter');
    await page.keyboard.press('d');
    await sheet.getByText('D is taken: lean right. Choose another.').waitFor();
    await page.keyboard.press('i');
    await sheet.getByRole('button', { name: 'I: more thrust, change the key' }).waitFor();
    await page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'hidden' });

    // kept over a reload
    await page.goto(`${live.origin}/?start=low`);
    const choice = page.getByRole('dialog', { name: 'Choose the landing' });
    expect(await choice.innerText()).not.toMatch(IN_SI);
    await choice.getByRole('button', { name: 'Fly this landing' }).click();
    const controls = page.getByRole('region', { name: 'Controls' });
    await controls.waitFor();
    const more = controls.getByRole('button', { name: 'More thrust' });
    expect(await more.locator('kbd').getAttribute('data-key')).toBe('I');
    expect(await more.getAttribute('aria-keyshortcuts')).toBe('i w');
    const before = await controls.locator('.control-value').first().innerText();
    await page.keyboard.press('ArrowUp');
    expect(await controls.locator('.control-value').first().innerText()).toBe(before);

    // a term by keyboard: it is described, takes no key of the flight, and Escape closes it
    const drift = page.getByRole('button', { name: 'drift', exact: true });
    await page.keyboard.press('Tab');
    await drift.focus();
    await page.getByRole('tooltip', { name: meaningOf('drift') }).waitFor();
    expect(await drift.getAttribute('aria-describedby')).toBe(await page.getByRole('tooltip').getAttribute('id'));
    await page.keyboard.press('i');
    await expect.poll(() => controls.locator('.control-value').first().innerText()).not.toBe(before);
    await page.keyboard.press('Escape');
    expect(await page.getByRole('tooltip').count()).toBe(0);

    // nothing is heard before it is asked for; then the engine, and nothing while the clock stands
    expect(await loudness(page)).toBeUndefined();
    await page.keyboard.press('v');
    await page.getByText(SETTINGS.soundOn).first().waitFor();
    await expect.poll(() => loudness(page)).toBeGreaterThan(0.003);
    await page.keyboard.press('h');
    await expect.poll(() => loudness(page)).toBeLessThan(1e-4);
    await page.keyboard.press('h');
    await expect.poll(() => loudness(page)).toBeGreaterThan(0.003);
    await page.keyboard.press('v');
    await page.getByText(SETTINGS.soundOff).first().waitFor();

    await watchLettering(page);
    await flyByHand(page, { drift: 0, more: 'i' });
    const scorecard = page.getByRole('region', { name: 'Scorecard' });
    const words = await scorecard.innerText();
    expect(words).toMatch(/Landed upright/);
    expect(words).toMatch(/came down at\s+[\d.]+\s*ft\/s/);
    expect(words).toMatch(/propellant left\s+\d+\s*lb/);
    expect(words).not.toMatch(IN_SI);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.desk').innerText()).not.toMatch(IN_SI);
    await page.emulateMedia({ media: 'screen' });

    // feet take more room than meters
    expect(await overprintsAtWidths(page)).toEqual([]);

    // the same sheet in SI, at once
    await scorecard.getByRole('button', { name: 'Settings' }).click();
    await sheet.getByRole('radio', { name: /^SI/ }).check();
    await sheet.getByRole('button', { name: 'Done' }).click();
    expect(await scorecard.innerText()).toMatch(/came down at\s+[\d.]+\s*m\/s/);
    expect(live.faults).toEqual([]);
  });
});

it('the check of the network says what goes through, and leads back to the start', async ({ expect }) => {
  const page = await live.openPage('/?network', { width: 390, height: 844 });
  await page.getByText('All well: you can open and join tables from here, over WebSocket.').waitFor();
  // a request, and a line in both ways
  expect(await page.getByText(/^works, \d+ ms$/).count()).toBe(3);
  expect(await page.getByText(CAUTION.split('.')[0] ?? '').count()).toBeGreaterThan(0);
  for (const width of [390, 1280]) {
    await page.setViewportSize({ width, height: 720 });
    expect(await barriers(page)).toEqual([]);
  }
  await page.getByRole('button', { name: 'Back to the start' }).click();
  await page.getByRole('button', { name: 'Fly a landing' }).waitFor();
  expect(new URL(page.url()).search).toBe('');
});
