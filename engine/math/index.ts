/** Public door of the engine's own arithmetic. installDeterministicMath.ts is not here: importing it has an effect. */
export { toAzimuthDeg, toDegrees, toRadians } from './degrees.ts';
export { carlsonRf } from './elliptic.ts';
export { exp, hypot2, log, tanh } from './exponential.ts';
export { nextUniform, seedRandom, type RandomState } from './random.ts';
export { findRoot } from './roots.ts';
export { acos, asin, atan, atan2, cos, sin, tan } from './trig.ts';
export { cross2, lengthSquared2, subtract2, type Vec2 } from './vec2.ts';
export { add3, cross3, direction3, dot3, length3, scale3, subtract3, type Vec3 } from './vec3.ts';
