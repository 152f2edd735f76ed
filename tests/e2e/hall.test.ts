import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../engine/constants.ts';
import { HALL } from '../../levels/index.ts';
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
    await page.getByText(/was not opened: scenes\[0\]\.step: expected a number/).waitFor();
    await heading(worlds!.question).waitFor();
    await file.setInputFiles(jsonFile(own));
    await heading(wider!.question).waitFor();
    await page.getByText('1 of 2').waitFor();

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
    await page.keyboard.press('Space');
    await page.keyboard.press('Space');
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
