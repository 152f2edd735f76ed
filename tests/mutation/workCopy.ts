import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ROOT } from '../support/sources.ts';

type Outcome = 'caught' | 'survived' | 'timed out';

const COPIED = ['engine', 'levels', 'server', 'client', 'tests', 'package.json', 'tsconfig.json', 'README.md'];
const KINDS = ['unit', 'properties', 'validation', 'regression'];

/** Needs a process of its own, which the other tests share here: that halves their time. */
const LEFT_OUT = '**/world/loadOrder.test.ts';

/** A copy of the project in which mutants are tried; the project itself is never written to. */
interface WorkCopy {
  write(file: string, source: string): void;
  /** Runs one folder of tests after the other until the first test that fails; the limit is that of one folder. */
  test(folders: readonly string[], limitSeconds: number): Outcome;
  remove(): void;
}

export function createWorkCopy(): WorkCopy {
  const root = mkdtempSync(path.join(tmpdir(), 'mutation-'));
  for (const name of COPIED) cpSync(path.join(ROOT, name), path.join(root, name), { recursive: true });
  symlinkSync(path.join(ROOT, 'node_modules'), path.join(root, 'node_modules'), 'junction');
  return {
    write: (file, source) => writeFileSync(path.join(root, file), source),
    test(folders, limitSeconds) {
      for (const folder of folders) {
        const outcome = runTests(root, folder, limitSeconds);
        if (outcome !== 'survived') return outcome;
      }
      return 'survived';
    },
    remove: () => rmSync(root, { recursive: true, force: true }),
  };
}

function runTests(root: string, folder: string, limitSeconds: number): Outcome {
  const vitest = path.join(root, 'node_modules/vitest/vitest.mjs');
  const timeout = limitSeconds * 1000;
  const options = {
    config: 'tests/vitest.config.ts',
    bail: 1,
    maxWorkers: 1,
    isolate: false,
    exclude: LEFT_OUT,
    // a slow machine catches nothing
    testTimeout: timeout,
    reporter: 'dot',
  };
  const given = [
    '--project=pure',
    '--project=apart',
    ...Object.entries(options).map(([name, value]) => `--${name}=${value}`),
  ];
  const done = spawnSync(process.execPath, [vitest, 'run', ...given, folder], {
    cwd: root,
    encoding: 'utf8',
    timeout,
    killSignal: 'SIGKILL',
  });
  if (done.error !== undefined || done.signal !== null) return 'timed out';
  return done.status === 0 ? 'survived' : 'caught';
}

/** The folders of tests that answer for a folder of the engine, the quick ones first; the golden hashes at the end answer for all. */
export function testFolders(engineFolder: string): readonly string[] {
  const own = KINDS.map((kind) => `tests/${kind}/${engineFolder}/`);
  const there = own.filter((folder) => existsSync(path.join(ROOT, folder)));
  return there.length === 0 ? [] : [...there, 'tests/regression/golden/'];
}
