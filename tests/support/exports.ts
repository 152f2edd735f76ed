import path from 'node:path';
import { codeOnly, readSource } from './sources.ts';

/** A name that a file exports: its own, or one that it passes on from another file. */
interface ExportedName {
  readonly file: string;
  readonly name: string;
  /** Of a name passed on: `file#name` where it comes from. */
  readonly from: string | undefined;
}

const DECLARED =
  /(?:^|\n)export\s+(?:(?:declare|abstract|async)\s+)*(?:function\*?|const|let|class|interface|type)\s+(\w+)/g;
const LISTED = /(?:^|\n)export\s+(?:type\s+)?\{([^}]*)\}(?:\s*from\s+'([^']+)')?/g;
const IMPORTED = /(?:^|\n)\s*import\s+(?:type\s+)?(?:\w+\s*,\s*)?\{([^}]*)\}\s*from\s+'([^']+)'/g;
const LOADED = /import\(\s*'([^']+)'\s*\)/g;

export function exportsOf(file: string): readonly ExportedName[] {
  const source = withoutComments(file);
  const declared = [...source.matchAll(DECLARED)].map(([, name = '']) => ({ file, name, from: undefined }));
  const listed = [...source.matchAll(LISTED)].flatMap(([, list = '', specifier]) =>
    namesIn(list).map(([inner, outer]) => {
      const target = specifier === undefined ? undefined : targetOf(file, specifier);
      return { file, name: outer, from: target === undefined ? undefined : `${target}#${inner}` };
    }),
  );
  return [...declared, ...listed];
}

/** What this file takes from others, as `file#name`. Of a file that it loads while running, every word it contains. */
export function usesIn(file: string): readonly string[] {
  const source = withoutComments(file);
  const imported = [...source.matchAll(IMPORTED)].flatMap(([, list = '', specifier = '']) =>
    namesIn(list).map(([inner]) => `${targetOf(file, specifier) ?? specifier}#${inner}`),
  );
  const loaded = [...source.matchAll(LOADED)].flatMap(([, specifier = '']) =>
    [...new Set(codeOnly(source).match(/\w+/g))].map((word) => `${targetOf(file, specifier) ?? specifier}#${word}`),
  );
  return [...imported, ...loaded];
}

/** `a, type B, c as d` as pairs of the name inside and the name outside. */
function namesIn(list: string): readonly (readonly [string, string])[] {
  return [...list.matchAll(/(?:type\s+)?(\w+)(?:\s+as\s+(\w+))?\s*(?:,|$)/g)].map(([, inner = '', outer = inner]) => [
    inner,
    outer,
  ]);
}

function targetOf(file: string, specifier: string): string | undefined {
  return specifier.startsWith('.') ? path.posix.join(path.posix.dirname(file), specifier) : undefined;
}

function withoutComments(file: string): string {
  return readSource(file).replace(/\/\*[\s\S]*?\*\/|^\s*\/\/[^\n]*/gm, (text) => text.replace(/[^\n]/g, ' '));
}
