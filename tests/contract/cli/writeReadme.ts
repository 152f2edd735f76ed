import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { PAGES, withRealOutput } from '../../support/readmeExamples.ts';
import { ROOT } from '../../support/sources.ts';
import { callKilter } from './runKilter.ts';

/** Writes what the command really prints into the examples of its pages: `node tests/contract/cli/writeReadme.ts`. */
for (const page of PAGES) {
  const text = await withRealOutput(page, async (line) => (await callKilter(line.split(' '))).out);
  writeFileSync(path.join(ROOT, page), text);
}
