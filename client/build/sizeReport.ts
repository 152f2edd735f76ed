import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

/** One file of the built client, in bytes. */
interface BuiltFile {
  readonly file: string;
  /** 'start': loaded with the start page. 'table': loaded after it shows. */
  readonly when: 'start' | 'table';
  readonly raw: number;
  readonly gzip: number;
  readonly brotli: number;
}

/** Writes the size of every built file to `sizes.json` beside the client, for the bench, and prints the two sums. */
export function sizeReport(target: string): Plugin {
  return {
    name: 'kilter:size-report',
    apply: 'build',
    writeBundle(_, bundle) {
      const atStart = new Set<string>(['index.html']);
      for (const output of Object.values(bundle)) {
        // the worker that keeps the page is an entry too, but of no page
        if (output.type !== 'chunk' || !output.isEntry || output.facadeModuleId?.endsWith('.html') !== true) continue;
        for (const file of [output.fileName, ...output.imports]) atStart.add(file);
        for (const file of output.viteMetadata?.importedCss ?? []) atStart.add(file);
      }
      const files = Object.values(bundle).map((output): BuiltFile => {
        const content = Buffer.from(output.type === 'chunk' ? output.code : output.source);
        return {
          file: output.fileName,
          when: atStart.has(output.fileName) ? 'start' : 'table',
          raw: content.length,
          gzip: gzipSync(content, { level: 9 }).length,
          brotli: brotliCompressSync(content).length,
        };
      });
      writeFileSync(path.join(target, 'sizes.json'), `${JSON.stringify(files, undefined, 2)}\n`);
      for (const when of ['start', 'table'] as const) {
        const sum = (key: 'raw' | 'gzip' | 'brotli') =>
          files.filter((file) => file.when === when).reduce((total, file) => total + file[key], 0) / 1000;
        console.log(
          `${when}: ${sum('raw').toFixed(1)} kB raw, ${sum('gzip').toFixed(1)} gzip, ${sum('brotli').toFixed(1)} brotli`,
        );
      }
    },
  };
}
