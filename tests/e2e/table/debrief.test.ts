import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { parseRecord } from '../../../engine/record/index.ts';
import { drillAtRest } from '../../support/drillAtRest.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';

let live: LiveTable;
let records: string;

beforeAll(async () => {
  records = await mkdtemp(path.join(tmpdir(), 'kilter-'));
  live = await setLiveTable([], records);
});

afterAll(async () => {
  await live.close();
  await rm(records, { recursive: true });
});

/** What a file holds that this button saves. */
async function saved(page: Page, name: string): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name }).click();
  return readFile(await (await download).path(), 'utf8');
}

/** The sheet of the debrief on a page. */
const debrief = (page: Page) => page.getByRole('region', { name: 'Debrief' });

describe('a debrief in two browsers', () => {
  it(
    'is led by who runs the table, on both screens at once, and ends in a report that can be kept',
    { timeout: 90_000 },
    async () => {
      const { runs, crew, link } = await drillAtRest(live);
      await canStop(runs, crew);
      await runs.getByRole('button', { name: 'Debrief', exact: true }).click();
      await handsIn(crew);
      await leadsToAnalysis(runs, crew);
      await playsClip(runs, crew);
      await asksWhatIf(runs, crew);
      await sumsUp(runs, crew);
      await keepsReport(runs);
      expect(live.faults).toEqual([]);
      link.leave();
    },
  );
});

const stop = (page: Page) => page.getByRole('button', { name: 'Real-world stop' });

/** Whoever runs the table and whoever sits at it reach the real-world stop on the card, beside the section, and in the debrief: not under a sheet, and by key. */
async function canStop(runs: Page, crew: Page): Promise<void> {
  for (const page of [runs, crew]) await expect.poll(() => isMet(stop(page))).toBe(true);
  await crew.getByRole('button', { name: 'Look at the section' }).press('Enter');
  await expect.poll(() => isMet(stop(crew))).toBe(true);
  await stop(crew).press('Enter');
  await crew.getByRole('button', { name: 'Stop everything' }).press('Enter');
  for (const page of [runs, crew]) await page.getByRole('dialog', { name: 'Real-world stop' }).waitFor();
  await runs.getByRole('button', { name: 'Lift the stop' }).press('Enter');
  for (const page of [runs, crew])
    await page.getByRole('dialog', { name: 'Real-world stop' }).waitFor({ state: 'hidden' });
  await crew.getByRole('button', { name: 'Back to the scorecard' }).press('Enter');
}

/** Whether a finger in the middle of it would press it. */
async function isMet(button: Locator): Promise<boolean> {
  if ((await button.count()) !== 1) return false;
  return button.evaluate((node) => {
    const { left, top, width, height } = node.getBoundingClientRect();
    return node.contains(document.elementFromPoint(left + width / 2, top + height / 2));
  });
}

/** The rest is flown again on the server, and everybody is shown it. */
async function asksWhatIf(runs: Page, crew: Page): Promise<void> {
  await debrief(runs).getByLabel('What is otherwise').selectOption('descent rate');
  await debrief(runs).getByLabel('Descent rate').selectOption('12');
  await debrief(runs).getByRole('button', { name: 'Fly it again' }).press('Enter');
  for (const page of [runs, crew])
    await page.getByRole('region', { name: /^And with 1\.2 m\/s ordered at/ }).waitFor({ timeout: 30_000 });
}

async function handsIn(crew: Page): Promise<void> {
  for (const name of ['Real-world stop', 'Scorecard'])
    await expect.poll(() => isMet(crew.getByRole('button', { name, exact: true }))).toBe(true);
  await debrief(crew).getByRole('textbox', { name: 'One word' }).fill('rushed');
  await debrief(crew).getByRole('textbox', { name: 'One thing' }).fill('Say the age of the height sooner.');
  await crew.keyboard.press('Enter');
  await debrief(crew).getByText('rushed').waitFor();
}

async function leadsToAnalysis(runs: Page, crew: Page): Promise<void> {
  await runs.getByRole('button', { name: 'Next: Reactions' }).click();
  await debrief(runs).getByText('rushed').waitFor();
  await runs.getByRole('button', { name: 'Next: Description' }).click();
  await debrief(crew).getByText('Stopped before it came to rest').waitFor();
  expect(await debrief(crew).getByRole('button', { name: /^Next/ }).count()).toBe(0);
  await runs.getByRole('button', { name: 'Next: Analysis' }).click();
  await debrief(crew).getByText('The altimeter falls silent').first().waitFor();
}

/** Both screens show what Sensors saw, at the same moment of the descent; a page that comes back too. */
async function playsClip(runs: Page, crew: Page): Promise<void> {
  await runs.getByRole('combobox', { name: 'Seen from' }).selectOption({ label: 'Sensors' });
  await runs.getByRole('button', { name: /^Play: .*The altimeter falls silent/ }).click();
  await crew.reload();
  for (const page of [runs, crew]) {
    const clip = page.getByRole('region', { name: 'Clip' });
    await clip.getByText('as Sensors saw it').waitFor();
    await clip
      .getByText(/^no data/)
      .first()
      .waitFor({ timeout: 15_000 });
    await clip.getByText('The clip is at its end.').waitFor({ timeout: 15_000 });
  }
  await runs.getByRole('button', { name: 'Put it away' }).click();
  await crew.getByRole('region', { name: 'Clip' }).waitFor({ state: 'hidden' });
}

async function sumsUp(runs: Page, crew: Page): Promise<void> {
  await runs.getByRole('button', { name: 'Next: Summary' }).click();
  await runs.getByRole('textbox', { name: 'What is to be done' }).fill('Age of height on the rule card');
  await runs.getByRole('textbox', { name: 'Who', exact: true }).fill('Ada');
  await runs.getByRole('button', { name: 'Add' }).click();
  await runs.getByRole('combobox', { name: 'Rating' }).first().selectOption('S');
  await runs.getByRole('textbox', { name: 'Evidence' }).first().fill('Called late.');
  await runs
    .getByRole('button', { name: /^Rate: / })
    .first()
    .click();
  await debrief(crew).getByRole('cell', { name: 'Age of height on the rule card' }).waitFor();
  await debrief(crew).getByText('met, with room to improve. Called late.').waitFor();
  await runs.getByRole('button', { name: 'Close the debrief' }).click();
  await crew.getByRole('region', { name: 'After-action report' }).waitFor();
}

async function keepsReport(runs: Page): Promise<void> {
  const said = [
    'Stopped before it came to rest',
    'Ada',
    'Age of height on the rule card',
    'Called late.',
    'Quiet altimeter',
  ];
  const file = await saved(runs, 'Save the report');
  expect(file).not.toMatch(/<script|src=|href=|url\(/);
  const alone = await runs.context().newPage();
  await alone.setContent(file);
  const read = await alone.locator('body').innerText();
  for (const words of [CAUTION, ...said]) expect(read).toContain(words);
  await alone.close();
  const record = await saved(runs, 'Save record with samples');
  expect(record).toContain('"line":"sample"');
  expect(parseRecord(record).ok).toBe(true);
  expect(await saved(runs, 'Save samples as CSV')).toContain('true_height_m');
  expect(await saved(runs, 'Save xAPI statements')).not.toContain('Ada');
  for (const format of ['A4', 'Letter'] as const) expect(await printed(runs, format)).toBeGreaterThan(1);
  await runs.emulateMedia({ media: 'print' });
  const paper = await runs.locator('body').innerText();
  for (const words of [CAUTION, ...said]) expect(paper).toContain(words);
  expect(paper).not.toContain('Save the report');
}

/** How many pages it takes. */
async function printed(page: Page, format: 'A4' | 'Letter'): Promise<number> {
  const pdf = (await page.pdf({ format })).toString('latin1');
  return Array.from(pdf.matchAll(/\/Type\s*\/Page\b/g)).length;
}
