import type { StudyCase } from '../../engine/study/index.ts';
import { plainLander } from './plainLander.ts';

/** A narrow plain lander on level ground of Earth, where it takes few steps to simulate; the rest as a test wants it. */
export function studiedCase(changes: Partial<StudyCase> = {}): StudyCase {
  return {
    lander: plainLander({ mass: 1500, halfStance: 0.6, centerHeight: 2, inertia: 1000 }),
    gravity: 9.80665,
    slopeDeg: 0,
    descentRate: 1,
    horizontalSpeed: 0.5,
    friction: 0.8,
    missing: [],
    ...changes,
  };
}
