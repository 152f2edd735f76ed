import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../engine/constants.ts';
import { HALL } from '../../levels/index.ts';
import { barriers } from '../support/barriers.ts';
import { pdfPages } from '../support/pdfText.ts';
import { setLiveTable, type LiveTable } from '../support/liveTable.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterAll(() => live.close());

/** Smallest letters on the screen, as a share of its height [-]. */
const SMALLEST = `Math.min(...[...document.querySelectorAll('.hall *')]
  .filter((node) => node.checkVisibility() && [...node.childNodes].some((child) => child.nodeType === 3 && child.textContent.trim() !== ''))
  .map((node) => parseFloat(getComputedStyle(node).fontSize) * (node.ownerSVGElement === null || node.ownerSVGElement === undefined ? 1
    : node.ownerSVGElement.getScreenCTM().a))) / innerHeight`;

describe('the hall', () => {
  it('lets phones vote which falls, says how many for what when it is shown, and shows how those land who fly', async () => {
    const hall = await live.openPage('/?hall', { width: 1280, height: 720 });
    const next = hall.locator('.hall-buttons .primary');
    await next.filter({ hasText: 'Play' }).waitFor();
    await hall.getByLabel('Open a file of scenes').setInputFiles(jsonFile(voteScenes()));
    await next.filter({ hasText: 'Play' }).waitFor();
    const code = /#vote=[A-Z]{6}/.exec(await hall.getByText(/^or open /).innerText())?.[0] ?? '';
    // older links have the code after '?', where proxies write it down
    const links = [`/${code}`, `/?${code.slice(1)}`];
    const phones = await Promise.all(links.map((link) => live.openPage(link, { width: 390, height: 844 })));
    for (const [i, phone] of phones.entries()) {
      const button = phone.getByRole('button', { name: ['A', 'None of them'][i]!, exact: true });
      await button.click();
      await phone.getByRole('button', { pressed: true }).waitFor();
      const { search, hash } = new URL(phone.url());
      expect(search + hash).toBe(code);
      // a hand finds it, the caution is there, and nothing is told of the others
      expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(44);
      await phone.locator('#desk').getByText(CAUTION.slice('Exercise. '.length)).waitFor();
      expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
      expect(await phone.locator('body').innerText()).not.toMatch(/\d votes?/);
    }
    await hall.getByText('2 votes', { exact: true }).waitFor();
    for (const page of [hall, phones[0]!]) expect(await barriers(page)).toEqual([]);
    expect(await hall.evaluate<number>(SMALLEST)).toBeGreaterThanOrEqual(0.03);
    await next.press('Enter');
    await next.filter({ hasText: 'To the end' }).press('Enter');
    await hall.locator('.hall-votes', { hasText: '1 vote' }).waitFor();
    expect(await hall.locator('.hall-votes').allInnerTexts()).toEqual(['1 vote', '0 votes']);
    await hall.getByText('None of them: 1 vote', { exact: true }).waitFor();
    await phones[0]!.getByText('The vote is over.').waitFor();
    expect(await phones[0]!.getByRole('button', { name: 'A', exact: true }).isDisabled()).toBe(true);

    // the next scene: one flies, one watches
    await next.press('Enter');
    const [flies, watches] = [phones[0]!, phones[1]!];
    await watches.getByRole('button', { name: 'I watch' }).click();
    await flies.getByRole('button', { name: 'I fly' }).click();
    await flies.getByText('You fly.').waitFor();
    await hall.getByText('1 phone is ready').waitFor();
    await next.filter({ hasText: 'Begin' }).press('Enter');
    await watches.getByText('The flight has begun.').waitFor();
    await flies.getByRole('button', { name: 'Engine off' }).click({ timeout: 60_000 });
    // nothing there takes it out of step with the others
    expect(await flies.getByRole('button', { name: /^(Hold|Start over|×0.5 )/ }).count()).toBe(0);
    await hall.getByText('1 in the air').waitFor({ timeout: 60_000 });
    await flies.getByText(/^(You|A leg) .* Look at the large screen\.$/).waitFor({ timeout: 120_000 });
    await hall.getByText('All are down').waitFor();
    expect(await hall.locator('.hall-dots li:visible').allInnerTexts()).toEqual([expect.stringMatching(/^1 /)]);
    await hall.getByRole('img', { name: /with the path of every landing\. 1 / }).waitFor();
    for (const page of [hall, flies]) expect(await barriers(page)).toEqual([]);
    expect(await hall.evaluate<number>(SMALLEST)).toBeGreaterThanOrEqual(0.03);
    expect(live.faults).toEqual([]);
    await live.closePages();
  });

  it('goes through its scenes by one key, and says how they end at the end only', async () => {
    const page = await live.openPage('/hall', { width: 1280, height: 720 });
    const heading = (words: string) => page.getByRole('heading', { level: 1, name: words, exact: true });
    const next = page.locator('.hall-buttons .primary');
    const [worlds, , wider, taller] = HALL.scenes;
    await heading(worlds!.question).waitFor();
    await next.filter({ hasText: 'Play' }).waitFor();
    expect(await page.locator('.hall-verdict').allInnerTexts()).toEqual(['?', '?', '?']);
    expect(await page.locator('body').innerText()).not.toContain(worlds!.answer);

    await page.keyboard.press('Space');
    await next.filter({ hasText: 'To the end' }).waitFor();
    await page.keyboard.press('Space');
    await page.getByText('Falls, downhill').waitFor();
    expect(await page.locator('.hall-verdict').allInnerTexts()).toEqual([
      'Falls, downhill',
      'Stands',
      'Stands, a leg is used up',
    ]);
    await page.getByText(worlds!.answer).waitFor();
    // the clock stands at the end: on the Moon it takes seconds to fall over
    const slider = page.getByRole('slider');
    expect(Number(await slider.inputValue())).toBeGreaterThan(3);
    expect(await slider.inputValue()).toBe(await slider.getAttribute('max'));
    expect(await page.evaluate<number>(SMALLEST)).toBeGreaterThanOrEqual(0.03);

    // back to its start, where nothing is given away
    await page.keyboard.press('ArrowLeft');
    await next.filter({ hasText: 'Play' }).waitFor();
    expect(await page.locator('.hall-verdict').allInnerTexts()).toEqual(['?', '?', '?']);
    // scrubbed to the end by a key, and on
    await slider.press('End');
    await page.getByText('Falls, downhill').waitFor();

    // a file with a fault says so and changes nothing; the presenter's own scenes take the place of ours
    const own = { format: 'kilter-hall/1', title: 'Own', scenes: [dialOf('footRadius'), dialOf('centerHeight')] };
    const file = page.getByLabel('Open a file of scenes');
    await file.setInputFiles(jsonFile({ ...own, scenes: [{ ...own.scenes[0], step: 0 }] }));
    await page.getByText(/was not opened: line 1, scenes\[0\]\.step: expected a number/).waitFor();
    await heading(worlds!.question).waitFor();
    await file.setInputFiles(jsonFile(own));
    await heading(wider!.question).waitFor();
    await page.getByText('1 of 2').waitFor();

    // how that is done stands there; one press prints a page for each scene, on either paper, each with the caution
    await page.getByRole('button', { name: 'Own scenes' }).click();
    await page.getByText('kilter hall check').waitFor();
    await page.keyboard.press('Escape');
    await page.evaluate('window.print = () => undefined');
    for (const format of ['A4', 'Letter']) {
      await page.getByRole('button', { name: /^Handouts/ }).click();
      const sheets = pdfPages(await page.pdf({ format }));
      expect(sheets).toHaveLength(2);
      sheets.forEach((sheet, i) => {
        for (const words of [[wider, taller][i]!.question, 'What I expect, and why:', CAUTION])
          expect(sheet).toContain(bare(words));
      });
    }
    expect(await page.locator('.hall-all').count()).toBe(0);

    // what needs no simulation stands there with the press of the key
    const rigid = page.getByText(/^rigid legs /);
    const before = await rigid.allInnerTexts();
    await page.locator('.hall h1').press('ArrowUp');
    const after = await rigid.allInnerTexts();
    after.forEach((words, i) => expect(speedIn(words)).toBeGreaterThan(speedIn(before[i])));
    await page
      .getByText(/^tips from /)
      .nth(2)
      .waitFor();
    const limits = (await page.getByText(/^tips from /).allInnerTexts()).map(speedIn);
    expect(limits).toEqual(limits.toSorted((a, b) => a - b));
    expect(await page.evaluate<number>(SMALLEST)).toBeGreaterThanOrEqual(0.03);
    expect(await barriers(page)).toEqual([]);
    // as a presenter's remote has it
    await page.locator('.hall h1').press('PageDown');
    await page.locator('.hall h1').press('PageDown');
    await heading(taller!.question).waitFor();

    // on a phone nothing reaches past its edge, and the caution is there
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await page.locator('#desk').getByText(CAUTION.slice('Exercise. '.length)).waitFor();
    await page.getByRole('button', { name: 'Start page' }).press('Enter');
    await page.getByRole('button', { name: 'Hall', exact: true }).waitFor();
    expect(live.faults).toEqual([]);
  });
});

/** One vote, on two touchdowns that are over soon, and a short descent. */
function voteScenes(): object {
  const arrival = { lander: 'trivet', world: 'earth', slopeDeg: 3, descentRate: 1, horizontalSpeed: 0.5 };
  const arrivals = ['A', 'B'].map((name) => ({ name, ...arrival }));
  const scene = { kind: 'film', question: 'Which falls?', answer: 'None of them.', vote: true, pace: 1, arrivals };
  const descent = { lander: 'trivet', site: 'saddlers-bench', world: 'moon', start: 'low', seed: 1 };
  const flight = { kind: 'flight', question: 'Who lands it?', answer: 'Whoever is slow.', ...descent };
  return { format: 'kilter-hall/1', title: 'Own', scenes: [scene, flight] };
}

function bare(words: string): string {
  return words.replaceAll(/\s/g, '');
}

/** Of Trivet, which is quickly simulated. */
function dialOf(field: 'footRadius' | 'centerHeight'): object {
  const scene = HALL.scenes.find((one) => one.kind === 'dial' && one.field === field);
  if (scene?.kind !== 'dial') throw new Error(`no scene about ${field}`);
  const { kind, question, answer, worlds, slopeDeg, descentRate } = scene;
  const range = field === 'footRadius' ? { from: 1.9, to: 2.9 } : { from: 1.5, to: 2 };
  return { kind, question, answer, worlds, slopeDeg, descentRate, field, ...range, step: 0.1, lander: 'trivet' };
}

function jsonFile(json: object): { readonly name: string; readonly mimeType: string; readonly buffer: Buffer } {
  return { name: 'own.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(json)) };
}

function speedIn(words: string | undefined): number {
  return Number(/[\d.]+/.exec(words ?? '')?.[0]);
}
