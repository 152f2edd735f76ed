import { existsSync } from 'node:fs';
import { chromium, type Browser } from 'playwright';
import { ensurePackage } from './debianPackage.ts';

/** Real Chromium for tests: the one named by CHROMIUM_PATH, or where Debian and others put it. */
const CANDIDATES = [
  process.env.CHROMIUM_PATH,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:/Program Files/Google/Chrome/Application/chrome.exe',
];

/** Background services off: tests talk to this machine only. No GPU flags: the defaults measured fastest. */
const ARGUMENTS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

function findBrowser(): string | undefined {
  return CANDIDATES.find((path) => path !== undefined && existsSync(path));
}

/** Returns what to do where there is none and none can be fetched. */
export function ensureBrowser(): ReturnType<typeof ensurePackage> {
  return ensurePackage({
    find: findBrowser,
    package: 'chromium',
    fetching: "No Chromium here: fetching Debian's package for the browser tests (once) ...",
    advice:
      'The browser tests need Chromium: run `sudo apt-get install chromium`, or set CHROMIUM_PATH to a Chromium or Chrome, then run this again.',
  });
}

/** `more`: further arguments, such as a text size that its owner has chosen. */
export function launchBrowser(more: readonly string[] = []): Promise<Browser> {
  const path = findBrowser();
  if (path === undefined) throw new Error('No Chromium found; `npm test` fetches one or says how.');
  return chromium.launch({ executablePath: path, args: [...ARGUMENTS, ...more] });
}
