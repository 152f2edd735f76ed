import { existsSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFiles, readSource, ROOT } from '../support/sources.ts';

const files = projectFiles();

describe('the layout', () => {
  it('keeps the top level to the agreed names', () => {
    const agreed = ['README.md', 'DEVELOPERS.md', 'package.json', 'package-lock.json', 'tsconfig.json'];
    const folders = ['client', 'server', 'engine', 'levels', 'tests'];
    const top = new Set(files.map((file) => file.split('/')[0] ?? '').filter((name) => !name.startsWith('.')));
    expect([...top].filter((name) => ![...agreed, ...folders].includes(name))).toEqual([]);
  });

  it('has no folder or file named for a role instead of a concept', () => {
    expect(files.filter((file) => /(^|\/)(utils?|helpers?|common|misc)(\/|\.)/.test(file))).toEqual([]);
  });

  it('lists every folder of engine/, levels/, server/ and client/ in DEVELOPERS.md', () => {
    const listing = readSource('DEVELOPERS.md');
    const folders = new Set(
      files
        .filter((file) => /^(engine|levels|server|client)\/[^/]+\//.test(file))
        .map((file) => file.split('/').slice(0, 2).join('/')),
    );
    expect([...folders].filter((folder) => !listing.includes(`${folder}/`))).toEqual([]);
    const named = [...listing.matchAll(/`((?:engine|levels|server|client)\/\w+)\/`/g)].map((match) => match[1] ?? '');
    expect(named.filter((folder) => !existsSync(path.join(ROOT, folder)))).toEqual([]);
  });

  it('gives each dependency one line of reason in DEVELOPERS.md', () => {
    const listing = readSource('DEVELOPERS.md');
    const manifest = JSON.parse(readSource('package.json')) as Record<string, Record<string, string>>;
    const names = Object.keys({ ...manifest.dependencies, ...manifest.devDependencies });
    expect(names.length).toBeGreaterThan(5);
    expect(names.filter((name) => !listing.includes(`\`${name}\``))).toEqual([]);
  });
});

describe('sources', () => {
  it('cited by key in the engine are listed in engine/REFERENCES.md', () => {
    const references = readSource('engine/REFERENCES.md');
    const cited = new Map<string, string>();
    for (const file of files.filter((name) => /^engine\/.*\.ts$/.test(name))) {
      const comments =
        readSource(file)
          .match(/\/\*[\s\S]*?\*\/|\/\/[^\n]*/g)
          ?.join('\n') ?? '';
      for (const match of comments.matchAll(/\[([A-Z][\w&-]*\d{2,4}[a-z]?)\]/g)) cited.set(match[1] ?? '', file);
    }
    expect(cited.size).toBeGreaterThan(3);
    expect([...cited].filter(([key]) => !references.includes(`[${key}]`))).toEqual([]);
  });
});

describe('rules', () => {
  const stated = [...readSource('engine/SPEC.md').matchAll(/\*\*([A-Z]{2}\d+)\*\*/g)].map((match) => match[1] ?? '');
  /** Rules that the names of tests start with, and where. */
  const named = new Map(
    files
      .filter((file) => /^tests\/.*\.ts$/.test(file))
      .flatMap((file) => rulesNamed(file).map((rule) => [rule, file])),
  );

  it('of engine/SPEC.md are each stated once', () => {
    expect(stated.length).toBeGreaterThan(10);
    expect(stated.filter((rule, i) => stated.indexOf(rule) !== i)).toEqual([]);
  });

  it('of engine/SPEC.md each stand at the start of the name of a test', () => {
    expect(stated.filter((rule) => !named.has(rule))).toEqual([]);
  });

  it('that the name of a test starts with are stated in engine/SPEC.md', () => {
    expect(named.size).toBeGreaterThan(10);
    expect([...named].filter(([rule]) => !stated.includes(rule))).toEqual([]);
  });
});

/** `it('[TD11] [TD12] hold ...')` names two. Citations such as [SP8007] stand inside of names or in comments. */
function rulesNamed(file: string): readonly string[] {
  return [...readSource(file).matchAll(/['"`]((?:\[[A-Z]{2}\d+\]\s)+)/g)].flatMap(([, tags = '']) =>
    [...tags.matchAll(/\w+/g)].map(([rule]) => rule),
  );
}
