import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { campaignOf, SPREAD_BOUNDS } from '../../../client/workbench/campaignOf.ts';
import { FIRST_STATE, studyOf, type BenchState } from '../../../client/workbench/benchState.ts';
import { commandFor, isShelf } from '../../../client/workbench/commandLine.ts';
import { STUDIES, type Answers, type Questions, type Study } from '../../../client/workbench/studies.ts';
import { formatLander } from '../../../engine/lander/index.ts';
import { nextUniform, seedRandom } from '../../../engine/math/index.ts';
import { rigidRound } from '../../../engine/study/index.ts';
import { LANDERS } from '../../../levels/index.ts';
import { callJson } from '../cli/runKilter.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'bench-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Landers of the shelf and landers with random dimensions, in random arrivals. */
function randomStates(count: number, seed: number): readonly BenchState[] {
  const random = seedRandom(seed);
  const between = (low: number, high: number) => Number((low + (high - low) * nextUniform(random)).toFixed(2));
  return Array.from({ length: count }, (_, i): BenchState => {
    const lander = LANDERS[i % LANDERS.length]!.id;
    return {
      ...FIRST_STATE,
      lander,
      shape: i % 2 === 0 ? {} : { stroke: between(0.3, 0.6), footRadius: between(2.6, 4), fill: between(0.05, 0.5) },
      missing: lander === 'steeple' && i % 4 === 1 ? [2] : [],
      world: i % 3 === 0 ? 'moon' : 'mars',
      arrival: {
        slopeDeg: between(0, 9),
        friction: between(0.4, 1),
        descentRate: between(0.5, 2.5),
        horizontalSpeed: between(-1, 1),
      },
    };
  });
}

/** The command that the page shows, run; the changed lander is saved where the command reads it. */
async function run(
  verb: Parameters<typeof commandFor>[0],
  state: BenchState,
  more: readonly string[] = [],
): Promise<Readonly<Record<string, unknown>>> {
  const words = commandFor(verb, state, more).split(' ').slice(2);
  if (!isShelf(state)) {
    const file = path.join(folder, words[1]!);
    writeFileSync(file, JSON.stringify(formatLander(caseOf(state).lander)));
    words[1] = file;
  }
  return (await callJson(words)) as Readonly<Record<string, unknown>>;
}

function caseOf(state: BenchState) {
  const asked = studyOf(state);
  if (!asked.ok) throw new Error(asked.error);
  return asked.value;
}

function whole<Name extends Study>(study: Name, question: Questions[Name]): Answers[Name] {
  const last = [...STUDIES[study](question)].at(-1);
  if (last === undefined || typeof last === 'string') throw new Error(last ?? 'no answer');
  return last;
}

describe('the workbench', () => {
  it('[SY3] gives the static tilt that the command line gives, toward every azimuth', async () => {
    for (const state of randomStates(6, 1)) {
      const rigid = rigidRound(caseOf(state), 15);
      const found = await run('stand', state);
      if (!rigid.stands) throw new Error(rigid.reason);
      expect(found['byAzimuth']).toMatchObject(rigid.rows.map(({ azimuthDeg, tiltDeg }) => ({ azimuthDeg, tiltDeg })));
      expect(found['least']).toMatchObject({ tiltDeg: rigid.least.tiltDeg, legs: rigid.least.legs });
    }
  });

  it('[SY3] gives the tip limits that the command line gives, toward azimuths and least', async () => {
    // not Steeple's, whose limits take some seconds
    for (const state of randomStates(4, 2)
      .filter(({ lander }) => lander !== 'steeple')
      .slice(1)) {
      let found: Answers['limits'] | undefined;
      for (const answer of STUDIES.limits(caseOf(state))) {
        if (typeof answer === 'string') throw new Error(answer);
        found = answer;
        // the first round is enough to be held against the command line
        if (answer.least !== undefined) break;
      }
      const printed = await run('limit', state, ['--step 45']);
      const rows = (found?.rows ?? []).map(({ azimuthDeg, tip, gear, tipUpTo }) => ({
        azimuthDeg,
        tip,
        gear,
        tipUpTo,
      }));
      expect(rows).toHaveLength(8);
      expect(printed['byAzimuth']).toMatchObject(rows);
      expect(printed['least']).toMatchObject(found!.least!);
      const rigid = rigidRound(caseOf(state), 45);
      expect(printed['byAzimuth']).toMatchObject(
        rigid.stands ? rigid.rows.map(({ plastic }) => ({ plasticHorizontal: plastic })) : [],
      );
    }
  }, 120_000);

  it('[SY3] gives the plane of speeds that the command line gives', async () => {
    for (const state of randomStates(2, 3)) {
      const grid = { speedTo: 3, descentTo: 3, steps: 6, yaws: 3 };
      const map = whole('plane', { asked: caseOf(state), grid });
      const printed = await run('envelope', state, [
        '--from -3 --to 3 --descent-from 0 --descent-to 3 --steps 6 --yaws 3',
      ]);
      expect(map.isDone).toBe(true);
      expect((printed['classes'] as string[][]).flat()).toEqual(map.nodes.map((node) => node.class));
      expect(printed['runs']).toBe(map.runs);
    }
  });

  it('[SY3] gives the touchdown that the command line gives', async () => {
    for (const state of randomStates(3, 4)) {
      const touchdown = { horizontalSpeed: 0.7, descentRate: state.arrival.descentRate, yaw: 0 };
      const { result } = whole('touchdown', { asked: caseOf(state), touchdown });
      const printed = await run('touchdown', state, ['--horizontal 0.7']);
      expect(printed['outcome']).toBe(result.outcome);
      expect(result.history?.length).toBeGreaterThan(20);
    }
  });

  it('[SY3] draws the dispersions of the campaign that it saves', async () => {
    const [state] = randomStates(1, 5);
    const document = campaignOf(state!, (name) => (name === 'runs' ? 60 : SPREAD_BOUNDS[name].start));
    let summary: Answers['spread']['summary'];
    for (const answer of STUDIES.spread(document)) {
      if (typeof answer === 'string') throw new Error(answer);
      ({ summary } = answer);
      // the stack-up that follows is asked for apart on the command line
      if (answer.done === answer.runs) break;
    }
    const file = path.join(folder, 'campaign.json');
    writeFileSync(file, JSON.stringify(document));
    const printed = (await callJson(['disperse', file, '--workers', '1'])) as {
      readonly outcomes: Readonly<Record<string, { readonly count: number }>>;
    };
    expect(summary?.done).toBe(60);
    for (const { outcome, count } of summary!.outcomes) expect(printed.outcomes[outcome]?.count ?? 0).toBe(count);
  });

  it('[SY3] gives the limits by world and slope, and the pairs of a trade, that the command line gives', async () => {
    const state: BenchState = { ...FIRST_STATE, world: 'earth', arrival: { ...FIRST_STATE.arrival, slopeDeg: 4 } };
    const asked = caseOf(state);
    const [cell] = whole('matrix', { asked, worlds: [{ id: 'earth', gravity: asked.gravity }], slopesDeg: [4] });
    const limit = await run('limit', state, ['--step 90']);
    expect(cell).toMatchObject({
      world: 'earth',
      slopeDeg: 4,
      least: { tip: (limit['least'] as { tip: number }).tip },
    });
    const axes = { vary: 'mass', against: 'footRadius', values: [1900], againstValues: [2.3] } as const;
    const { points } = whole('grid', { asked, axes });
    const printed = (await run('trade', state, [
      '--vary mass --values 1900 --against footRadius --against-values 2.3',
    ])) as {
      readonly grid: { readonly points: readonly (readonly { readonly limit: number; readonly mass: number }[])[] };
    };
    const both = (rows: typeof printed.grid.points) =>
      rows.map((row) => row.map(({ limit: speed, mass }) => [speed, mass]));
    expect(both(points as typeof printed.grid.points)).toEqual(both(printed.grid.points));
  });
});
