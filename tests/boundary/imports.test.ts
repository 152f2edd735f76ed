import { describe, expect, it } from 'vitest';
import { codeOnly, importsOf, projectFiles, readSource, type ImportLine } from '../support/sources.ts';

/** Whom each top folder may import from, besides itself. */
const ALLOWED: Readonly<Record<string, readonly string[]>> = {
  engine: [],
  levels: ['engine'],
  server: ['engine', 'levels'],
  client: ['engine', 'levels', 'server'],
  tests: ['engine', 'levels', 'server', 'client', '.setup'],
};

const PACKAGE_HOMES: readonly { readonly name: RegExp; readonly homes: RegExp; readonly inTests: boolean }[] = [
  { name: /^planck$/, homes: /^engine\/world\/planckWorld\.ts$/, inTests: true },
  { name: /^ws$/, homes: /^server\/lines\//, inTests: true },
  { name: /^@colyseus\//, homes: /^(server\/(lines|rooms|schema)\/|server\/main\.ts$|client\/net\/)/, inTests: true },
  { name: /^phaser$/, homes: /^client\//, inTests: false },
  { name: /^node:/, homes: /^(server\/|client\/vite\.config\.ts$|client\/build\/)/, inTests: true },
];

/** A folder of the engine, one of the few files at its root, or levels. */
const DOOR = /^(engine\/(\w+|\w+\/index)|levels\/index)\.ts$/;

const typescript = projectFiles().filter((file) => /^(engine|levels|server|client|tests)\/.*\.ts$/.test(file));
const lines = typescript.flatMap(importsOf);
const inside = lines.filter(
  (line): line is ImportLine & { target: string } => line.target !== undefined && line.target !== 'package.json',
);

describe('imports', () => {
  it('are found at all, so that the rules below can fail', () => {
    expect(typescript.length).toBeGreaterThan(20);
    expect(inside.length).toBeGreaterThan(20);
  });

  it('run engine <- levels <- server, client only', () => {
    const wrong = inside.filter(({ from, target }) => {
      const [home = '', goal = ''] = [from.split('/')[0], target.split('/')[0]];
      return home !== goal && !ALLOWED[home]?.includes(goal);
    });
    expect(wrong).toEqual([]);
  });

  it('let the client reach only the schema and the messages of the server', () => {
    const wrong = inside.filter(
      ({ from, target }) =>
        from.startsWith('client/') && target.startsWith('server/') && !/^server\/(schema|messages)\//.test(target),
    );
    expect(wrong).toEqual([]);
  });

  it('pass through the door of a folder of the engine, or a file at its root, and through that of levels from outside', () => {
    const wrong = inside.filter(({ from, target }) => {
      const outside = /^(server|client)\//.test(from) || (from.startsWith('levels/') && target.startsWith('engine/'));
      return outside && /^(engine|levels)\//.test(target) && !DOOR.test(target);
    });
    expect(wrong).toEqual([]);
  });

  it('reach each package with a home from that home only', () => {
    const wrong = lines.filter(({ from, specifier }) =>
      PACKAGE_HOMES.some(
        ({ name, homes, inTests }) =>
          name.test(specifier) && !homes.test(from) && !(inTests && from.startsWith('tests/')),
      ),
    );
    expect(wrong).toEqual([]);
  });

  it('never form a door that re-exports everything', () => {
    const wrong = typescript.filter((file) => /export \*/.test(codeOnly(readSource(file))));
    expect(wrong).toEqual([]);
  });
});

describe('engine/ and levels/', () => {
  const pure = typescript.filter((file) => /^(engine|levels)\//.test(file));

  it('use no exponent operator, whose last bit differs between platforms', () => {
    const wrong = pure.filter((file) => /\*\*/.test(codeOnly(readSource(file))));
    expect(wrong).toEqual([]);
  });

  it('call only those functions of Math that IEEE 754 or the language pins to the bit', () => {
    const exact = new Set(
      'abs ceil clz32 floor fround imul max min round sign sqrt trunc PI SQRT2 SQRT1_2 LN2 LN10 E LOG2E LOG10E'.split(
        ' ',
      ),
    );
    const wrong = pure
      .filter((file) => file !== 'engine/math/installDeterministicMath.ts')
      .flatMap((file) =>
        [...codeOnly(readSource(file)).matchAll(/\bMath\.(\w+)/g)]
          .filter((match) => !exact.has(match[1] ?? ''))
          .map((match) => `${file}: ${match[0]}`),
      );
    expect(wrong).toEqual([]);
  });
});
