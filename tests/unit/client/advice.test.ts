import { describe, expect, it } from 'vitest';
import { adviseFlying, adviseWaiting } from '../../../client/panels/advice.ts';
import type { HeldControls, TableView } from '../../../engine/table/index.ts';
import { BOTH, HOVER, viewOf } from '../../support/flightView.ts';

function keyFor(view: TableView, holds: HeldControls = BOTH): string {
  return adviseFlying(view, HOVER, holds).key;
}

describe('whoever holds no controls', () => {
  it('is told what is waited for while it settles, and by what that is known; nothing before', () => {
    const settling = viewOf({ height: 0, phase: 'settling' });
    expect(adviseWaiting(viewOf({ height: 0, phase: 'contact' }))).toBeUndefined();
    expect(adviseWaiting(settling)?.words).toMatch(/^It is down and settles\. The card comes/);
    expect(adviseWaiting({ ...settling, drawnIn: 'pencil' })?.words).toMatch(/^By the instruments it is down/);
    expect(adviseWaiting(viewOf({ height: 0, phase: 'settling', angle: 1.5 }))?.key).toBe('fallen');
  });
});

describe('the coach', () => {
  it('asks for thrust first when the lander falls with the engine off', () => {
    expect(keyFor(viewOf({ vy: -6, vx: 2 }, { thrustPercent: 0 }))).toBe('fall');
  });

  it('asks to slow a descent that is too fast for its height', () => {
    expect(keyFor(viewOf({ vy: -6 }, { thrustPercent: 50 }))).toBe('slow');
  });

  it('asks to lean left against a drift to the right, and right against one to the left', () => {
    expect(keyFor(viewOf({ vx: 1.2 }))).toBe('driftRight');
    expect(keyFor(viewOf({ vx: -1.2 }))).toBe('driftLeft');
  });

  it('asks to stand upright once the lean has nearly taken the drift', () => {
    expect(keyFor(viewOf({ vx: 0.2, angle: 0.15 }))).toBe('straighten');
  });

  it('asks for more lean when the one there is will not do before the ground', () => {
    expect(keyFor(viewOf({ vx: 2.5, angle: 0.04 }))).toBe('driftRight');
    expect(keyFor(viewOf({ vx: 0.9, angle: 0.15 }))).toBe('steady');
  });

  it('says ready just above the ground and engine off at contact', () => {
    expect(keyFor(viewOf({ height: 0.3, vy: -1 }))).toBe('engineOff');
    const touchdown = { tick: 600, x: 0, vx: 0, descentRate: 1, angle: 0, rate: 0, slope: 0, mass: 2000 };
    const contact = viewOf({ height: 0, phase: 'contact', touchdown: { ...touchdown, firstFoot: 'both' } });
    expect(keyFor(contact)).toBe('contact');
  });

  it('says that the tanks are dry before all else in flight, and not once the legs have the load', () => {
    expect(keyFor(viewOf({ propellant: 0, vy: -6, vx: 2 }))).toBe('dry');
    expect(keyFor(viewOf({ propellant: 0.01, vy: -6, vx: 2 }))).not.toBe('dry');
    expect(keyFor(viewOf({ propellant: 0, phase: 'settling' }))).toBe('settle');
  });

  it('asks for no more thrust than there is: it is stood upright first', () => {
    const falling = viewOf({ vy: -6, angle: 1.4 }, { thrustPercent: 50 });
    expect(adviseFlying(falling, 169, BOTH).key).toBe('leaning');
    const words = adviseFlying(falling, 169, { thrust: true, tilt: false }).words;
    expect(words).not.toMatch(/%|More thrust/);
  });

  it('says nothing about a control that someone else holds', () => {
    const falling = viewOf({ vy: -6, vx: 1.2 }, { thrustPercent: 50 });
    expect(keyFor(falling, { thrust: false, tilt: true })).toBe('driftRight');
    expect(keyFor(falling, { thrust: true, tilt: false })).toBe('slow');
  });
});
