import { createProblemList, readFields, readNumber } from '../fieldReader.ts';
import { accept, refuse, type FieldProblem, type Result } from '../result.ts';
import type { ControlInput } from '../world/descent.ts';

/** Largest commanded tilt to either side, whole degrees. */
export const MAX_TILT_DEG = 30;

const THRUST = { least: 0, most: 100, unit: '%', whole: true } as const;
const TILT = { least: -MAX_TILT_DEG, most: MAX_TILT_DEG, unit: 'deg', whole: true } as const;

/** Reads an input from foreign data: exactly the two fields, whole numbers within range. Nothing is rounded or cut. */
export function parseControlInput(json: unknown): Result<ControlInput, readonly FieldProblem[]> {
  const list = createProblemList('input');
  const fields = readFields(list, json, '', ['thrustPercent', 'tiltDeg']);
  const thrustPercent = readNumber(list, fields?.thrustPercent, 'thrustPercent', THRUST);
  const tiltDeg = readNumber(list, fields?.tiltDeg, 'tiltDeg', TILT);
  if (thrustPercent === undefined || tiltDeg === undefined || list.problems.length > 0) return refuse(list.problems);
  return accept({ thrustPercent, tiltDeg });
}

/**
 * The whole numbers nearest to what a lever and a stick say, before they are applied here or sent: both ends then step
 * the same bits. Refuses what is out of range by more than half a unit, and what is no number.
 */
export function quantizeControls(controls: ControlInput): Result<ControlInput, readonly FieldProblem[]> {
  return parseControlInput({
    thrustPercent: Math.round(controls.thrustPercent),
    tiltDeg: Math.round(controls.tiltDeg),
  });
}

export function equalsControlInput(a: ControlInput, b: ControlInput): boolean {
  return a.thrustPercent === b.thrustPercent && a.tiltDeg === b.tiltDeg;
}
