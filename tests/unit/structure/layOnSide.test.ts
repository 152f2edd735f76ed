import { describe, expect, it } from 'vitest';
import { massProperties, type Lander } from '../../../engine/lander/index.ts';
import { hullExtent, layOnSide, suggestSideLegs } from '../../../engine/structure/layOnSide.ts';
import { landerStance } from '../../../engine/statics/index.ts';
import { findLander } from '../../../levels/index.ts';
import { plainTank } from '../../support/plainTank.ts';

const upright = findLander('steeple')!;

/** Without the legs' own mass, which lying down replaces. */
function bodyOf(lander: Lander): Lander {
  return { ...lander, parts: lander.parts.filter(({ kind }) => kind !== 'gear') };
}

/** Height of the center of all liquid. */
function liquid(lander: Lander): number {
  return massProperties({ ...lander, parts: [] }).center[2];
}

/** Crush force of all legs together. */
function total(lander: Lander): number {
  return lander.legs.reduce((sum, leg) => sum + (leg.stages.at(-1)?.force ?? 0), 0);
}

describe('a lander laid on its side', () => {
  const full = {
    ...upright,
    tanks: [plainTank({ fill: 1, bottomHeight: 3 }), plainTank({ fill: 0, bottomHeight: 6 })],
  };

  it('[SU5] keeps the mass of its body and turns its inertias with it', () => {
    const before = massProperties(bodyOf(full));
    const after = massProperties(bodyOf(layOnSide(full)));
    expect(after.mass).toBeCloseTo(before.mass, 8);
    const pairs = [
      [after.inertia.xx, before.inertia.xx],
      [after.inertia.yy, before.inertia.zz],
      [after.inertia.zz, before.inertia.yy],
      [after.inertia.xy, before.inertia.xz],
      [after.inertia.xz, -before.inertia.xy],
      [after.inertia.yz, -before.inertia.yz],
    ] as const;
    for (const [now, then] of pairs) expect(Math.abs(now - then)).toBeLessThan(1e-9 * before.inertia.xx);
    expect(after.center[1]).toBeCloseTo(before.center[2], 10);
    expect(after.center[0]).toBeCloseTo(before.center[0], 10);
  });

  it('[SU5] lets the liquid of a part-filled tank settle along the wall', () => {
    const half = {
      ...upright,
      tanks: [plainTank({ fill: 0.5, radius: 1, length: 2, bottomHeight: 3, density: 4000 })],
    };
    const { clearance } = suggestSideLegs(half);
    const axis = clearance + Math.max(...half.hull.map((point) => point[1]));
    expect(liquid(layOnSide(half))).toBeCloseTo(axis - 4 / (3 * Math.PI), 10);
  });

  it('[SU5] carries the mass of each side leg half-way between its pad and its hip', () => {
    const lying = layOnSide(full);
    const lumps = lying.parts.filter(({ name }) => name.startsWith('side leg'));
    expect(lumps.length).toBe(lying.legs.length);
    lying.legs.forEach(({ footpad, hip }, leg) =>
      lumps[leg]!.center.forEach((at, i) => expect(at).toBeCloseTo((footpad[i]! + hip[i]!) / 2, 12)),
    );
  });

  it('[SU5] stands on its side legs with the belly at the clearance asked for', () => {
    const sideLegs = { ...suggestSideLegs(upright), clearance: 0.9, halfTrack: 2.5 };
    const lying = layOnSide(upright, sideLegs);
    expect(Math.min(...lying.hull.map((point) => point[2]))).toBeCloseTo(0.9, 12);
    expect(landerStance(lying).kind).toBe('stands');
    expect(new Set(lying.legs.map((leg) => Math.abs(leg.footpad[0])))).toEqual(new Set([2.5]));
    expect(lying.legs).toHaveLength(6);
  });

  it('[SU5] bears the same crush force with all its legs as it did upright', () => {
    const two = { ...suggestSideLegs(upright), stations: [3, 9] };
    expect(total(layOnSide(upright, two))).toBeCloseTo(total(upright), 6);
    expect(layOnSide(upright, two).legs).toHaveLength(4);
  });

  it('[SU5] turned over twice more comes back to where it was, body and hull', () => {
    // a quarter turn four times is none; heights differ by the clearances
    let body: Lander = { ...bodyOf(full), tanks: [] };
    for (let i = 0; i < 4; i++) {
      const { bottom, top } = hullExtent(body);
      body = bodyOf(layOnSide(body, { ...suggestSideLegs(body), stations: [bottom + 0.1, top - 0.1] }));
    }
    const [before, after] = [massProperties({ ...bodyOf(full), tanks: [] }), massProperties(body)];
    expect(after.inertia.xx / before.inertia.xx).toBeCloseTo(1, 12);
    expect(after.inertia.zz / before.inertia.zz).toBeCloseTo(1, 12);
    for (const [i, part] of bodyOf(full).parts.entries()) expect(body.parts[i]?.shape).toEqual(part.shape);
  });

  it('refuses side legs that could not be', () => {
    const good = suggestSideLegs(upright);
    for (const [bad, message] of [
      [{ stations: [3] }, /two stations/],
      [{ stations: [3, 3] }, /two stations/],
      [{ stations: [3, 40] }, /along the hull/],
      [{ halfTrack: 0 }, /half track/],
      [{ clearance: -1 }, /clearance/],
      [{ hipHeight: Number.NaN }, /hip height/],
    ] as const)
      expect(() => layOnSide(upright, { ...good, ...bad })).toThrow(message);
    expect(() => layOnSide({ ...upright, hull: [] })).toThrow(/hull points/);
  });
});
