import type { Locator } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { failingSizes, outOfReach, SIZES } from '../../support/inReach.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterEach(() => live.closePages());

afterAll(() => live.close());

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

async function boxOf(locator: Locator): Promise<Box> {
  const box = await locator.boundingBox();
  if (box === null) throw new Error('not shown');
  return box;
}

function overlap(a: Box, b: Box): number {
  const wide = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const tall = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return Math.max(0, wide) * Math.max(0, tall);
}

describe('the caution and the main action, at every size and without scrolling', () => {
  it('are in reach on the start page and in the lobby', async () => {
    const page = await live.openPage('/');
    const fly = page.getByRole('button', { name: 'Fly a landing' });
    expect(await outOfReach(page, fly)).toEqual([]);
    await page.getByRole('button', { name: 'Open a table' }).click();
    const begin = page.getByRole('button', { name: 'Begin the descent' });
    await begin.waitFor();
    expect(await outOfReach(page, begin)).toEqual([]);
  });

  it('are in reach in flight', async () => {
    const page = await live.openPage('/');
    await page.getByRole('button', { name: 'Fly a landing' }).click();
    const thrust = page.getByRole('button', { name: 'More thrust' });
    await thrust.waitFor();
    await page.keyboard.press('h');
    expect(await outOfReach(page, thrust)).toEqual([]);
    expect(live.faults).toEqual([]);
  });
});

describe('the table in flight', () => {
  it.each([
    ['by hand', '/', 'Fly a landing'],
    ['by orders', '/?mode=by+orders', 'Fly this landing'],
  ])('lays no card, strip or button over another at any size, %s', async (_, address, fly) => {
    const page = await live.openPage(address);
    await page.getByRole('button', { name: fly }).click();
    await page.getByRole('region', { name: 'Controls' }).waitFor();
    await page.keyboard.press('h');
    const parts = [
      page.getByRole('region', { name: 'Coach' }),
      page.getByRole('region', { name: 'Controls' }),
      page.getByRole('region', { name: 'Flying' }),
      page.getByRole('button', { name: 'Leave the table' }).first(),
      page.getByRole('button', { name: 'Again, from the start' }),
    ];
    const check = async () => {
      const [coach, controls, own, leave, again] = await Promise.all(parts.map(boxOf));
      if (coach === undefined || controls === undefined || own === undefined) throw new Error('a part is missing');
      if (leave === undefined || again === undefined) throw new Error('a button is missing');
      const pairs: readonly (readonly [Box, Box])[] = [
        [coach, controls],
        [coach, own],
        [controls, own],
        [leave, coach],
        [leave, own],
        [leave, again],
      ];
      return pairs.every(([a, b]) => overlap(a, b) === 0);
    };
    expect(await failingSizes(page, check)).toEqual([]);
  });

  it('opens the list of keys beside the controls, and Escape closes it', async () => {
    const page = await live.openPage('/');
    await page.getByRole('button', { name: 'Fly a landing' }).click();
    const keys = page.getByRole('button', { name: 'Keys' });
    const sheet = page.locator('.keys-sheet');
    for (const size of SIZES.slice(0, 4)) {
      await page.setViewportSize(size);
      await keys.click();
      await sheet.waitFor();
      expect(overlap(await boxOf(sheet), await boxOf(page.getByRole('region', { name: 'Controls' })))).toBe(0);
      await page.keyboard.press('Escape');
      await sheet.waitFor({ state: 'hidden' });
    }
    expect(live.faults).toEqual([]);
  });
});
