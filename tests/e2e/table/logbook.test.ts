import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { formatRecord } from '../../../engine/record/index.ts';
import { flyTroubled } from '../../support/flyTroubled.ts';
import { barriers } from '../../support/barriers.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';
import { overprints, overprintsAtWidths } from '../../support/overprint.ts';
import { flyShelved, SHELVED_PLAN, shelveRun } from '../../support/shelvedRun.ts';

const WIDE = { width: 1280, height: 720 };
const PHONE = { width: 390, height: 844 };
const KEY = 'key-of-the-first-run-';
const folder = mkdtempSync(path.join(tmpdir(), 'kilter-logbook-page-'));
let live: LiveTable;

beforeAll(async () => {
  shelveRun(folder, { record: flyShelved(), code: 'HKTVRQ', key: KEY });
  const { record } = flyTroubled(SHELVED_PLAN, 'sensors', [{}]);
  writeFileSync(path.join(folder, 'other.jsonl'), formatRecord(record));
  live = await setLiveTable({ records: folder });
});

afterAll(async () => {
  await live.close();
  rmSync(folder, { recursive: true, force: true });
});

function isInFiles(word: string): boolean {
  return readdirSync(folder)
    .filter((file) => file.startsWith('kilter.sqlite'))
    .some((file) => readFileSync(path.join(folder, file)).includes(word));
}

async function reading(page: Page, label: string): Promise<string> {
  return page.locator('.run-readings div', { hasText: label }).locator('dd').innerText();
}

it(
  'a run is found by a key, replayed, compared with a file, flown again, and deleted',
  { timeout: 300_000 },
  async () => {
    const page = await live.openPage('/');
    await page.getByRole('button', { name: 'Logbook' }).click();
    await page.getByText('No runs yet.').waitFor();
    expect(await barriers(page)).toEqual([]);
    expect(new URL(page.url()).search).toBe('?logbook');
    await page.getByLabel('Key of a run').fill(KEY);
    await page.getByRole('button', { name: 'Add' }).click();
    const row = page.getByRole('list', { name: 'Runs' }).getByRole('listitem');
    await row.getByText('Lead Ada').waitFor();
    await page.getByLabel('Find').fill('propellant tank');
    expect(await row.count()).toBe(0);
    await page.getByLabel('Find').fill('lead ada');
    expect(await row.count()).toBe(1);
    expect(await overprintsAtWidths(page)).toEqual([]);
    expect(await barriers(page)).toEqual([]);
    await page.setViewportSize(WIDE);

    await row.getByRole('button').click();
    const slider = page.getByRole('slider', { name: 'Moment of the descent' });
    await slider.waitFor();
    expect(await page.locator('.logbook').getByText(CAUTION).count()).toBe(1);
    for (const size of [PHONE, WIDE]) {
      await page.setViewportSize(size);
      expect(await barriers(page)).toEqual([]);
    }
    const before = await reading(page, 'height');
    await slider.focus();
    await page.keyboard.press('End');
    expect(await reading(page, 'height')).not.toBe(before);
    await page.keyboard.press('Home');
    expect(await reading(page, 'height')).toBe(before);
    await page.keyboard.press(' ');
    await expect.poll(() => reading(page, 'height')).not.toBe(before);
    await page.keyboard.press(' ');

    await page.getByLabel('Goal of the next run').fill('Doubt sooner.');
    await page.locator('.run-goal').getByRole('button', { name: 'Save' }).click();
    await expect.poll(() => isInFiles('Doubt sooner.')).toBe(true);

    await page.getByRole('button', { name: 'All runs' }).click();
    await page.getByLabel('Open a record from a file').setInputFiles(path.join(folder, 'other.jsonl'));
    await page.getByText('A run from a file is read, not changed.').waitFor();
    await page.getByLabel('Run to compare with').selectOption({ index: 1 });
    await page.getByText('What differs').or(page.getByText('They differ in nothing')).waitFor();
    await page.getByLabel('What is otherwise').selectOption('a source does not fail');
    await page.getByRole('button', { name: 'Fly it again' }).click();
    await page.locator('.run-fork table').waitFor();
    expect(await overprintsAtWidths(page)).toEqual([]);
    await page.setViewportSize({ width: 1920, height: 1080 });
    expect(await overprints(page)).toEqual([]);
    expect(await barriers(page)).toEqual([]);

    await page.getByRole('button', { name: 'All runs' }).click();
    await row.filter({ hasText: 'Lead Ada' }).getByRole('button').click();
    await page.getByRole('button', { name: 'Delete' }).click();
    expect(await barriers(page)).toEqual([]);
    expect(isInFiles('Ada')).toBe(true);
    await page.getByRole('button', { name: 'Delete it' }).click();
    await page.getByRole('heading', { name: 'Logbook' }).waitFor();
    await expect.poll(() => isInFiles('Ada')).toBe(false);
    await page.goBack();
    await page.getByRole('button', { name: 'Fly a landing' }).waitFor();
    expect([...live.faults, ...live.lostFocus]).toEqual([]);
  },
);
