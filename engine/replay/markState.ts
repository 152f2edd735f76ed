import type { Descent } from '../world/descentRecord.ts';
import { hashDescent, readDescent } from '../world/readDescent.ts';
import type { Mark, MarkedField } from './recording.ts';
import { MARKED_FIELDS } from './recording.ts';

/** A mark of the state as it is now. */
export function markState(descent: Descent): Mark {
  const { tick, legs, ...state } = readDescent(descent);
  const named: Readonly<Record<MarkedField, number>> = {
    ...state,
    leftStroke: legs[0]?.stroke ?? 0,
    rightStroke: legs[1]?.stroke ?? 0,
  };
  return { tick, hash: hashDescent(descent), values: MARKED_FIELDS.map((field) => named[field]) };
}
