import path from 'node:path';
import { build } from 'vite';
import { expect, it } from 'vitest';
import { launchBrowser } from '../../support/browser.ts';
import { GOLDEN_ELEMENTARY_HASH } from '../../support/elementarySample.ts';

/** The sample and the engine functions under it as one script that leaves its hash on the page. */
async function bundleSample(): Promise<string> {
  const output = await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      write: false,
      minify: false,
      lib: {
        entry: path.resolve(import.meta.dirname, '../../support/elementarySample.ts'),
        formats: ['iife'],
        name: 'sample',
      },
    },
  });
  const first = Array.isArray(output) ? output[0] : output;
  if (first === undefined || !('output' in first)) throw new Error('the bundler gave no output');
  return first.output[0].code;
}

it('[MA2] the elementary functions give the golden bits in a real browser', async () => {
  const script = await bundleSample();
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    expect(await page.evaluate(`${script}; sample.hashElementaryFunctions()`)).toBe(GOLDEN_ELEMENTARY_HASH);
  } finally {
    await browser.close();
  }
});
