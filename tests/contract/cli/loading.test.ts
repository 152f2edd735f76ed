import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { expect, it } from 'vitest';
import { ROOT } from '../../support/sources.ts';

/** Counts the files of the project that a command line reads. */
const COUNT = `import { registerHooks } from 'node:module';
let own = 0;
registerHooks({ load(url, context, next) { if (!url.includes('node_modules') && url.endsWith('.ts')) own++; return next(url, context); } });
process.on('exit', () => console.error('read ' + own));`;

it('a verb reads only what it needs: worlds no more than twenty files', () => {
  const hook = `data:text/javascript,${encodeURIComponent(COUNT)}`;
  const kilter = path.join(ROOT, 'server/cli/kilter.ts');
  const { stderr } = spawnSync(process.execPath, ['--import', hook, kilter, 'worlds'], { encoding: 'utf8' });
  const read = Number(/read (\d+)/.exec(stderr)?.[1]);
  expect(read).toBeGreaterThan(3);
  expect(read).toBeLessThanOrEqual(20);
});
