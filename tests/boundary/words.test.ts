import { describe, expect, it } from 'vitest';
import { projectFiles, readSource } from '../support/sources.ts';

const text = projectFiles().filter(
  (file) =>
    /\.(ts|mjs|md|html|css|json)$/.test(file) && file !== 'package-lock.json' && !file.startsWith('tests/boundary/'),
);
const shown = text.filter((file) => /^(client|server|levels)\//.test(file) || file === 'README.md');

function filesWith(files: readonly string[], pattern: RegExp): readonly string[] {
  return files.flatMap((file) =>
    readSource(file)
      .split('\n')
      .filter((line) => pattern.test(line))
      .map((line) => `${file}: ${line.trim()}`),
  );
}

describe('words', () => {
  it('claim no approval: nothing shown says validated, qualified or safe', () => {
    const claims = filesWith(shown, /\b(validated|qualified|safe|safely|safety)\b/i).filter(
      (line) => !/qualified authority/.test(line),
    );
    expect(claims).toEqual([]);
  });

  it('name no package registry, no path of a home folder and no private address', () => {
    expect(
      filesWith(text, /registry\.[a-z]+\.|npmjs|\/root\/|\/work\/|\/home\/\w+\/|\b(10|192\.168)\.\d+\.\d+\.\d+\b/),
    ).toEqual([]);
  });

  it('are spelled the American way, but in titles of sources', () => {
    // the browser's own name of a node stays as it is
    const stems =
      'centre|metre|litre|fibre|colour|behaviour|neighbour|favour|honour|grey|analyse(?!rNode)|judgement|licence|defence';
    const british = new RegExp(
      `\\b(${stems}|manoeuvre|towards\\b|(travel|model|label|cancel|signal)l(ed|ing)\\b)`,
      'i',
    );
    const ours = text.filter((file) => file !== 'engine/REFERENCES.md');
    expect(filesWith(ours, british)).toEqual([]);
  });

  it('leave nothing for later without an issue number', () => {
    expect(filesWith(text, /\b(TODO|FIXME|XXX)\b(?!.*#\d)/)).toEqual([]);
  });

  it.each(['client/', 'engine/', 'README.md'])('put the exercise caution into %s', (folder) => {
    const caution = /Not for operational decisions\. Follow your own qualified authority and local rules\./;
    const home = text.filter((file) => file.startsWith(folder));
    expect(filesWith(home, caution).length).toBeGreaterThan(0);
  });
});
