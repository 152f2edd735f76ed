import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import type { BenchRow } from './row.ts';

interface Compressed {
  readonly name: string;
  readonly raw: number;
  readonly gzip: number;
  readonly brotli: number;
}

/**
 * Compressed size of what a browser loads at a time: for the start page (the document with the scripts and styles it
 * names; the bundler lists every static import there), for a flight alone (the files that a browser was seen to ask for),
 * and for a shared table (the rest).
 */
export function benchClientSize(folder: string, askedForFlight: ReadonlySet<string>): readonly BenchRow[] {
  const document = path.join(folder, 'index.html');
  if (!existsSync(document)) throw new Error(`No built client in ${folder}: run \`npm run build\` first.`);
  const html = readFileSync(document, 'utf8');
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll(path.sep, '/'))
    .filter((file) => /\.(html|js|css|svg|json|woff2)$/.test(file))
    .toSorted();
  const isFirst = (file: string): boolean => file === 'index.html' || html.includes(file);
  const groups = [
    { name: 'start page', files: files.filter(isFirst) },
    { name: 'then for a flight', files: files.filter((file) => !isFirst(file) && askedForFlight.has(file)) },
    { name: 'then for a shared table', files: files.filter((file) => !isFirst(file) && !askedForFlight.has(file)) },
  ];
  return groups.flatMap((group) => {
    const sizes = group.files.map((file) => compress(folder, file));
    const worthALine = sizes.filter(({ raw }) => raw >= 1000);
    return [...sizeRows(group.name, sum(sizes)), ...worthALine.flatMap((file) => sizeRows(`  ${file.name}`, file))];
  });
}

function compress(folder: string, file: string): Compressed {
  const bytes = readFileSync(path.join(folder, file));
  return {
    // without the hash of its content, so that two runs can be compared
    name: file.replace(/-[\w-]{8}(?=\.\w+$)/, ''),
    raw: bytes.length,
    gzip: gzipSync(bytes, { level: 9 }).length,
    brotli: brotliCompressSync(bytes).length,
  };
}

function sum(files: readonly Compressed[]): Compressed {
  return files.reduce(
    (total, file) => ({
      name: '',
      raw: total.raw + file.raw,
      gzip: total.gzip + file.gzip,
      brotli: total.brotli + file.brotli,
    }),
    { name: '', raw: 0, gzip: 0, brotli: 0 },
  );
}

function sizeRows(measure: string, size: Compressed): readonly BenchRow[] {
  const rest = { unit: 'kB', reference: 'uncompressed', referenceValue: size.raw / 1000 };
  return [
    { measure: `${measure}, gzip`, value: size.gzip / 1000, ...rest },
    { measure: `${measure}, brotli`, value: size.brotli / 1000, ...rest },
  ];
}
