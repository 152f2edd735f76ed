/** Public door of the engine's own arithmetic. installDeterministicMath.ts is not here: importing it has an effect. */
export { carlsonRf } from './elliptic.ts';
export { exp, hypot2, log, tanh } from './exponential.ts';
export { createHash, formatHash, hashFloats, mixByte, mixFloat64, type HashState } from './hash.ts';
export {
  conjugate,
  fromAxisAngle,
  fromRotationVector,
  integrate,
  multiply,
  normalize,
  rotate,
  rotateBack,
  UPRIGHT,
  type Quaternion,
} from './quaternion.ts';
export { nextNormal, nextUint32, nextUniform, seedRandom, type RandomState } from './random.ts';
export { findRoot, type Bracket, type RootSearch } from './roots.ts';
export { acos, asin, atan, atan2, cos, MAX_ANGLE, sin, tan } from './trig.ts';
export {
  add2,
  cross2,
  dot2,
  length2,
  lengthSquared2,
  perpendicular2,
  rotate2,
  scale2,
  subtract2,
  type Vec2,
} from './vec2.ts';
export { add3, cross3, direction3, dot3, length3, lengthSquared3, scale3, subtract3, type Vec3 } from './vec3.ts';
