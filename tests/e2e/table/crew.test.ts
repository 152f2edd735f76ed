import type { Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { flyByHand, readReading } from '../../support/flyByHand.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable({ isPageKept: true });
});

afterEach(() => live.closePages());

afterAll(() => live.close());

async function openTable(): Promise<{ page: Page; code: string }> {
  const page = await live.openPage('/?start=low');
  await page.getByRole('button', { name: 'Open a table for it' }).click();
  const code = await page.locator('.big-code').innerText();
  return { page, code };
}

const scorecardOf = (page: Page) => page.getByRole('region', { name: 'Scorecard' });
const again = (page: Page) => scorecardOf(page).getByRole('button', { name: 'Again', exact: true });

describe('a crew of two at one table', () => {
  it('joins by the code in three actions, shares a descent by seat, survives reloads, and reads the same scorecard', async () => {
    const { page: first, code } = await openTable();
    expect(code).toMatch(/^[BCDFGHJKLMNPQRSTVWXZ]{3} [BCDFGHJKLMNPQRSTVWXZ]{3}$/);
    await first.getByRole('button', { name: 'Take Flying' }).click();

    // three actions: type the code (in lower case), join, take a seat
    const second = await live.openPage('/');
    await second.getByLabel('or join with a code').fill(code.toLowerCase());
    await second.getByRole('button', { name: 'Join' }).click();
    await second.getByRole('button', { name: 'Take Propellant' }).click();

    // and somebody comes to watch
    const third = await live.openPage(`/?table=${code.replaceAll(' ', '')}`);
    await third.getByRole('region', { name: 'Open table' }).waitFor();
    // locked against whoever else has the code; those who are here come back all the same
    await first.locator('.lobby summary').click();
    await first.locator('.lobby').getByRole('button', { name: 'Lock the table', exact: true }).click();
    await third.locator('.lobby').getByText('Locked: nobody else can join.').waitFor();

    await first.getByRole('button', { name: 'Begin the descent' }).click();
    await second.getByRole('button', { name: /Lower the thrust ceiling/ }).waitFor();

    // each seat holds its own controls, and is not shown the other's
    for (const name of ['More thrust', 'Lean left']) {
      await expect.poll(() => first.getByRole('button', { name }).isEnabled()).toBe(true);
      expect(await second.getByRole('button', { name }).isVisible()).toBe(false);
    }
    expect(await first.getByRole('button', { name: /Lower the thrust ceiling/ }).isVisible()).toBe(false);

    // either reloads and is back in its seat, in the same descent
    for (const [page, seat] of [
      [first, 'Flying'],
      [second, 'Propellant'],
    ] as const) {
      await page.reload();
      await page.getByRole('region', { name: seat, exact: true }).waitFor();
    }
    const rates = await Promise.all([readReading(first, 'descent rate'), readReading(second, 'descent rate')]);
    expect(Math.abs(rates[0] - rates[1])).toBeLessThan(2);

    await flyByHand(first, { drift: 0 });
    const [one, other] = await Promise.all(
      [first, second].map((page) => scorecardOf(page).locator('.sheet-body').innerText()),
    );
    expect(one).toBe(other);
    expect(one).toContain('Landed upright');
    // whoever does not decide cannot start another descent, and sees who can
    await expect.poll(() => again(third).isDisabled()).toBe(true);
    for (const page of [second, third]) expect(await scorecardOf(page).innerText()).toMatch(/\(Flying\) starts it\./);
    expect(await again(second).isDisabled()).toBe(true);
    expect(await again(first).isEnabled()).toBe(true);
    expect(live.faults).toEqual([]);
  });

  it('tells who types a wrong code that there is no such table, and leaves them on the start page', async () => {
    const page = await live.openPage('/');
    await page.getByLabel('or join with a code').fill('bbbbbb');
    await page.getByRole('button', { name: 'Join' }).click();
    const status = page.locator('#code-problem');
    await expect.poll(() => status.innerText()).toMatch(/No open table has this code/);
    expect(await page.getByRole('button', { name: 'Fly a landing' }).isVisible()).toBe(true);
  });
});
