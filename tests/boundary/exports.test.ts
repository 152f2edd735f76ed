import { describe, expect, it } from 'vitest';
import { exportsOf, usesIn } from '../support/exports.ts';
import { projectFiles } from '../support/sources.ts';

/** Not swept yet. */
const UNSWEPT =
  /^(engine\/table|server\/rooms|levels\/scenarios|client\/(net|panels))\/|^client\/(main|keptFlight)\.ts$/;

/** Entered by the name of a function: by pools of threads, and by a page in a browser. */
const ENTERED_BY_NAME = [
  'server/workers/forkWorker.ts',
  'server/workers/runWorker.ts',
  'server/workers/simulationWorker.ts',
  'tests/determinism/replayInBrowser.ts',
];

/** Stated for the compiler, which refuses it where it does not hold. */
const STATED = ['server/schema/commonShape.ts#IsCommonDeclared', 'server/schema/ownShape.ts#IsOwnDeclared'];

const typescript = projectFiles().filter((file) =>
  /^(engine|levels|server|client|tests|\.\w+)\/.*\.(ts|mjs)$/.test(file),
);
const exported = typescript.flatMap(exportsOf);
const used = new Set(typescript.flatMap(usesIn));

// a name that a door passes on is used where somebody takes it from the door
for (let before = -1; before !== used.size;) {
  before = used.size;
  for (const { file, name, from } of exported) if (from !== undefined && used.has(`${file}#${name}`)) used.add(from);
}

describe('exports', () => {
  it('are found at all, so that the rule below can fail', () => {
    expect(exported.length).toBeGreaterThan(1000);
    expect(exported.filter(({ from }) => from !== undefined).length).toBeGreaterThan(300);
  });

  it('are each taken by another file, through a door or straight', () => {
    const idle = exported
      .filter(({ file }) => !UNSWEPT.test(file) && !ENTERED_BY_NAME.includes(file))
      .map(({ file, name }) => `${file}#${name}`)
      .filter((name) => !used.has(name) && !STATED.includes(name));
    expect(idle).toEqual([]);
  });
});
