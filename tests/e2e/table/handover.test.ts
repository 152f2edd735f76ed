import type { Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterEach(() => live.closePages());

afterAll(() => live.close());

const coach = (page: Page) => page.getByRole('region', { name: 'Coach' });

async function openAtSeat(seat: string): Promise<{ page: Page; address: string }> {
  const page = await live.openPage('/');
  await page.getByRole('button', { name: 'Open a table' }).click();
  await page.getByRole('button', { name: `Take ${seat}` }).click();
  const begin = page.getByRole('button', { name: 'Begin the descent' });
  await begin.click();
  await page.getByRole('region', { name: seat, exact: true }).waitFor();
  return { page, address: page.url() };
}

describe('whoever comes to the controls after a stand-in', () => {
  it('and was away from them, is told that they are back and how they were left, until both are set', async () => {
    const { page, address } = await openAtSeat('Flying');
    // away for longer than the three seconds that a last command stands
    await page.goto('about:blank');
    await page.waitForTimeout(3800);
    await page.goto(address);
    const words =
      /^You have the controls again\. The stand-in left thrust at \d+\s% and the lander (upright|leaning \d+° (left|right))\.$/;
    await expect.poll(() => coach(page).innerText()).toMatch(words);
    // what is said is what stands
    const said = /thrust at (\d+)/.exec(await coach(page).innerText())?.[1];
    expect(await page.locator('.control-thrust .control-value').innerText()).toMatch(new RegExp(`^${said}\\s%$`));
    await page.keyboard.press('ArrowUp');
    await expect
      .poll(() => coach(page).innerText())
      .toMatch(/^You have the controls again\. The stand-in left the lander/);
    await page.keyboard.press('c');
    await expect.poll(() => coach(page).innerText()).not.toContain('stand-in');
    expect(live.faults).toEqual([]);
  });

  it('and reloaded in between, is told nothing: the controls are as they left them', async () => {
    const { page } = await openAtSeat('Flying');
    await page.keyboard.press('ArrowUp');
    await page.reload();
    await coach(page).waitFor();
    await page.waitForTimeout(600);
    expect(await coach(page).innerText()).not.toContain('stand-in');
    expect(live.faults).toEqual([]);
  });

  it('and takes the seat mid-descent, is told now rather than again', async () => {
    const { page } = await openAtSeat('Lead');
    await page.waitForTimeout(500);
    // nothing has changed hands yet
    expect(await page.locator('.notice').isHidden()).toBe(true);
    await page.getByRole('button', { name: 'Take Flying' }).click();
    await expect
      .poll(() => coach(page).innerText())
      .toMatch(/^You have the controls now\. The stand-in left thrust at \d+\s%/);
    expect(live.faults).toEqual([]);
  });

  it('and is handed Flying by whoever sat there, is told that they have the controls', async () => {
    const { page, address } = await openAtSeat('Flying');
    const other = await live.openPage(`/${new URL(address).hash}`);
    // whoever comes while a descent runs has to be let in
    await page.getByRole('button', { name: /^Let .+ take a seat$/ }).click();
    await page.getByText('Your seat: stand up, hand over').press('Enter');
    await page.getByRole('button', { name: 'Hand over' }).press('Enter');
    await other.getByRole('region', { name: 'Flying', exact: true }).waitFor();
    await page.getByRole('region', { name: 'Observer', exact: true }).waitFor();
    // both are told, on the page and aloud
    await page.locator('.notice').getByText('You have no seat now: you watch.').waitFor();
    await other.locator('.notice').getByText('You sit at Flying now.').waitFor();
    expect(await other.getByRole('button', { name: 'More thrust' }).isEnabled()).toBe(true);
    expect(await page.getByRole('button', { name: 'More thrust' }).isDisabled()).toBe(true);
    expect(live.faults).toEqual([]);
  });
});
