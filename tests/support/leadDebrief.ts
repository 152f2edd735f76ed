import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright';
import { expect } from 'vitest';
import { CAUTION } from '../../engine/constants.ts';
import { parseRecord } from '../../engine/record/index.ts';
import { violations } from './audit.ts';
import { barriers } from './barriers.ts';
import { pdfPages } from './pdfText.ts';
import { press } from './press.ts';

/** Who leads, who sits at Sensors, and everybody. */
interface Debriefed {
  readonly facilitator: Page;
  readonly sensors: Page;
  readonly all: readonly Page[];
}

/** The sheet of the debrief on a page. */
const debrief = (page: Page) => page.getByRole('region', { name: 'Debrief' });

/** Nothing of the debrief is drawn in the way of a small machine: what is waited for comes, however late. */
const LATE = { timeout: 60_000 };

/** Through all its steps on all screens at once, by keyboard, to the report. */
export async function leadDebrief(at: Debriefed): Promise<void> {
  const { facilitator, sensors } = at;
  await canStop(facilitator, sensors);
  await press(facilitator, 'Debrief');
  await handsIn(sensors);
  await leadsOn(at, 'Reactions', 'rushed');
  await leadsOn(at, 'Description', 'Stopped before it came to rest');
  expect(await debrief(sensors).getByRole('button', { name: /^Next/ }).count()).toBe(0);
  await leadsOn(at, 'Analysis', 'The altimeter falls silent');
  await playsClip(at);
  await asksWhatIf(at);
  await sumsUp(at);
}

const stop = (page: Page) => page.getByRole('button', { name: 'Real-world stop' });

/** Whoever runs the table and whoever sits at it reach the real-world stop on the card and beside the section: not under a sheet, and by key. */
async function canStop(facilitator: Page, sensors: Page): Promise<void> {
  const both = [facilitator, sensors];
  for (const page of both) await expect.poll(() => isMet(stop(page)), LATE).toBe(true);
  await press(sensors, 'Look at the section');
  await expect.poll(() => isMet(stop(sensors)), LATE).toBe(true);
  await stop(sensors).press('Enter');
  await press(sensors, 'Stop everything');
  for (const page of both) await page.getByRole('dialog', { name: 'Real-world stop' }).waitFor(LATE);
  await press(facilitator, 'Lift the stop');
  for (const page of both)
    await page.getByRole('dialog', { name: 'Real-world stop' }).waitFor({ state: 'hidden', ...LATE });
  await press(sensors, 'Back to the scorecard');
}

/** Whether a finger in the middle of it would press it. */
async function isMet(button: Locator): Promise<boolean> {
  if ((await button.count()) !== 1) return false;
  return button.evaluate((node) => {
    const { left, top, width, height } = node.getBoundingClientRect();
    return node.contains(document.elementFromPoint(left + width / 2, top + height / 2));
  });
}

async function handsIn(page: Page): Promise<void> {
  for (const name of ['Real-world stop', 'Scorecard'])
    await expect.poll(() => isMet(page.getByRole('button', { name, exact: true })), LATE).toBe(true);
  await debrief(page).getByRole('textbox', { name: 'One word' }).fill('rushed');
  await debrief(page).getByRole('textbox', { name: 'One thing' }).fill('Say the age of the height sooner.');
  await page.keyboard.press('Enter');
  await debrief(page).getByText('rushed').waitFor(LATE);
}

/** Every screen turns to the step, and none keeps anybody out. */
async function leadsOn({ facilitator, sensors, all }: Debriefed, step: string, words: string): Promise<void> {
  for (const page of [facilitator, sensors]) expect(await barriers(page)).toEqual([]);
  await press(facilitator, `Next: ${step}`);
  for (const page of all) await debrief(page).getByText(words).first().waitFor(LATE);
}

/** All show what Sensors saw, at the same moment of the descent; a page that comes back too. */
async function playsClip({ facilitator, sensors, all }: Debriefed): Promise<void> {
  await facilitator.getByRole('combobox', { name: 'Seen from' }).selectOption({ label: 'Sensors' });
  await press(facilitator, /^Play: .*The altimeter falls silent/);
  await sensors.reload();
  for (const page of all) {
    const clip = page.getByRole('region', { name: 'Clip' });
    await clip.getByText('as Sensors saw it').waitFor(LATE);
    await clip
      .getByText(/^no data/)
      .first()
      .waitFor(LATE);
  }
  for (const page of [facilitator, sensors]) {
    await page.getByRole('region', { name: 'Clip' }).getByText('The clip is at its end.').waitFor(LATE);
    expect(await barriers(page)).toEqual([]);
  }
  await press(facilitator, 'Put it away');
  await sensors.getByRole('region', { name: 'Clip' }).waitFor({ state: 'hidden', ...LATE });
}

/** The rest is flown again on the server, and everybody is shown it. */
async function asksWhatIf({ facilitator, all }: Debriefed): Promise<void> {
  await debrief(facilitator).getByLabel('What is otherwise').selectOption('descent rate');
  await debrief(facilitator).getByLabel('Descent rate').selectOption('12');
  await press(facilitator, 'Fly it again');
  for (const page of all) await page.getByRole('region', { name: /^And with 1\.2 m\/s ordered at/ }).waitFor(LATE);
}

async function sumsUp(at: Debriefed): Promise<void> {
  const { facilitator, sensors, all } = at;
  await leadsOn(at, 'Summary', 'Improvement plan');
  await facilitator.getByRole('textbox', { name: 'What is to be done' }).fill('Age of height on the rule card');
  await facilitator.getByRole('textbox', { name: 'Who', exact: true }).fill('Ada');
  await press(facilitator, 'Add');
  await debrief(sensors).getByRole('cell', { name: 'Age of height on the rule card' }).waitFor(LATE);
  await facilitator.getByRole('combobox', { name: 'Rating' }).first().selectOption('S');
  await facilitator.getByRole('textbox', { name: 'Evidence' }).first().fill('Called late.');
  await press(facilitator, /^Rate: /);
  await debrief(sensors).getByText('met, with room to improve. Called late.').waitFor(LATE);
  for (const page of [facilitator, sensors]) expect(await barriers(page)).toEqual([]);
  await press(facilitator, 'Close the debrief');
  for (const page of all) await page.getByRole('region', { name: 'After-action report' }).waitFor(LATE);
  for (const page of [facilitator, sensors]) expect(await barriers(page)).toEqual([]);
}

const SAID = [
  'Stopped before it came to rest',
  'Ada',
  'Age of height on the rule card',
  'Called late.',
  'Quiet altimeter',
];

/** The report as one file that needs nothing else, printed and read back, and the record with its samples, as CSV and as statements. */
export async function keepReport(page: Page): Promise<void> {
  const file = await saved(page, 'Save the report');
  expect(file).not.toMatch(/<script|src=|href=|url\(/);
  const alone = await page.context().newPage();
  await alone.setContent(file);
  const read = await alone.locator('body').innerText();
  for (const words of [CAUTION, ...SAID]) expect(read).toContain(words);
  expect(await violations(alone)).toEqual([]);
  await alone.close();
  const record = await saved(page, 'Save record with samples');
  expect(record).toContain('"line":"sample"');
  expect(parseRecord(record).ok).toBe(true);
  expect(await saved(page, 'Save samples as CSV')).toContain('true_height_m');
  expect(await saved(page, 'Save xAPI statements')).not.toContain('Ada');
  for (const format of ['A4', 'Letter'] as const) {
    const pages = pdfPages(await page.pdf({ format }));
    expect(pages.length).toBeGreaterThan(1);
    for (const words of [CAUTION, ...SAID]) expect(pages.join('')).toContain(words.replaceAll(' ', ''));
    expect(pages.join('')).not.toContain('Savethereport');
  }
}

/** What a file holds that this button saves. */
async function saved(page: Page, name: string): Promise<string> {
  const download = page.waitForEvent('download', LATE);
  await press(page, name);
  return readFile(await (await download).path(), 'utf8');
}
