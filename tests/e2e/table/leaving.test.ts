import type { Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { readReading } from '../../support/flyByHand.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterEach(() => live.closePages());

afterAll(() => live.close());

const question = (page: Page) => page.getByRole('dialog', { name: 'Leave the descent?' });
const startStatus = (page: Page) => page.locator('#start-status');

async function flyAlone(): Promise<Page> {
  const page = await live.openPage('/');
  await page.getByRole('button', { name: 'Fly a landing' }).click();
  await page.getByRole('region', { name: 'Flying' }).waitFor();
  return page;
}

describe('Back, in the browser', () => {
  it('holds a descent flown alone and asks; whoever stays flies on where it stood', async () => {
    const page = await flyAlone();
    await page.goBack();
    await question(page).waitFor();
    await page.waitForTimeout(400);
    const height = await readReading(page, 'height');
    await page.waitForTimeout(700);
    expect(await readReading(page, 'height')).toBe(height);
    // the flight keys rest while the question is open
    await page.keyboard.press('h');
    await page.waitForTimeout(400);
    expect(await readReading(page, 'height')).toBe(height);

    await page.keyboard.press('Escape');
    await question(page).waitFor({ state: 'hidden' });
    await expect.poll(() => readReading(page, 'height')).toBeLessThan(height);
    expect(live.faults).toEqual([]);
  });

  it('pressed again leads to the start page, with a word, from which one can fly anew', async () => {
    const page = await flyAlone();
    await page.goBack();
    await question(page).waitFor();
    await page.goBack();
    await expect.poll(() => startStatus(page).innerText()).toBe('You left the flight. Nothing of it is kept.');
    expect(new URL(page.url()).pathname).toBe('/');
    await page.getByRole('button', { name: 'Fly a landing' }).click();
    await page.getByRole('region', { name: 'Flying' }).waitFor();
    await page.goBack();
    await question(page).getByRole('button', { name: 'Leave' }).click();
    await expect.poll(() => startStatus(page).innerText()).toBe('You left the flight. Nothing of it is kept.');
    expect(live.faults).toEqual([]);
  });

  it('is not needed after a reload: a descent flown alone is where it was, on hold', async () => {
    const page = await flyAlone();
    await page.keyboard.press('ArrowUp');
    await page.waitForTimeout(900);
    const before = await readReading(page, 'height');
    await page.reload();
    await page.getByRole('button', { name: 'Resume' }).waitFor();
    const height = await readReading(page, 'height');
    expect(Math.abs(before - height)).toBeLessThan(6);
    await page.waitForTimeout(700);
    expect(await readReading(page, 'height')).toBe(height);
    await page.keyboard.press('h');
    await expect.poll(() => readReading(page, 'height')).toBeLessThan(height);
    // once it is left, a reload finds nothing to go on with
    await page.getByRole('button', { name: 'Leave the table' }).first().click();
    await page.reload();
    await page.getByRole('button', { name: 'Fly a landing' }).waitFor();
    await page.waitForTimeout(500);
    expect(await page.getByRole('region', { name: 'Flying' }).count()).toBe(0);
    expect(live.faults).toEqual([]);
  });

  it('leaves a gathering crew with the way back to it, under the same name; so does Leave', async () => {
    const page = await live.openPage('/');
    await page.getByRole('button', { name: 'Open a table' }).click();
    const code = await page.locator('.big-code').innerText();
    const watching = page.locator('.lobby .watching span');
    await expect.poll(() => watching.innerText()).toMatch(/^\w+, you$/);
    const name = await watching.innerText();
    const end = `#table=${code.replace(' ', '')}`;
    expect(new URL(page.url()).hash).toBe(end);
    // somebody else keeps the table open, and follows a link over the address of the start page
    const other = await live.openPage('/');
    const asked: string[] = [];
    other.on('request', (request) => asked.push(request.url().split('#')[0] ?? ''));
    await other.evaluate((hash) => void (location.hash = hash), end);
    await expect.poll(() => page.locator('.lobby .watching span').innerText()).toMatch(/^\w+, you · \w+( 2)?$/);

    // what proxies on the way write down opens no table
    expect(asked.some((address) => address.includes('/matchmake/join/table'))).toBe(true);
    expect(asked.filter((address) => address.includes(code.replace(' ', '')))).toEqual([]);

    const ways = [() => page.goBack(), () => page.getByRole('button', { name: 'Leave the table' }).first().click()];
    for (const leave of ways) {
      await leave();
      await expect.poll(() => startStatus(page).innerText()).toContain(`You left table ${code}.`);
      expect(new URL(page.url()).hash).toBe('');
      await page.getByRole('button', { name: 'Join' }).click();
      await expect.poll(() => watching.innerText()).toContain(name);
      expect(new URL(page.url()).hash).toBe(end);
    }
    // Forward after leaving leads back in as well
    await page.goBack();
    await startStatus(page).getByText('You left table').waitFor();
    await page.goForward();
    await expect.poll(() => watching.innerText()).toContain(name);
    expect(live.faults).toEqual([]);
  });
});
