import { execFileSync } from 'node:child_process';
import type { Page } from 'playwright';
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
  const details = page.getByText('How this was found, and how to check it');
  const offered = page.locator('.check-command').filter({ hasText: `kilter ${verb}` });
  if (!(await offered.isVisible())) await details.click();
  const [, ...args] = (await offered.innerText()).split(/\s+/).filter((word) => word !== 'npx');
  return execFileSync(process.execPath, ['server/cli/kilter.ts', ...args, '--json'], { cwd: ROOT, encoding: 'utf8' });
}

/** The closed form for feet together on rigid legs, as the command has it [m/s]. */
async function closedForm(page: Page): Promise<number> {
  const out = JSON.parse(await runOffered(page, 'limit')) as { least: { plasticHorizontal: number } };
  return out.least.plasticHorizontal;
}

// both flights take their real time: side by side
describe.concurrent('a newcomer alone', () => {
  it('lands upright from the keyboard, and the commands on the scorecard say the same', async ({ expect }) => {
    const { page, words } = await land(0);
    expect(words).toMatch(/Landed upright/);
    expect(words).toContain(CAUTION);
    // whatever is not a limit of this lander is folded away
    expect(words).not.toMatch(/rigid legs|cautious/);

    // below its tip limit it stands in the simulation that the sheet offers
    const simulated = JSON.parse(await runOffered(page, 'touchdown')) as { outcome: string };
    expect(simulated.outcome).toBe('upright');
    const reference = page.locator('.check');
    expect(speedAfter(await reference.innerText(), 'legs that do not give:')).toBeCloseTo(await closedForm(page), 2);

    // the lander stays in sight: its half of the section is free of the sheet
    const sheet = await page.getByRole('region', { name: 'Scorecard' }).boundingBox();
    expect(sheet?.x).toBeGreaterThan(0.5 * 1280);

    // the caution and the next descent stay in reach on every sheet
    const again = page.getByRole('button', { name: 'Again', exact: true }).last();
    expect(await outOfReach(page, again)).toEqual([]);

    // the same touchdown on three worlds is one click away, and so is another descent
    await page.getByRole('button', { name: 'Same touchdown on Earth, Mars, Moon' }).click();
    const worlds = page.getByRole('region', { name: 'The same touchdown on three worlds' });
    await expect.poll(() => worlds.innerText()).toMatch(/Moon[\s\S]*Mars[\s\S]*Earth/);
    expect(await worlds.innerText()).toContain(CAUTION);
    expect(await outOfReach(page, again)).toEqual([]);
    await worlds.getByRole('button', { name: 'Again', exact: true }).click();
    await page.getByRole('region', { name: 'Controls' }).waitFor();
    expect(live.faults).toEqual([]);
  });

  it('tips over when it keeps drifting, and is told from which speed on', async ({ expect }) => {
    // half again the limit; between 4.5 and 4.7 m/s the simulation, not the play, throws it back onto its feet off its hull
    const { page, words } = await land(3.6);
    expect(words).toMatch(/Tipped over/);
    const [, arrived = 0, tip = 0] = (
      /at ([\d.]+)\s*m\/s; (?:here|on this slope) it tips from ([\d.]+)/.exec(words) ?? []
    ).map(Number);
    expect(tip).toBeGreaterThan(0);
    expect(arrived).toBeGreaterThan(tip);
    const simulated = JSON.parse(await runOffered(page, 'touchdown')) as { outcome: string };
    expect(simulated.outcome).toMatch(/^tipped/);

    // the browser's Back leads from the section and the three worlds to the scorecard, and from there to the start page
    const scorecard = page.getByRole('region', { name: 'Scorecard' });
    for (const name of ['Look at the section', 'Same touchdown on Earth, Mars, Moon']) {
      await scorecard.getByRole('button', { name }).click();
      await scorecard.waitFor({ state: 'hidden' });
      await page.goBack();
      await scorecard.waitFor();
    }
    await page.goBack();
    await expect
      .poll(() => page.locator('#start-status').innerText())
      .toBe('You left the flight. Nothing of it is kept.');
    expect(live.faults).toEqual([]);
  });
});
