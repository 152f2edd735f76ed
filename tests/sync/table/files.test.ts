import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { startTestServer, type TestServer } from '../../support/tableServer.ts';

let server: TestServer | undefined;
let folder: string | undefined;

afterEach(async () => {
  await server?.close();
  if (folder !== undefined) rmSync(folder, { recursive: true });
  folder = undefined;
});

describe('the client', () => {
  it('is served: the page anew each time, what carries a hash in its name for a year', async () => {
    folder = mkdtempSync(path.join(tmpdir(), 'kilter-'));
    writeFileSync(path.join(folder, 'index.html'), '<!doctype html><title>Kilter</title>');
    mkdirSync(path.join(folder, 'assets'));
    writeFileSync(path.join(folder, 'assets', 'index-abc123.js'), 'export {};');
    server = await startTestServer({ clientFolder: folder });
    const page = await fetch(server.origin);
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('<title>Kilter</title>');
    expect(page.headers.get('cache-control')).toBe('no-cache');
    const invited = await fetch(`${server.origin}/?table=HKTVRQ`);
    expect(invited.status).toBe(200);
    const part = await fetch(`${server.origin}/assets/index-abc123.js`);
    expect(part.headers.get('cache-control')).toContain('immutable');
    expect(part.headers.get('content-type')).toContain('javascript');
    expect((await fetch(`${server.origin}/assets/other.js`)).status).toBe(404);
  });

  it('that is not built is said in one plain line, with the caution', async () => {
    folder = mkdtempSync(path.join(tmpdir(), 'kilter-'));
    server = await startTestServer({ clientFolder: folder });
    const page = await fetch(server.origin);
    expect(page.status).toBe(503);
    expect(await page.text()).toBe(`The client is not built. Run "npm run build", then start again.\n${CAUTION}\n`);
  });
});
