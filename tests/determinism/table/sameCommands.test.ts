import { describe, expect, it } from 'vitest';
import { createPlayback, playToEnd, type Recording } from '../../../engine/replay/index.ts';
import {
  commandTable,
  createTable,
  dropMember,
  joinTable,
  playedModel,
  recordingOf,
  returnMember,
  stepTable,
  viewTable,
  type Command,
} from '../../../engine/table/index.ts';
import { firstLanding } from '../../../levels/index.ts';

const MOST_TICKS = 20_000;

/** Commands by tick, of a crew that changes seats, holds, loses a line, and is covered by the stand-in in between. */
const SCRIPT: Readonly<Record<number, readonly (readonly [string, Command])[]>> = {
  30: [['m1', { kind: 'setThrust', percent: 35 }]],
  90: [['m1', { kind: 'setTilt', degrees: 8 }]],
  200: [
    ['m2', { kind: 'takeSeat', seat: 'propellant' }],
    ['m2', { kind: 'setThrust', percent: 22 }],
  ],
  260: [['m2', { kind: 'hold' }]],
  300: [
    ['m1', { kind: 'setTilt', degrees: -3 }],
    ['m1', { kind: 'resume' }],
  ],
  700: [['m2', { kind: 'leaveSeat' }]],
  720: [['m1', { kind: 'leaveSeat' }]],
};

function flyScript(seed: number): { readonly recording: Recording; readonly readings: readonly string[] } {
  const table = createTable({ plan: firstLanding(seed), model: playedModel });
  joinTable(table, { name: 'Ada' });
  joinTable(table, { name: 'Bo' });
  commandTable(table, 'm1', { kind: 'takeSeat', seat: 'flying' });
  commandTable(table, 'm1', { kind: 'begin' });
  const readings: string[] = [];
  for (let tick = 0; tick < MOST_TICKS && table.stage !== 'resolved'; tick += 1) {
    for (const [id, command] of SCRIPT[tick] ?? []) expect(commandTable(table, id, command).ok).toBe(true);
    if (tick === 400) dropMember(table, 'm1');
    if (tick === 650) returnMember(table, 'm1');
    stepTable(table);
    if (tick % 60 === 0) readings.push(JSON.stringify(viewTable(table, 'm2')));
  }
  readings.push(JSON.stringify(viewTable(table, 'm2')));
  expect(table.stage).toBe('resolved');
  return { recording: recordingOf(table), readings };
}

describe('a table', () => {
  it('[TA19] gives the same bits for the same plan and the same commands between the same ticks', () => {
    const first = flyScript(1);
    const second = flyScript(1);
    expect(second.readings).toEqual(first.readings);
    expect(second.recording).toEqual(first.recording);
    expect(first.readings.length).toBeGreaterThan(15);
    expect(new Set(first.readings).size).toBeGreaterThan(12);
  });

  it('[TA19] gives other bits over other ground', () => {
    const marks = [1, 2].map((seed) => flyScript(seed).recording.marks.at(-1)?.hash);
    expect(marks[0]).not.toBe(marks[1]);
  });

  it('[TA19] records what crew and stand-in flew, and the recording replays without divergence', () => {
    const { recording } = flyScript(1);
    const inputs = new Set(recording.inputs.map(({ thrustPercent, tiltDeg }) => `${thrustPercent} ${tiltDeg}`));
    expect(inputs.has('22 8')).toBe(true);
    expect(inputs.size).toBeGreaterThan(8);
    const playback = createPlayback(recording, firstLanding(1).setup);
    if (!playback.ok) throw new Error(playback.error.code);
    expect(playToEnd(playback.value)).toBeUndefined();
    expect(playback.value.mark).toBe(recording.marks.length);
    expect(recording.marks.length).toBeGreaterThan(20);
  });
});
