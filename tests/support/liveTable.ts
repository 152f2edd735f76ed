import { spawn } from 'node:child_process';
import { once } from 'node:events';
import type { Browser, Page } from 'playwright';
import { launchBrowser } from './browser.ts';
import { drawSeldom } from './drawSeldom.ts';
import { FOCUS_LOST, reportLostFocus } from './focusWatch.ts';
import { ROOT } from './sources.ts';
import { UNBOUNDED } from './tableServer.ts';

/** The product as a person meets it: the built client, served by the real server, in a real Chromium. */
export interface LiveTable {
  readonly origin: string;
  /** A new person: own storage, nothing cached. Whatever goes wrong in the page is listed in `faults`. */
  openPage(address: string, size?: { readonly width: number; readonly height: number }): Promise<Page>;
  /** Everybody leaves: a descent that goes on unseen slows down those after it. */
  closePages(): Promise<void>;
  /** Script errors, console errors and requests to any other origin, so far. */
  readonly faults: readonly string[];
  /** From what the focus was lost, so far. */
  readonly lostFocus: readonly string[];
  /** The server goes; the browser stays. */
  stopServer(): Promise<void>;
  /** The server is killed where it stands and started again, at the same address and with the same records. */
  crashServer(): Promise<void>;
  close(): Promise<void>;
}

interface LiveSettings {
  /** How this person's browser is set. */
  readonly browserArguments?: readonly string[];
  /** The folder of the journal; without one nothing is kept. */
  readonly records?: string;
  /** Whether the browser keeps the page, as it does for everybody: half of what it takes to open one. */
  readonly isPageKept?: boolean;
  /** Time between two frames of a page [ms]. */
  readonly framesApartMs?: number;
  /** Of the server, beside those. */
  readonly settings?: Readonly<Record<string, string>>;
}

export async function setLiveTable({
  browserArguments = [],
  records = 'none',
  isPageKept = false,
  framesApartMs = 50,
  settings = {},
}: LiveSettings = {}): Promise<LiveTable> {
  let server = await startServer(records, settings);
  const { origin } = server;
  const browser: Browser = await launchBrowser(browserArguments);
  const faults: string[] = [];
  const lostFocus: string[] = [];
  return {
    origin,
    faults,
    lostFocus,
    async openPage(address, size = { width: 1280, height: 720 }) {
      const serviceWorkers = isPageKept ? 'allow' : 'block';
      const page = await (await browser.newContext({ viewport: size, serviceWorkers })).newPage();
      await page.addInitScript(drawSeldom, framesApartMs);
      await page.addInitScript(reportLostFocus);
      page.on('pageerror', (error) => faults.push(`script: ${error.message}`));
      page.on('console', (message) => {
        if (message.text().startsWith(FOCUS_LOST)) lostFocus.push(message.text());
        else if (message.type() === 'error') faults.push(`console: ${message.text()}`);
      });
      page.on('request', (request) => {
        if (!/^(data|blob):/.test(request.url()) && new URL(request.url()).host !== new URL(origin).host)
          faults.push(`request: ${request.url()}`);
      });
      await page.goto(origin + address);
      return page;
    },
    async closePages() {
      await Promise.all(browser.contexts().map((context) => context.close()));
    },
    stopServer: () => server.stop(),
    async crashServer() {
      await server.stop('SIGKILL');
      server = await startServer(records, { ...settings, PORT: new URL(origin).port });
    },
    async close() {
      await browser.close();
      await server.stop();
    },
  };
}

/** `server/main.ts` on a port of the system's choice, as `npm start` runs it. */
async function startServer(
  records: string,
  settings: Readonly<Record<string, string>>,
): Promise<{ readonly origin: string; stop(signal?: NodeJS.Signals): Promise<void> }> {
  const child = spawn(process.execPath, ['server/main.ts'], {
    cwd: ROOT,
    env: { ...process.env, PORT: '0', HOST: '127.0.0.1', KILTER_RECORDS: records, ...UNBOUNDED, ...settings },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const [line] = (await once(child.stdout, 'data')) as [Buffer];
  const origin = /http:\/\/\S+/.exec(line.toString())?.[0];
  if (origin === undefined) throw new Error(`The server said ${line.toString()}`);
  return {
    origin,
    async stop(signal = 'SIGTERM') {
      if (child.exitCode !== null || child.signalCode !== null) return;
      child.kill(signal);
      await once(child, 'exit');
    },
  };
}
