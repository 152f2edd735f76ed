import { describe, expect, it } from 'vitest';
import { FOOT_KN, FOOT_KT, FOOT_U1, FOOT_U2, FOOT_UN, FOUND_DAMPING_WORK } from '../../../engine/touchdown/layout.ts';
import { restiffen } from '../../../engine/touchdown/legStages.ts';
import { prepareTouchdown } from '../../../engine/touchdown/prepareTouchdown.ts';
import { startTouchdown } from '../../../engine/touchdown/startTouchdown.ts';
import { ringLander } from '../../support/ringLander.ts';
import { MOON, plane } from '../../support/touchDown.ts';

const [LEG, ACROSS, BOTTOMED] = [1e6, 7e5, 4e6];

/** A foot pressed and pushed across on soil of this stiffness [N/m], before and after its leg is used up. */
function usedUp(soilStiffness: number) {
  const lander = ringLander({
    mass: 2000,
    inertia: [2000, 2000, 2500],
    centerHeight: 1.5,
    legCount: 4,
    radius: 2,
    crushForce: 10_000,
    stiffness: LEG,
    bottomedStiffness: BOTTOMED,
    secondary: { force: 5000, stroke: 0.3, stiffness: ACROSS },
  });
  const prepared = prepareTouchdown(lander);
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
  const kernel = prepared.value;
  const soil = { kind: 'bearing', stiffness: soilStiffness, strength: 1e9 } as const;
  const ground = { ...plane(1), soil };
  startTouchdown(kernel, { gravity: MOON, ground, state: { horizontalSpeed: 0, descentRate: 1 } }, {});
  const { feet, found } = kernel;
  [feet[FOOT_UN], feet[FOOT_U1], feet[FOOT_U2]] = [0.012, 0.004, -0.003];
  const read = () => ({
    kn: feet[FOOT_KN]!,
    kt: feet[FOOT_KT]!,
    forces: [feet[FOOT_KN]! * feet[FOOT_UN]!, feet[FOOT_KT]! * feet[FOOT_U1]!, feet[FOOT_KT]! * feet[FOOT_U2]!],
  });
  const before = read();
  const moved = restiffen(kernel, 0);
  return { before, moved, after: read(), lost: found[FOUND_DAMPING_WORK]! };
}

function series(...stiffnesses: readonly number[]): number {
  return 1 / stiffnesses.reduce((sum, k) => sum + 1 / k, 0);
}

describe('a leg that is used up', () => {
  it.each([1e7, 3e5])(
    '[TD5] is as stiff as it is bottomed, in series with soil of %d N/m, at the force that it has',
    (soil) => {
      const { before, moved, after, lost } = usedUp(soil);
      expect(before.kn / series(LEG, soil)).toBeCloseTo(1, 12);
      expect(before.kt / series(ACROSS, soil)).toBeCloseTo(1, 12);
      expect(after.kn / series(BOTTOMED, soil)).toBeCloseTo(1, 12);
      expect(after.kt / series(BOTTOMED, soil)).toBeCloseTo(1, 12);
      after.forces.forEach((force, i) => expect(force / before.forces[i]!).toBeCloseTo(1, 12));
      // what the softer springs held more: F²/2k
      const [normal, across1, across2] = before.forces.map((force) => force * force);
      const held = (kn: number, kt: number): number => normal! / (2 * kn) + (across1! + across2!) / (2 * kt);
      expect(lost / (held(before.kn, before.kt) - held(after.kn, after.kt))).toBeCloseTo(1, 10);
      expect(moved / (before.forces[0]! * (1 / before.kn - 1 / after.kn))).toBeCloseTo(1, 10);
    },
  );
});
