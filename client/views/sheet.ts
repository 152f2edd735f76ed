import type { SectionCamera } from '../camera/sectionCamera.ts';
import type { Pen } from '../ink/pen.ts';
import type { LabelBoard } from './labels.ts';

/** Everything a view needs to draw on: the pen, the framing, and the moment. */
export interface Sheet {
  readonly pen: Pen;
  readonly camera: SectionCamera;
  /** Steadily growing seconds, for movement that is only for the eye. */
  readonly time: number;
  /** Where words are placed so that none lies over others; without it there is room for all of them. */
  readonly labels?: LabelBoard;
  /** The reader asked for no movement beyond that of the descent itself. */
  readonly still: boolean;
}

/** Sheets narrower than this get short words and smaller letters [drafting units]. */
export const NARROW = 600;

/** A repeatable scatter in 0 to 1 for drawing: the same index gives the same value, neighbors look unrelated. */
export function scatter(index: number, salt: number): number {
  let bits = (Math.imul(index | 0, 0x27d4eb2d) ^ Math.imul(salt + 0x165667b1, 0x9e3779b1)) | 0;
  bits = Math.imul(bits ^ (bits >>> 15), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return ((bits ^ (bits >>> 16)) >>> 0) / 0x100000000;
}

/** 0 below `from`, 1 above `to`, straight between. */
export function ramp(value: number, from: number, to: number): number {
  return Math.min(1, Math.max(0, (value - from) / (to - from)));
}
