import type { Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { failingSizes } from '../../support/inReach.ts';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';
import { overprints } from '../../support/overprint.ts';

let live: LiveTable;

beforeAll(async () => {
  live = await setLiveTable();
});

afterEach(() => live.closePages());

afterAll(() => live.close());

async function openInFlight(): Promise<Page> {
  const page = await live.openPage('/');
  await page.getByRole('button', { name: 'Fly a landing' }).click();
  await page.getByRole('button', { name: 'More thrust' }).waitFor();
  await page.waitForTimeout(600);
  return page;
}

describe('the drawing', () => {
  it('is never blank when the advice beside it grows', async () => {
    const page = await openInFlight();
    const blank = await page.evaluate(async () => {
      const canvas = document.querySelector<HTMLCanvasElement>('.section canvas');
      const coach = document.querySelector<HTMLElement>('.coach');
      if (canvas === null || coach === null) throw new Error('no drawing or no coach');
      let frames = 0;
      const isBlank = () => {
        const middle = canvas.getContext('2d')?.getImageData(canvas.width / 2, 0, 1, canvas.height).data ?? [];
        return !Array.from(middle).some((value) => value > 0);
      };
      // told last of all, just before the frame is shown
      const watch = new ResizeObserver(() => {
        if (isBlank()) frames += 1;
      });
      watch.observe(coach);
      for (let i = 1; i <= 8; i += 1) {
        coach.style.minHeight = `${120 + 10 * i}px`;
        await new Promise((resolve) => setTimeout(resolve, 60));
      }
      watch.disconnect();
      return frames;
    });
    expect(blank).toBe(0);
  });
});

describe('what can be pressed', () => {
  it('lies wholly inside its card at every size', async () => {
    const page = await openInFlight();
    await page.keyboard.press('h');
    const isInside = () =>
      page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('button, .control-value, .readings dd')]
          .filter((node) => node.offsetParent !== null)
          .every((node) => {
            const { left, right } = node.getBoundingClientRect();
            const around = node.closest('.card, .section, main')?.getBoundingClientRect();
            return left >= (around?.left ?? 0) && right <= (around?.right ?? 0) && right <= innerWidth;
          }),
      );
    expect(await failingSizes(page, isInside)).toEqual([]);
  });

  it('has in its name what is seen on it', async () => {
    const page = await openInFlight();
    const otherwise = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('button[aria-label]')]
        .filter((node) => node.offsetParent !== null)
        .map((node) => {
          const seen = [...node.childNodes].filter(
            (child) => !(child instanceof Element && child.ariaHidden === 'true'),
          );
          return { seen: seen.map((child) => child.textContent).join(''), name: node.ariaLabel ?? '' };
        })
        .filter(({ seen, name }) => !name.toLowerCase().includes(seen.trim().toLowerCase())),
    );
    expect(otherwise).toEqual([]);
  });

  it('gives the landing up only at the second press of Abort, which says so first', async () => {
    const page = await openInFlight();
    const abort = page.getByRole('button', { name: /^Abort: give the landing up/ });
    await abort.press('Enter');
    const sure = page.getByRole('button', { name: /^Sure\? Press again: give the landing up/ });
    await sure.waitFor();
    const coach = page.getByRole('region', { name: 'Coach' });
    expect(await coach.innerText()).not.toMatch(/given up/);
    await sure.press('Enter');
    await coach.getByText('Landing given up. It climbs away by itself.').waitFor();
    // of a contact that is not to come, nothing is told
    expect(await page.locator('.own-margin').isHidden()).toBe(true);
    expect(live.faults).toEqual([]);
  });

  it('looks dead while it is: Begin without a seat', async () => {
    const page = await live.openPage('/');
    await page.getByRole('button', { name: 'Open a table' }).click();
    const begin = page.getByRole('button', { name: 'Begin the descent' });
    await begin.waitFor();
    const paperOf = () => begin.evaluate((node) => getComputedStyle(node).backgroundColor);
    const dead = await paperOf();
    await page.getByRole('button', { name: 'Take Flying' }).click();
    await expect.poll(() => begin.isEnabled()).toBe(true);
    expect(await paperOf()).not.toBe(dead);
  });
});

describe('a table code', () => {
  it('that no table has is said at its field, and goes with the next attempt', async () => {
    const page = await live.openPage('/');
    const field = page.getByRole('textbox', { name: 'or join with a code' });
    await field.fill('12');
    await page.getByRole('button', { name: 'Join' }).click();
    const problem = page.locator('#code-problem');
    await expect.poll(() => problem.innerText()).not.toBe('');
    expect(await field.getAttribute('aria-describedby')).toBe('code-problem');
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    const [at, said] = [await field.boundingBox(), await problem.boundingBox()];
    if (at === null || said === null) throw new Error('not shown');
    expect(Math.abs(said.y - (at.y + at.height))).toBeLessThan(20);
    expect(Math.abs(said.x - at.x)).toBeLessThan(20);
    expect(await page.locator('#start-status').innerText()).toBe('');
  });

  it('is drawn for cameras only where other devices can follow it', async () => {
    const page = await live.openPage('/');
    await page.getByRole('button', { name: 'Open a table' }).click();
    // this server listens to its own machine alone
    await expect
      .poll(() => page.locator('.invitation').innerText(), { timeout: 5000 })
      .toContain('localhost, leads every other device to itself');
    expect(await page.locator('.qr-code').count()).toBe(0);
    expect(live.faults).toEqual([]);
  });
});

describe('the text size that the browser is set to', () => {
  it('is kept to: half as large again, every letter is, and nothing pressed leaves the window', async () => {
    const large = await setLiveTable({ browserArguments: ['--blink-settings=defaultFontSize=24'] });
    try {
      for (const size of [
        { width: 1280, height: 720 },
        { width: 390, height: 844 },
      ]) {
        const sizes: number[] = [];
        for (const table of [live, large]) {
          const page = await table.openPage('/', size);
          await page.getByRole('button', { name: 'Fly a landing' }).click();
          const reading = page.locator('.own-card .readings dd').first();
          await reading.waitFor();
          sizes.push(await reading.evaluate((node) => Number.parseFloat(getComputedStyle(node).fontSize)));
          const outside = await page.evaluate(
            () =>
              [...document.querySelectorAll<HTMLElement>('.controls button')]
                .filter((node) => node.offsetParent !== null)
                .filter((node) => node.getBoundingClientRect().right > innerWidth).length,
          );
          expect(outside).toBe(0);
          expect(await overprints(page)).toEqual([]);
          await table.closePages();
        }
        const [usual = 0, larger = 0] = sizes;
        // other layouts set some letters a fifth smaller
        expect(larger / usual).toBeGreaterThan(1.15);
      }
      expect(large.faults).toEqual([]);
    } finally {
      await large.close();
    }
  });
});
