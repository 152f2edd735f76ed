import { spawn } from 'node:child_process';
import path from 'node:path';
import type { Browser, Page } from 'playwright';
import { launchBrowser } from '../support/browser.ts';
import { ROOT } from '../support/sources.ts';
import type { BenchRow } from './row.ts';

const VISITS = 5;
const BLANK = 'data:text/html,<p>A page of one line</p>';
/** No frame after so long means that something is broken, not slow [ms]. */
const PATIENCE = 30_000;

interface FirstFrame {
  readonly rows: readonly BenchRow[];
  /** Files that the browser had asked for when a flight showed its first frame, relative to the client's folder. */
  readonly asked: ReadonlySet<string>;
}

/** Waiting time of somebody who comes for the first time: real server, real browser, empty cache. Medians [ms]. */
export async function benchFirstFrame(): Promise<FirstFrame> {
  const server = await startServer();
  const browser = await launchBrowser();
  try {
    const blank = await median(() => visit(browser, BLANK, firstPaint));
    const start = await median(() => visit(browser, server.address, firstPaint));
    const asked = new Set<string>();
    const flight = await median(() => visit(browser, server.address, (page) => flyAtOnce(page, asked)));
    const rows = [
      { measure: 'start page, first paint', value: start, reference: 'a page of one line', referenceValue: blank },
      {
        measure: 'first frame of a flight',
        value: flight,
        reference: 'start page, first paint',
        referenceValue: start,
      },
    ];
    return { rows: rows.map((row) => ({ ...row, unit: 'ms' })), asked };
  } finally {
    await browser.close();
    server.stop();
  }
}

async function startServer(): Promise<{ readonly address: string; readonly stop: () => void }> {
  const child = spawn(process.execPath, [path.join(ROOT, 'server/main.ts')], {
    env: { ...process.env, PORT: '0', HOST: '127.0.0.1' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const address = await new Promise<string>((resolve, reject) => {
    let printed = '';
    child.stdout.on('data', (chunk: Buffer) => {
      printed += chunk.toString();
      const found = /https?:\/\/[\w.:[\]]+/.exec(printed)?.[0];
      if (found !== undefined) resolve(found);
    });
    child.on('exit', (code) => {
      reject(new Error(`The server ended with code ${code} before it named its address.`));
    });
  });
  return { address, stop: () => child.kill('SIGTERM') };
}

async function median(measure: () => Promise<number>): Promise<number> {
  const times: number[] = [];
  for (let visit = 0; visit < VISITS; visit++) times.push(await measure());
  return times.toSorted((a, b) => a - b)[Math.floor(VISITS / 2)] ?? Number.NaN;
}

/** A browser context of its own each time, so that nothing is cached. */
async function visit(browser: Browser, address: string, measure: (page: Page) => Promise<number>): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 720 } });
  try {
    const page = await context.newPage();
    page.setDefaultTimeout(PATIENCE);
    await page.goto(address, { waitUntil: 'commit' });
    return await measure(page);
  } finally {
    await context.close();
  }
}

/** From the start of the navigation to the first text on screen [ms]. */
function firstPaint(page: Page): Promise<number> {
  return page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        new PerformanceObserver((list) => {
          const paint = list.getEntriesByName('first-contentful-paint')[0];
          if (paint !== undefined) resolve(paint.startTime);
        }).observe({ type: 'paint', buffered: true });
      }),
  );
}

/** From the start of the navigation to the second frame after the drawing stands on the page, clicked at first paint [ms]. */
async function flyAtOnce(page: Page, asked: Set<string>): Promise<number> {
  await firstPaint(page);
  await page.click('#fly');
  await page.waitForSelector('canvas');
  const time = await page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now())));
      }),
  );
  const names = await page.evaluate(() => performance.getEntriesByType('resource').map((entry) => entry.name));
  for (const name of names) asked.add(new URL(name).pathname.slice(1));
  return time;
}
