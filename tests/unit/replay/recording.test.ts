import { describe, expect, it } from 'vitest';
import { HASTY, pilot } from '../../../engine/descent/index.ts';
import {
  createPlayback,
  formatRecording,
  hashSetup,
  MARK_EVERY,
  parseRecording,
  parseRecordingText,
  playToEnd,
  recordInput,
  recordRun,
  recordState,
  finishRecording,
  startRecording,
  stepPlayback,
  type Recording,
} from '../../../engine/replay/index.ts';
import { formatProblem } from '../../../engine/result.ts';
import { readDescent, stepDescent, createDescent, type ControlInput } from '../../../engine/world/index.ts';
import { firstLanding } from '../../../levels/index.ts';

const PLAN = firstLanding(4);

function fly(): { recording: Recording; inputs: readonly ControlInput[] } {
  const { setup } = PLAN;
  const craft = { engine: setup.lander.engine, gravity: setup.gravity };
  const descent = createDescent(setup);
  const recorder = startRecording(PLAN, descent);
  const inputs: ControlInput[] = [];
  while (descent.outcome === undefined) {
    const input = pilot(HASTY, craft, readDescent(descent));
    inputs.push(input);
    recordInput(recorder, input);
    stepDescent(descent, input);
    recordState(recorder, descent);
  }
  return { recording: finishRecording(recorder, descent), inputs };
}

const { recording, inputs } = fly();

/** A deep copy that may be spoiled. */
function copy(): { -readonly [Key in keyof Recording]: Recording[Key] } & Record<string, unknown> {
  return structuredClone(recording) as never;
}

function playback(of: Recording = recording) {
  const made = createPlayback(of, PLAN.setup);
  if (!made.ok) throw new Error(made.error.code);
  return made.value;
}

function problems(json: unknown): readonly string[] {
  const parsed = parseRecording(json);
  return parsed.ok ? [] : parsed.error.map(formatProblem);
}

describe('a recording', () => {
  it('[RE2] holds every input, runs of equal ones together, and a mark each half second and at the end', () => {
    const unrolled = recording.inputs.flatMap(({ ticks, thrustPercent, tiltDeg }) =>
      Array.from({ length: ticks }, () => ({ thrustPercent, tiltDeg })),
    );
    expect(unrolled).toEqual(inputs);
    expect(recording.inputs.length).toBeLessThan(inputs.length);
    const due = Array.from({ length: Math.floor(inputs.length / MARK_EVERY) + 1 }, (_, i) => i * MARK_EVERY);
    if (due.at(-1) !== inputs.length) due.push(inputs.length);
    expect(recording.marks.map(({ tick }) => tick)).toEqual(due);
  });

  it('[RE2] survives being written and read', () => {
    expect(parseRecordingText(formatRecording(recording))).toEqual({ ok: true, value: recording });
  });

  it('[RE2] is the same when made afterwards from the inputs', () => {
    expect(recordRun(PLAN, PLAN.setup, [...inputs, { thrustPercent: 0, tiltDeg: 0 }])).toEqual(recording);
  });

  it('[RE4] plays back without a difference, to the same outcome', () => {
    const played = playback();
    expect(playToEnd(played)).toBeUndefined();
    expect(played.mark).toBe(recording.marks.length);
    expect(played.descent.tick).toBe(inputs.length);
    expect(played.descent.outcome).toBe('tipped downhill');
    expect(stepPlayback(played)).toBeUndefined();
  });

  it('[RE4] reports the first tick and field that differ, and plays on', () => {
    const spoiled = copy();
    const values = [...(spoiled.marks[20]?.values ?? [])];
    // the last bit of vy
    values[4] = (values[4] ?? 0) * (1 + Number.EPSILON);
    spoiled.marks = spoiled.marks.map((mark, i) => (i === 20 ? { ...mark, values } : mark));
    const played = playback(spoiled);
    expect(playToEnd(played)).toMatchObject({ tick: 20 * MARK_EVERY, field: 'vy', expected: String(values[4]) });
    expect(played.descent.tick).toBe(inputs.length);
  });

  it('[RE4] reports what one other input does at the next mark', () => {
    const spoiled = copy();
    spoiled.inputs = spoiled.inputs.map((run, i) =>
      i === 3 ? { ...run, thrustPercent: run.thrustPercent + 20 } : run,
    );
    const at = recording.inputs.slice(0, 3).reduce((sum, { ticks }) => sum + ticks, 0);
    const divergence = playToEnd(playback(spoiled));
    expect(divergence?.tick).toBe(Math.ceil((at + 1) / MARK_EVERY) * MARK_EVERY);
  });

  it('[RE4] notices what no marked field shows', () => {
    const spoiled = copy();
    spoiled.marks = spoiled.marks.map((mark, i) => (i === 5 ? { ...mark, hash: '0123456789abcdef' } : mark));
    expect(playToEnd(playback(spoiled))).toMatchObject({ field: 'hash', expected: '0123456789abcdef' });
  });
});

describe('a recording that cannot be trusted', () => {
  it('[RE3] is refused for another setup', () => {
    const { setup } = firstLanding(5);
    expect(createPlayback(recording, setup)).toMatchObject({ ok: false, error: { code: 'replay/other-setup' } });
    const heavier = { ...PLAN.setup, gravity: PLAN.setup.gravity * (1 + Number.EPSILON) };
    expect(createPlayback(recording, heavier).ok).toBe(false);
  });

  it('[RE3] has a hash of the setup that looks at everything but the order of fields', () => {
    const { setup } = PLAN;
    const reordered = Object.fromEntries(Object.entries(setup).toReversed()) as unknown as typeof setup;
    expect(hashSetup(reordered)).toBe(hashSetup(setup));
    const heights = setup.terrain.heights.with(7, (setup.terrain.heights[7] ?? 0) + 1e-12);
    expect(hashSetup({ ...setup, terrain: { ...setup.terrain, heights } })).not.toBe(hashSetup(setup));
    expect(hashSetup({ ...setup, lander: { ...setup.lander, name: 'Other' } })).not.toBe(hashSetup(setup));
  });

  it.each(['format', 'physics', 'tickRate'] as const)(
    '[RE3] is refused for another %s, and nothing else is read',
    (field) => {
      const spoiled: Record<string, unknown> = copy();
      spoiled[field] = field === 'format' ? 'kilter-recording/0' : 7;
      spoiled['marks'] = 'none';
      expect(problems(spoiled)).toHaveLength(1);
      expect(problems(spoiled)[0]).toContain(field);
    },
  );

  it.each([
    { what: 'no object', spoil: () => 3, says: 'an object' },
    {
      what: 'a tick count of zero',
      spoil: () => ({ ...copy(), inputs: [{ ticks: 0, thrustPercent: 0, tiltDeg: 0 }] }),
      says: 'inputs[0].ticks',
    },
    {
      what: 'thrust beyond the lever',
      spoil: () => ({ ...copy(), inputs: [{ ticks: 1, thrustPercent: 140, tiltDeg: 0 }] }),
      says: 'inputs[0].thrustPercent',
    },
    {
      what: 'a mark that is not due',
      spoil: () => ({ ...copy(), marks: recording.marks.with(2, { ...recording.marks[2]!, tick: 61 }) }),
      says: 'marks[2].tick',
    },
    {
      what: 'fewer inputs than marks',
      spoil: () => ({ ...copy(), inputs: recording.inputs.slice(0, -1) }),
      says: 'marks',
    },
    {
      what: 'a mark that is no number',
      spoil: () => ({ ...copy(), marks: [{ ...recording.marks[0]!, values: Array.from({ length: 10 }, () => null) }] }),
      says: 'marks[0].values[0]',
    },
    {
      what: 'a hash of capital letters',
      spoil: () => ({ ...copy(), plan: { ...recording.plan, setupHash: 'ABCDEFABCDEFABCD' } }),
      says: 'plan.setupHash',
    },
    {
      what: 'an hour of one input',
      spoil: () => ({ ...copy(), inputs: [{ ticks: 216_000, thrustPercent: 0, tiltDeg: 0 }] }),
      says: 'inputs[0].ticks',
    },
    { what: 'a field of its own', spoil: () => ({ ...copy(), note: 'x' }), says: 'note' },
  ])('[RE5] is refused with its place named: $what', ({ spoil, says }) => {
    const lines = problems(spoil());
    expect(lines.length).toBeGreaterThan(0);
    expect(lines.join('\n')).toContain(says);
  });

  it('[RE5] is refused unread when it is too long, or no JSON', () => {
    const long = parseRecordingText(' '.repeat(2 * 1024 * 1024 + 1));
    expect(long).toMatchObject({ ok: false, error: [{ code: 'recording/too-large' }] });
    expect(parseRecordingText('{"format":')).toMatchObject({ ok: false, error: [{ code: 'recording/not-json' }] });
    const lists = parseRecording({ ...copy(), inputs: Array.from({ length: 36_001 }, () => ({})) });
    expect(lists).toMatchObject({ ok: false, error: [{ code: 'recording/wrong-count' }] });
  });

  it('[RE5] is refused when its inputs last longer than ten minutes in all', () => {
    const run = { ticks: 20_000, thrustPercent: 0, tiltDeg: 0 };
    expect(problems({ ...copy(), inputs: [run, { ...run, tiltDeg: 1 }] }).join()).toContain('at most 36000 ticks');
  });
});
