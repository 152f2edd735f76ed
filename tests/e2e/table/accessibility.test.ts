import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, it, type ExpectStatic } from 'vitest';
import { barriers } from '../../support/barriers.ts';
import { reportLostFocus } from '../../support/focusWatch.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';
import { press } from '../../support/press.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterAll(() => live.close());

const WIDE = { width: 1280, height: 720 };
const PHONE = { width: 390, height: 844 };
const LOW = '/?lander=trivet&site=saddlers-bench&world=moon&start=low&seed=2';

/** The page as it is now, in both windows. */
async function isOpenToAll(page: Page, expect: ExpectStatic): Promise<void> {
  for (const size of [WIDE, PHONE]) {
    await page.setViewportSize(size);
    expect(await barriers(page)).toEqual([]);
  }
  await page.setViewportSize(WIDE);
}

it('what keeps somebody out would be found', async ({ expect }) => {
  // beside the pages whose faults are told; those of the server take no styles or scripts from elsewhere
  const page = await (await live.openPage('/')).context().newPage();
  await page.setContent(`<!doctype html><html lang="en"><title>Planted</title><main><h1>Planted</h1>
    <button style="outline: none">unmarked</button>
    <p style="position: relative"><button>covered</button><i style="position: absolute; inset: 0; background: white"></i></p>
    <button onkeydown="event.preventDefault()">held</button> <button>behind</button>
    <input> <p role="status">once</p> <p role="status">once</p></main>`);
  const found = await barriers(page);
  for (const words of [
    /^label: input/,
    /^told twice: once/,
    /^does not show its focus: .*unmarked/,
    /^covered while it has the focus: .*covered/,
    /^Tab does not reach .*behind/,
    /^Tab does not reach input/,
  ])
    expect(found).toContainEqual(expect.stringMatching(words));
  expect(found).toHaveLength(6);

  await page.setContent('<button onclick="this.remove()">goes</button>');
  await page.evaluate(reportLostFocus);
  const told = page.waitForEvent('console');
  await press(page, 'goes');
  expect((await told).text()).toBe('the focus was lost from button "goes"');
});

const hasFocus = (page: Page, name: string) =>
  page.getByRole('button', { name, exact: true }).and(page.locator(':focus')).waitFor();

// each on a page of its own, side by side
describe.concurrent('nothing keeps anybody out who goes by keyboard or by reader', { timeout: 300_000 }, () => {
  it('on the start page and on what it opens, and Escape leads back to the button', async ({ expect }) => {
    const page = await live.openPage('/');
    await isOpenToAll(page, expect);
    for (const opener of ['Settings', 'Choose the landing', 'Fly with a failure', 'Run a drill']) {
      await press(page, opener);
      const sheet = page.getByRole('dialog');
      await sheet.waitFor();
      await isOpenToAll(page, expect);
      await page.keyboard.press('Escape');
      await sheet.waitFor({ state: 'hidden' });
      await hasFocus(page, opener);
    }
    await press(page, 'Open a table');
    await page.getByRole('button', { name: 'Begin the descent' }).waitFor();
    await isOpenToAll(page, expect);
    await press(page, 'Take Flying');
    await press(page, 'Change the landing');
    await page.getByRole('dialog').waitFor();
    await isOpenToAll(page, expect);
    await page.keyboard.press('Escape');
    await hasFocus(page, 'Change the landing');
    expect([...live.faults, ...live.lostFocus]).toEqual([]);
  });

  it('in a flight by hand, and in what lies over it', async ({ expect }) => {
    const page = await live.openPage(LOW);
    await press(page, 'Fly this landing');
    await page.getByRole('region', { name: 'Coach' }).waitFor();
    await page.keyboard.press('h');
    await isOpenToAll(page, expect);
    await press(page, 'Keys');
    await page.locator('.keys-sheet').waitFor();
    await isOpenToAll(page, expect);
    await page.keyboard.press('Escape');
    await page.locator('.keys-sheet').waitFor({ state: 'hidden' });
    await press(page, 'Keys');
    await page.keyboard.press('Escape');
    await hasFocus(page, 'Keys');
    await page.goBack();
    await page.getByRole('dialog', { name: 'Leave the descent?' }).waitFor();
    await isOpenToAll(page, expect);
    await page.keyboard.press('Escape');
    await hasFocus(page, 'Keys');
    expect([...live.faults, ...live.lostFocus]).toEqual([]);
  });

  it('in a flight by orders', async ({ expect }) => {
    const page = await live.openPage(`${LOW}&mode=by+orders`);
    await press(page, 'Fly this landing');
    await page.getByRole('slider', { name: 'Descent' }).waitFor();
    await page.keyboard.press('h');
    await isOpenToAll(page, expect);
    expect([...live.faults, ...live.lostFocus]).toEqual([]);
  });
});
