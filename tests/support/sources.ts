import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';

export const ROOT = path.resolve(import.meta.dirname, '../..');

/** Every file git tracks or would track, relative to the root, that exists in the work tree. */
export function projectFiles(): readonly string[] {
  const listed = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  return listed.split('\n').filter((file) => file !== '' && existsSync(path.join(ROOT, file)));
}

export function readSource(file: string): string {
  return readFileSync(path.join(ROOT, file), 'utf8');
}

export interface ImportLine {
  readonly from: string;
  readonly specifier: string;
  /** The imported file relative to the root, or undefined for a package. */
  readonly target: string | undefined;
}

const IMPORT =
  /(?:^|\n)\s*(?:import|export)\s[^;]*?from\s+'([^']+)'|import\(\s*'([^']+)'\s*\)|(?:^|\n)\s*import\s+'([^']+)'/g;

export function importsOf(file: string): readonly ImportLine[] {
  return [...readSource(file).matchAll(IMPORT)].map((match) => {
    const specifier = match[1] ?? match[2] ?? match[3] ?? '';
    const target = specifier.startsWith('.') ? path.posix.join(path.posix.dirname(file), specifier) : undefined;
    return { from: file, specifier, target };
  });
}

/** Source text with comments and string contents blanked, for scans that look at code alone. */
export function codeOnly(source: string): string {
  return source.replace(/\/\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"/g, (text) =>
    text.replace(/[^\n]/g, ' '),
  );
}
