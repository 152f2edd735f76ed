import { describe, expect, it } from 'vitest';
import { equalsControlInput, parseControlInput, quantizeControls } from '../../../engine/input/index.ts';
import { formatProblem } from '../../../engine/result.ts';

function problems(json: unknown): readonly string[] {
  const parsed = parseControlInput(json);
  return parsed.ok ? [] : parsed.error.map(formatProblem);
}

describe('control inputs', () => {
  it('[IN1] are read when both are whole and within range', () => {
    for (const [thrustPercent, tiltDeg] of [
      [0, 0],
      [100, 30],
      [1, -30],
    ]) {
      expect(parseControlInput({ thrustPercent, tiltDeg })).toEqual({ ok: true, value: { thrustPercent, tiltDeg } });
    }
  });

  it.each([
    { json: { thrustPercent: 101, tiltDeg: 0 }, path: 'thrustPercent', came: '101' },
    { json: { thrustPercent: -1, tiltDeg: 0 }, path: 'thrustPercent', came: '-1' },
    { json: { thrustPercent: 50.5, tiltDeg: 0 }, path: 'thrustPercent', came: '50.5' },
    { json: { thrustPercent: '50', tiltDeg: 0 }, path: 'thrustPercent', came: 'text' },
    { json: { thrustPercent: Number.NaN, tiltDeg: 0 }, path: 'thrustPercent', came: 'NaN' },
    { json: { thrustPercent: 0, tiltDeg: 31 }, path: 'tiltDeg', came: '31' },
    { json: { thrustPercent: 0, tiltDeg: Infinity }, path: 'tiltDeg', came: 'Infinity' },
    { json: { thrustPercent: 0 }, path: 'tiltDeg', came: 'nothing' },
    { json: { thrustPercent: 0, tiltDeg: 0, yaw: 1 }, path: 'yaw', came: '1' },
    { json: null, path: 'document', came: 'null' },
    { json: [50, 0], path: 'document', came: 'a list' },
  ])('[IN1] are refused, never cut: $json', ({ json, path, came }) => {
    const lines = problems(json);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toContain(path);
    expect(lines[0]).toContain(came);
  });

  it('[IN2] are rounded to whole numbers before anyone steps them', () => {
    expect(quantizeControls({ thrustPercent: 49.5, tiltDeg: -3.4 })).toEqual({
      ok: true,
      value: { thrustPercent: 50, tiltDeg: -3 },
    });
    expect(quantizeControls({ thrustPercent: 100.6, tiltDeg: 0 }).ok).toBe(false);
    expect(quantizeControls({ thrustPercent: Number.NaN, tiltDeg: 0 }).ok).toBe(false);
  });

  it('[IN2] have one zero, so that equal inputs have equal bits', () => {
    const quantized = quantizeControls({ thrustPercent: -0.2, tiltDeg: -0.3 });
    expect(quantized).toEqual({ ok: true, value: { thrustPercent: 0, tiltDeg: 0 } });
    if (!quantized.ok) return;
    expect(Object.is(quantized.value.tiltDeg, 0)).toBe(true);
    expect(Object.is(quantized.value.thrustPercent, 0)).toBe(true);
    expect(equalsControlInput(quantized.value, { thrustPercent: 0, tiltDeg: 0 })).toBe(true);
  });

  it('[IN2] are equal only when both are', () => {
    const input = { thrustPercent: 40, tiltDeg: 5 };
    expect(equalsControlInput(input, { ...input })).toBe(true);
    expect(equalsControlInput(input, { ...input, thrustPercent: 41 })).toBe(false);
    expect(equalsControlInput(input, { ...input, tiltDeg: 4 })).toBe(false);
  });
});
