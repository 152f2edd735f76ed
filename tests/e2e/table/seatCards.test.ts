import type { Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { failingSizes } from '../../support/inReach.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterEach(() => live.closePages());

afterAll(() => live.close());

const TROUBLED = '/?lander=trivet&site=saddlers-bench&world=moon&start=low&seed=2&sensorTrouble=seeded';

/** The least height of what a thumb presses [px]. */
const THUMB = 44;
/** Of what is pressed in a line of words: the least that WCAG 2.5.8 asks of anything [px]. */
const IN_LINE = 24;

/** Sits down alone at a seat, and holds the descent. */
async function sitAt(seat: string, size: { readonly width: number; readonly height: number }): Promise<Page> {
  const page = await live.openPage(TROUBLED, size);
  const sheet = page.getByRole('dialog', { name: 'Fly with a failure' });
  await sheet.getByRole('radio', { name: seat, exact: true }).check();
  await sheet.getByRole('button', { name: 'Fly this landing' }).press('Enter');
  await page.getByRole('button', { name: 'Hold' }).waitFor();
  await page.waitForTimeout(1200);
  await page.keyboard.press('h');
  await page.getByRole('button', { name: 'Resume' }).waitFor();
  return page;
}

/** What of the card reaches past its edges or those of the window, or is too small for a thumb: by its words. */
function faultsOf(page: Page): Promise<readonly string[]> {
  return page.evaluate(
    ([thumb, inLine]) => {
      const card = document.querySelector<HTMLElement>(':is(.seat-card, .sources-card):not([hidden])');
      const desk = document.querySelector('.desk');
      if (card === null || desk === null) return ['no card'];
      const { left, right } = card.getBoundingClientRect();
      const found = desk.scrollWidth > desk.clientWidth ? ['the page is wider than the window'] : [];
      for (const node of card.querySelectorAll<HTMLElement>('button, select, p, li, h3, output')) {
        if (node.offsetParent === null) continue;
        const box = node.getBoundingClientRect();
        const isPast = box.left < left - 1 || box.right > right + 1 || node.scrollWidth > node.clientWidth + 1;
        // a term does nothing but say what it is, and stands in a line of words
        const isSmall = node.matches('button, select') && box.height < (node.matches('.term') ? inLine : thumb);
        if (isPast || isSmall) found.push(`${isPast ? 'past the edge' : 'small'}: ${node.tagName} ${node.textContent}`);
      }
      return found;
    },
    [THUMB, IN_LINE] as const,
  );
}

/** Presses the keys of a seat and waits for what its card says then. */
const PRESS_KEYS: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  Lead: async (page) => {
    // held down, it does not answer its own question
    await page.keyboard.down('q');
    await page.keyboard.down('q');
    await page.keyboard.up('q');
    await page.locator('.controls .abort[data-sure="true"]').waitFor();
    await page.keyboard.press('.');
    await page.keyboard.press(',');
    await page.getByRole('button', { name: /^×0.5/, pressed: true }).waitFor();
    await page.keyboard.press('p');
    await page.getByRole('region', { name: 'Poll' }).waitFor();
  },
  Sensors: async (page) => {
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('x');
    const radar = page.locator('.source-list > li').nth(1);
    await radar.getByRole('button', { name: 'Rejected', pressed: true }).waitFor();
    await radar.getByRole('combobox').waitFor();
    await page.keyboard.press('n');
    await page.waitForFunction(() => document.activeElement?.matches('.source-list > li:nth-child(2) select') === true);
    await page.keyboard.press('Escape');
  },
  Propellant: async (page) => {
    await page.keyboard.press('ArrowDown');
    await page.getByRole('group', { name: 'Thrust ceiling' }).getByText('95').waitFor();
    await page.keyboard.press('l');
    await page.getByRole('button', { name: 'one shut', pressed: true }).waitFor();
    await page.keyboard.press('a');
    await page.getByRole('button', { name: 'Disarm' }).waitFor();
    await page.keyboard.press('x');
    await page.getByText('Fired').waitFor();
  },
  Site: async (page) => {
    const slider = page.getByRole('slider', { name: 'Spot to land at' });
    const before = Number(await slider.inputValue());
    await page.keyboard.press('ArrowLeft');
    await expect.poll(async () => Number(await slider.inputValue())).toBe(before - 1);
    await page.keyboard.press('n');
    await page.keyboard.press('n');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'steeper', pressed: true }).waitFor();
    await page.keyboard.press('a');
    await page.getByText('Turning to 90° left.').waitFor();
    await page.keyboard.press('d');
    await page.getByText('Stands as it started.').waitFor();
  },
};

describe('the card of each seat on a phone held upright', () => {
  it.each(['Lead', 'Sensors', 'Propellant', 'Site'])(
    'at %s lies within the window, all that is pressed is large enough, and its keys do what it does',
    async (seat) => {
      const page = await sitAt(seat, { width: 390, height: 844 });
      expect(await faultsOf(page)).toEqual([]);
      await page.setViewportSize({ width: 320, height: 568 });
      await page.waitForTimeout(300);
      expect(await faultsOf(page)).toEqual([]);
      expect(await page.locator('body').innerText()).toContain(CAUTION);
      await PRESS_KEYS[seat]?.(page);
      expect(live.faults).toEqual([]);
    },
    60_000,
  );
});

/** Whether coach, card, own card and the caution are whole and lie beside each other. */
function isLaidApart(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    const parts = ['.coach', '.seat-card:not([hidden])', '.own-card', '.title-block']
      .map((part) => document.querySelector<HTMLElement>(part))
      .filter((part) => part !== null);
    const boxes = parts.map((part) => part.getBoundingClientRect());
    const isCut = parts.some((part) => part.matches('.coach, .own-card') && part.scrollHeight > part.clientHeight + 1);
    const isOver = boxes.some((a, i) =>
      boxes
        .slice(i + 1, -1)
        .some((b) => a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1),
    );
    const caution = boxes.at(-1);
    return parts.length === 4 && !isCut && !isOver && caution !== undefined && caution.bottom <= innerHeight + 1;
  });
}

describe('the card of a seat in any window', () => {
  it('leaves coach, readings and caution whole', async () => {
    const page = await sitAt('Site', { width: 1280, height: 720 });
    expect(await failingSizes(page, () => isLaidApart(page))).toEqual([]);
  }, 60_000);
});

describe('the spot that Site marks', () => {
  it('is moved by the arrow keys, a meter a press, and by a tap on the profile', async () => {
    const page = await sitAt('Site', { width: 1280, height: 720 });
    const slider = page.getByRole('slider', { name: 'Spot to land at' });
    const place = async () => Number(await slider.inputValue());
    const before = await place();
    await slider.press('ArrowRight');
    await slider.press('ArrowRight');
    await expect.poll(place).toBe(before + 2);
    await expect.poll(() => slider.getAttribute('aria-valuetext')).toMatch(/→|←|below/);
    const box = await slider.boundingBox();
    if (box === null) throw new Error('the slider is shown');
    await page.mouse.click(box.x + 0.8 * box.width, box.y + box.height / 2);
    await expect.poll(place).toBeGreaterThan(before + 2);
    expect(live.faults).toEqual([]);
  }, 60_000);
});
