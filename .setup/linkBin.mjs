// After an install: put the package's own command where `npx kilter` looks, since npm links only the bins of dependencies.
import { chmodSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const bin = join(import.meta.dirname ?? process.cwd(), '../node_modules/.bin');
const target = '../../server/cli/kilter.ts';
mkdirSync(bin, { recursive: true });
if (process.platform === 'win32') {
  writeFileSync(join(bin, 'kilter.cmd'), `@node "%~dp0\\${target.replaceAll('/', '\\')}" %*\r\n`);
} else {
  const link = join(bin, 'kilter');
  rmSync(link, { force: true });
  symlinkSync(target, link);
  chmodSync(join(bin, target), 0o755);
}
