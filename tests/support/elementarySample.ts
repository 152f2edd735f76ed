import { exp, hypot2, log, tanh } from '../../engine/math/exponential.ts';
import { createHash, formatHash, mixFloat64 } from '../../engine/math/hash.ts';
import { nextNormal, nextUniform, seedRandom } from '../../engine/math/random.ts';
import { acos, asin, atan, atan2, cos, sin, tan } from '../../engine/math/trig.ts';

const SCALES = [1, 10, 100, 1e3, 1e4, 1e5, 1e6];

/** Golden: our own output, so that a changed bit is noticed. What is right is judged in tests/unit/math/ulp.test.ts. */
export const GOLDEN_ELEMENTARY_HASH = '536c3d6597cf3238';

/** One hash over every elementary function at 20 000 places: two runtimes that agree on it agree to the bit. */
export function hashElementaryFunctions(): string {
  const random = seedRandom(1, 1);
  const hash = createHash();
  for (let i = 0; i < 20_000; i++) {
    const u = 2 * nextUniform(random) - 1;
    const wide = u * (SCALES[i % SCALES.length] ?? 1);
    for (const f of [sin, cos, tan, atan, tanh]) mixFloat64(hash, f(wide));
    for (const f of [asin, acos, exp]) mixFloat64(hash, f(u));
    mixFloat64(hash, log(Math.abs(wide) + 1e-9));
    mixFloat64(hash, atan2(u, wide - 0.5));
    mixFloat64(hash, hypot2(u, wide));
    mixFloat64(hash, nextNormal(random));
  }
  return formatHash(hash);
}
