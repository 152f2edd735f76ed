import { spawnSync, type SpawnSyncOptions } from 'node:child_process';

/** A program that tests need and npm does not bring. */
interface Needed {
  /** Where it is; undefined: nowhere. */
  readonly find: () => string | undefined;
  /** Debian's package that has it. */
  readonly package: string;
  /** While it is fetched. */
  readonly fetching: string;
  /** What to do where it cannot be fetched. */
  readonly advice: string;
}

/** Finds a program, or fetches Debian's package where that can be done without asking. Returns what to do when it cannot. */
export function ensurePackage(needed: Needed): { readonly path: string } | { readonly advice: string } {
  const found = needed.find();
  if (found !== undefined) return { path: found };
  const canInstall = process.getuid?.() === 0 && spawnSync('apt-get', ['--version']).status === 0;
  if (canInstall) {
    console.log(needed.fetching);
    const quiet: SpawnSyncOptions = {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    };
    spawnSync('apt-get', ['update'], quiet);
    spawnSync('apt-get', ['install', '-y', '--no-install-recommends', needed.package], quiet);
    const installed = needed.find();
    if (installed !== undefined) return { path: installed };
  }
  return { advice: needed.advice };
}
