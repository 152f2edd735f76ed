import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ROOT } from '../support/sources.ts';

type Outcome = 'caught' | 'survived' | 'timed out';

const COPIED = ['engine', 'levels', 'server', 'client', 'tests', 'package.json', 'tsconfig.json', 'README.md'];
const KINDS = ['unit', 'properties', 'validation', 'regression'];

/** A copy of the project in which mutants are tried; the project itself is never written to. */
interface WorkCopy {
  write(file: string, source: string): void;
  /** Runs tests until the first that fails. */
  test(folders: readonly string[], limitSeconds: number): Outcome;
  remove(): void;
}

export function createWorkCopy(): WorkCopy {
  const root = mkdtempSync(path.join(tmpdir(), 'mutation-'));
  for (const name of COPIED) cpSync(path.join(ROOT, name), path.join(root, name), { recursive: true });
  symlinkSync(path.join(ROOT, 'node_modules'), path.join(root, 'node_modules'), 'junction');
  const vitest = path.join(root, 'node_modules/vitest/vitest.mjs');
  return {
    write: (file, source) => writeFileSync(path.join(root, file), source),
    test(folders, limitSeconds) {
      const options = ['--config', 'tests/vitest.config.ts', '--project', 'pure', '--bail', '1', '--maxWorkers', '1'];
      const done = spawnSync(process.execPath, [vitest, 'run', ...options, '--reporter', 'dot', ...folders], {
        cwd: root,
        encoding: 'utf8',
        timeout: limitSeconds * 1000,
        killSignal: 'SIGKILL',
      });
      if (done.error !== undefined || done.signal !== null) return 'timed out';
      return done.status === 0 ? 'survived' : 'caught';
    },
    remove: () => rmSync(root, { recursive: true, force: true }),
  };
}

/** The folders of tests that answer for a folder of the engine. */
export function testFolders(engineFolder: string): readonly string[] {
  return KINDS.map((kind) => `tests/${kind}/${engineFolder}/`).filter((folder) => existsSync(path.join(ROOT, folder)));
}
