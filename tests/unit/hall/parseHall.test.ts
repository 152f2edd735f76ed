import { describe, expect, it } from 'vitest';
import { shapeOf } from '../../../engine/study/index.ts';
import { formatProblem } from '../../../engine/result.ts';
import { findLander, HALL, parseHall, parseHallText } from '../../../levels/index.ts';

const ARRIVAL = {
  name: 'A',
  lander: 'trivet',
  world: 'moon',
  slopeDeg: 5,
  descentRate: 1.5,
  horizontalSpeed: 1.8,
};
const FILM = {
  kind: 'film',
  question: 'Which falls?',
  answer: 'None.',
  vote: true,
  pace: 0.5,
  arrivals: [ARRIVAL, ARRIVAL],
};
const DIAL = {
  kind: 'dial',
  question: 'Wider?',
  answer: 'Yes.',
  field: 'footRadius',
  from: 2,
  to: 3,
  step: 0.1,
  lander: 'trivet',
  worlds: ['moon', 'earth'],
  slopeDeg: 5,
  descentRate: 1,
};

const FLIGHT = {
  kind: 'flight',
  question: 'Who can land it?',
  answer: 'You.',
  lander: 'trivet',
  site: 'saddlers-bench',
  world: 'moon',
  start: 'low',
  seed: 1,
};

const hallOf = (...scenes: readonly unknown[]) => ({ format: 'kilter-hall/1', title: 'A test', scenes });

function problemsOf(json: unknown): readonly string[] {
  const parsed = parseHall(json);
  return parsed.ok ? [] : parsed.error.map(formatProblem);
}

describe('a file of scenes', () => {
  it('gives each arrival its lander with what the scene changes of it', () => {
    const changed = { ...ARRIVAL, shape: { footRadius: 1.7 }, missing: [2], yawDeg: 45 };
    const parsed = parseHall(hallOf({ ...FILM, arrivals: [ARRIVAL, changed] }, DIAL));
    if (!parsed.ok || parsed.value.scenes[0]?.kind !== 'film') throw new Error('not read');
    const [plain, other] = parsed.value.scenes[0].arrivals;
    expect(plain?.lander).toEqual(findLander('trivet'));
    expect(plain).toMatchObject({ friction: 0.8, yawDeg: 0, missing: [] });
    expect(other?.lander === undefined ? undefined : shapeOf(other.lander).footRadius).toBeCloseTo(1.7, 12);
    // people count legs from 1
    expect(other).toMatchObject({ missing: [1], yawDeg: 45 });
  });

  it('lays a lander on its side where the scene says so', () => {
    const parsed = parseHall(hallOf({ ...FILM, arrivals: [ARRIVAL, { ...ARRIVAL, lander: 'steeple', lying: true }] }));
    if (!parsed.ok || parsed.value.scenes[0]?.kind !== 'film') throw new Error('not read');
    expect(parsed.value.scenes[0].arrivals[1]?.lander.name).toBe('Steeple, lying');
  });

  it.each([
    [hallOf({ ...FILM, pace: 0 }), 'scenes[0].pace: expected a number from 0.05 to 10, got 0'],
    [
      hallOf({ ...FILM, arrivals: [ARRIVAL] }),
      'scenes[0].arrivals: expected a list of 2 to 3 arrivals, got a list of 1',
    ],
    [
      hallOf({ ...FILM, arrivals: [ARRIVAL, { ...ARRIVAL, missing: [5] }] }),
      'scenes[0].arrivals[1].missing[0]: expected a whole number from 1 to 4, got 5',
    ],
    [
      hallOf({ ...FILM, arrivals: [ARRIVAL, { ...ARRIVAL, shape: { footRadius: 0 } }] }),
      'scenes[0].arrivals[1].shape.footRadius: expected a number from 0.1 to 50 [m], got 0',
    ],
    [
      hallOf(FILM, { ...DIAL, lander: 'trivett' }),
      'scenes[1].lander: expected one of "trivet", "steeple", "bolster" (did you mean "trivet"?), got text "trivett"',
    ],
    [hallOf({ ...DIAL, to: 1 }), 'scenes[0].to: expected a number from 2 to 50 [m], got 1'],
    [
      hallOf({ ...FLIGHT, start: 'lower' }),
      'scenes[0].start: expected one of "far", "high", "middle", "low", got text "lower"',
    ],
    [hallOf({ ...FLIGHT, seed: undefined }), 'scenes[0].seed: expected a value, got nothing'],
    [
      hallOf({ ...FLIGHT, world: 'venus' }),
      'scenes[0].world: expected one that Trivet can fly: Moon, Mars, Mercury, Io, Europa, Ganymede, Callisto, got Venus, where the engine of Trivet gives 0.54 times its weight; it takes 1.25 to fly',
    ],
    [hallOf(), 'scenes: expected a list of 1 to 40 scenes, got a list of 0'],
  ])('names the field, what was expected and what came', (json, problem) => {
    expect(problemsOf(json)).toContain(problem);
  });

  it('says at which end of a dial there is no such lander', () => {
    // the lowest point of the body does not move: it cannot be pressed to less than nothing
    const [problem] = problemsOf(hallOf({ ...DIAL, field: 'centerHeight', from: 0.05, to: 2, step: 0.1 }));
    expect(problem).toMatch(/^scenes\[0\]\.from: expected /);
  });

  it('is refused where a field stands there twice, as every file is', () => {
    const text = JSON.stringify(hallOf(FILM)).replace('"title"', '"title":"B","title"');
    const parsed = parseHallText(text);
    expect(parsed.ok ? '' : parsed.error[0]?.came).toContain('"title" again');
  });

  it('says the line of each problem', () => {
    const lines = JSON.stringify(hallOf(DIAL, { ...FILM, pace: 0 }), undefined, 1).split('\n');
    const parsed = parseHallText(lines.join('\n'));
    const line = lines.findIndex((one) => one.includes('"pace"')) + 1;
    expect(parsed.ok ? [] : parsed.error).toMatchObject([{ path: 'scenes[1].pace', line }]);
  });
});

describe('the scenes that come with Kilter', () => {
  it('ask one question each, and end as their answers say', () => {
    expect(HALL.scenes.map(({ kind }) => kind)).toEqual(['film', 'film', 'dial', 'dial', 'film', 'film', 'flight']);
    expect(HALL.scenes.every(({ question }) => question.endsWith('?'))).toBe(true);
  });
});
