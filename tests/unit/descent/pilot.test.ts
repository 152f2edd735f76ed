import { describe, expect, it } from 'vitest';
import { HASTY, pilot, STEADY, type PilotManner } from '../../../engine/descent/index.ts';
import { parseControlInput } from '../../../engine/input/index.ts';
import { createDescent, readDescent, stepDescent, type DescentState } from '../../../engine/world/index.ts';
import { firstLanding } from '../../../levels/index.ts';

const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

function fly(seed: number, manner: PilotManner, watch: (state: DescentState) => void = () => {}): DescentState {
  const { setup } = firstLanding(seed);
  const craft = { engine: setup.lander.engine, gravity: setup.gravity };
  const descent = createDescent(setup);
  while (descent.outcome === undefined) {
    const state = readDescent(descent);
    watch(state);
    stepDescent(descent, pilot(manner, craft, state));
  }
  return readDescent(descent);
}

describe('the steady pilot', () => {
  it.each(SEEDS)('[DE1] lands Trivet gently on Saddler’s Bench, seed %d', (seed) => {
    const { outcome, contacts, propellant, tick } = fly(seed, STEADY);
    // the contact that it flew to; what bounces after it on crushing legs is not its doing
    const [touchdown] = contacts;
    expect(outcome).toBe('upright');
    expect(Math.abs(touchdown?.vx ?? Infinity)).toBeLessThan(0.6);
    expect(touchdown?.descentRate).toBeLessThan(1.6);
    expect(propellant).toBeGreaterThan(60);
    expect(tick / 60).toBeGreaterThan(25);
    expect(tick / 60).toBeLessThan(50);
  });

  it('[DE1] gives inputs that the parser takes, and the same for the same state', () => {
    const { setup } = firstLanding(3);
    const craft = { engine: setup.lander.engine, gravity: setup.gravity };
    fly(3, STEADY, (state) => {
      const input = pilot(STEADY, craft, state);
      expect(parseControlInput(input)).toEqual({ ok: true, value: input });
      expect(pilot(STEADY, craft, structuredClone(state))).toEqual(input);
    });
  });

  it('[DE1] leaves the engine off from the first contact on', () => {
    let seen = 0;
    const { setup } = firstLanding(1);
    const craft = { engine: setup.lander.engine, gravity: setup.gravity };
    fly(1, STEADY, (state) => {
      if (state.touchdown === undefined) return;
      seen++;
      expect(pilot(STEADY, craft, state)).toEqual({ thrustPercent: 0, tiltDeg: 0 });
    });
    expect(seen).toBeGreaterThan(10);
  });
});

describe('the hasty pilot', () => {
  it('[DE2] arrives sideways beyond the limit on every seed, and mostly tips', () => {
    const finals = SEEDS.map((seed) => fly(seed, HASTY));
    for (const { outcome } of finals) expect(outcome).not.toBe('upright');
    expect(finals.filter(({ outcome }) => outcome?.startsWith('tipped')).length).toBeGreaterThan(6);
  });
});
