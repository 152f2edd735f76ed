import { execFileSync } from 'node:child_process';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { flyByHand } from '../../support/flyByHand.ts';
import { outOfReach } from '../../support/inReach.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';
import { ROOT } from '../../support/sources.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterAll(() => live.close());

/** One click, then keys alone, until the scorecard lies there. */
async function land(drift: number): Promise<{ page: Page; words: string }> {
  const page = await live.openPage('/');
  expect(await page.locator('body').innerText()).toContain(CAUTION);
  await page.getByRole('button', { name: 'Fly a landing' }).click();
  await flyByHand(page, { drift });
  const scorecard = page.getByRole('region', { name: 'Scorecard' });
  return { page, words: await scorecard.innerText() };
}

/** The speed that follows a word on the sheet [m/s]. */
function speedAfter(words: string, label: string): number {
  const found = new RegExp(`${label}\\s+(-?[\\d.]+)\\s*m/s`).exec(words);
  if (found === null) throw new Error(`No speed after ${label} in ${words}`);
  return Number(found[1]);
}

/** Runs one of the very commands that the scorecard offers, and answers its JSON. */
async function runOffered(page: Page, verb: 'limit' | 'touchdown'): Promise<string> {
  const details = page.getByText('What these limits mean, and how to check them');
  const offered = page.locator('.check-command').filter({ hasText: `kilter ${verb}` });
  if (!(await offered.isVisible())) await details.click();
  const [, ...args] = (await offered.innerText()).split(/\s+/).filter((word) => word !== 'npx');
  return execFileSync(process.execPath, ['server/cli/kilter.ts', ...args, '--json'], { cwd: ROOT, encoding: 'utf8' });
}

async function leastLimits(page: Page): Promise<{ plasticHorizontal: number; losslessHorizontal: number }> {
  const out = JSON.parse(await runOffered(page, 'limit')) as { least: Awaited<ReturnType<typeof leastLimits>> };
  return out.least;
}

/** In the words of the sheet. */
const ENDINGS: Readonly<Record<string, string>> = {
  upright: 'stays upright',
  overloaded: 'stands, a leg used up',
  'tipped downhill': 'tips over',
  'tipped uphill': 'tips over',
};

// both flights take their real time: side by side
describe.concurrent('a newcomer alone', () => {
  it('lands upright from the keyboard, and the scorecard says what kilter limit says for the same state', async ({
    expect,
  }) => {
    const { page, words } = await land(0);
    expect(words).toMatch(/Stayed upright, with [\d.]+\sm\/s to spare/);
    expect(words).toContain(CAUTION);
    const least = await leastLimits(page);
    expect(speedAfter(words, 'tripping limit')).toBeCloseTo(least.plasticHorizontal, 2);
    expect(speedAfter(words, 'cautious limit')).toBeCloseTo(least.losslessHorizontal, 2);

    // and what the whole lander does in six degrees of freedom is what kilter touchdown says
    const simulated = JSON.parse(await runOffered(page, 'touchdown')) as { outcome: string; leastMargin: number };
    expect(words).toContain(ENDINGS[simulated.outcome]);
    const inside = /at least ([\d.]+)\s*m inside its feet/.exec(words)?.[1];
    expect(Number(inside)).toBeCloseTo(simulated.leastMargin, 1);

    // the caution and the next descent stay in reach on every sheet
    const again = page.getByRole('button', { name: 'Again', exact: true }).last();
    expect(await outOfReach(page, again)).toEqual([]);

    // the same touchdown on three worlds is one click away, and so is another descent
    await page.getByRole('button', { name: 'Same touchdown on Earth, Mars, Moon' }).click();
    const worlds = page.getByRole('region', { name: 'The same touchdown on three worlds' });
    await expect.poll(() => worlds.innerText()).toMatch(/Moon[\s\S]*Mars[\s\S]*Earth/);
    expect(await worlds.innerText()).toContain(CAUTION);
    expect(await outOfReach(page, again)).toEqual([]);
    await worlds.getByRole('button', { name: 'Again' }).click();
    await page.getByRole('region', { name: 'Controls' }).waitFor();
    expect(live.faults).toEqual([]);
  });

  it('tips over when it keeps drifting, and is told by how much it was over the limit', async ({ expect }) => {
    const { page, words } = await land(4.6);
    expect(words).toMatch(/Tipped over/);
    const least = await leastLimits(page);
    expect(speedAfter(words, 'tripping limit')).toBeCloseTo(least.plasticHorizontal, 2);
    expect(speedAfter(words, 'touchdown')).toBeGreaterThan(least.plasticHorizontal);
    const simulated = JSON.parse(await runOffered(page, 'touchdown')) as { outcome: string };
    expect(words).toContain(`Simulated with every leg\n${ENDINGS[simulated.outcome]}`);

    // the browser's Back leads from the section and the three worlds to the scorecard, and from there to the start page
    const scorecard = page.getByRole('region', { name: 'Scorecard' });
    for (const name of ['Look at the section', 'Same touchdown on Earth, Mars, Moon']) {
      await scorecard.getByRole('button', { name }).click();
      await scorecard.waitFor({ state: 'hidden' });
      await page.goBack();
      await scorecard.waitFor();
    }
    await page.goBack();
    await expect.poll(() => page.locator('#start-status').innerText()).toBe('You left the flight.');
    expect(live.faults).toEqual([]);
  });
});
