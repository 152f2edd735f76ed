import { parseArgs } from 'node:util';
import { nextUniform, seedRandom } from '../../engine/math/index.ts';
import { projectFiles, readSource } from '../support/sources.ts';
import { mutate, mutationsOf, type Mutation } from './mutations.ts';
import { createWorkCopy, testFolders } from './workCopy.ts';

/**
 * Would the tests notice? Puts one random mistake after another into a copy of the engine, and runs the tests of that folder against each. Not part of
 * `npm test`: every survivor is looked at by a person, since some change nothing that can be observed.
 *
 *     node tests/mutation/run.ts [folder of engine/ ...] [--seed 1] [--count 20] [--limit 120]
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seed: { type: 'string', default: '1' },
    count: { type: 'string', default: '20' },
    /** Longest run of tests [s]. */
    limit: { type: 'string', default: '120' },
    /** Only mutants of files whose name holds this. */
    file: { type: 'string', default: '' },
  },
});

const sources = projectFiles().filter((file) => /^engine\/\w+\/.*\.ts$/.test(file) && file.includes(values.file));
const known = new Set(sources.map(folderOf).filter((folder) => testFolders(folder).length > 0));
const folders = positionals.length > 0 ? positionals : Array.from(known);
const unknown = folders.filter((folder) => !known.has(folder));
if (unknown.length > 0) fail(`expected folders of engine/ with tests, got ${unknown.join(', ')}`);

const all = sources
  .filter((file) => folders.includes(folderOf(file)))
  .flatMap((file) => mutationsOf(file, readSource(file)));
const chosen = draw(all, wholeNumber('count'), wholeNumber('seed'));
const limit = wholeNumber('limit');
const copy = createWorkCopy();
const counts = { caught: 0, survived: 0, 'timed out': 0 };
process.on('exit', () => copy.remove());

for (const folder of new Set(chosen.map(({ file }) => folderOf(file)))) {
  const outcome = copy.test(testFolders(folder), limit);
  if (outcome !== 'survived') fail(`the tests of engine/${folder} are ${outcome} without any mutation`);
}
for (const mutation of chosen) {
  const source = readSource(mutation.file);
  copy.write(mutation.file, mutate(source, mutation));
  const outcome = copy.test(testFolders(folderOf(mutation.file)), limit);
  copy.write(mutation.file, source);
  counts[outcome] += 1;
  console.log(`${outcome.padEnd(9)}  ${describe(mutation, source)}`);
}
console.log(
  `${chosen.length} of ${all.length} mutations: ${counts.caught} caught, ${counts['timed out']} timed out, ${counts.survived} survived`,
);

function folderOf(file: string): string {
  return file.split('/')[1] ?? '';
}

/** Without repetition, each equally likely. */
function draw(from: readonly Mutation[], count: number, seed: number): readonly Mutation[] {
  const left = Array.from(from);
  const random = seedRandom(seed);
  return Array.from({ length: Math.min(count, left.length) }, () =>
    left.splice(Math.floor(nextUniform(random) * left.length), 1),
  ).flat();
}

function describe({ file, line, start, before, after }: Mutation, source: string): string {
  const lineStart = source.lastIndexOf('\n', start - 1) + 1;
  const text = source.split('\n')[line - 1] ?? '';
  const changed = before.includes('\n') ? before.replaceAll(/\s+/g, ' ') : before;
  return `${file}:${line}:${start - lineStart + 1}  ${changed} -> ${after === '' ? 'nothing' : after}  in: ${text.trim()}`;
}

function wholeNumber(name: 'seed' | 'count' | 'limit'): number {
  const value = Number(values[name]);
  if (!Number.isSafeInteger(value) || value < 0) fail(`--${name}: expected a whole number, got ${values[name]}`);
  return value;
}

function fail(message: string): never {
  console.error(message);
  process.exit(2);
}
