import { describe, expect, it } from 'vitest';
import { createDescent, readDescent, stepDescent } from '../../../engine/world/index.ts';
import { MAX_SPEED } from '../../../engine/world/constants.ts';
import { Chain, CONTACT_SKIN, createWorld, Polygon, stepWorld } from '../../../engine/world/planckWorld.ts';
import { COAST, dropLander, evenGround, MOON } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';
// last: the engine must load it first
import { Rot, Settings } from 'planck';
import { cos, sin } from '../../../engine/math/index.ts';

describe('the rigid-body world', () => {
  it('[PL1] has its settings fixed for the whole process', () => {
    expect(Object.isFrozen(Settings)).toBe(true);
    expect(() => {
      Settings.velocityThreshold = 1;
    }).toThrow(TypeError);
    expect(Settings.velocityThreshold).toBe(0.05);
  });

  it('[PL1] never sleeps: a block a hundredth of a radian past its balance point falls at Moon gravity', () => {
    const world = createWorld(1.62);
    const surface = { friction: 2, restitution: 0 };
    const ends = [
      { x: -50, y: 0 },
      { x: 50, y: 0 },
    ];
    world.createBody().createFixture({ shape: new Chain(ends, false), density: 0, ...surface });
    const body = world.createBody({ type: 'dynamic' });
    const corners = [
      { x: -2, y: -3 },
      { x: 2, y: -3 },
      { x: 2, y: 3 },
      { x: -2, y: 3 },
    ];
    body.createFixture({ shape: new Polygon(corners), density: 1, ...surface });
    // standing on its lower right corner, past balance by 0.005 rad
    const angle = -(Math.atan(2 / 3) + 0.005);
    const height = 3 * Math.cos(angle) - 2 * Math.sin(angle) + CONTACT_SKIN;
    body.setTransform({ x: 0, y: height }, angle);
    for (let i = 0; i < 20 * 240; i++) stepWorld(world);
    expect(body.getAngle()).toBeLessThan(-1.4);
  });

  it('[PL1] refuses a speed that the library would have cut, in words', () => {
    const world = createWorld();
    const body = world.createBody({ type: 'dynamic', linearVelocity: { x: 0, y: MAX_SPEED * 0.999 } });
    body.createFixture({
      shape: new Polygon([
        { x: 0, y: 0 },
        { x: 1, y: 0 },
        { x: 0, y: 1 },
      ]),
      density: 1,
    });
    stepWorld(world);
    expect(body.getLinearVelocity().y).toBe(MAX_SPEED * 0.999);
    body.setLinearVelocity({ x: MAX_SPEED * 1.001, y: 0 });
    expect(() => stepWorld(world)).toThrow(/speed of at most 2000 m\/s/);
    body.setLinearVelocity({ x: Number.NaN, y: 0 });
    expect(() => stepWorld(world)).toThrow(/speed of at most/);
    body.setLinearVelocity({ x: 0, y: 0 });
    body.setAngularVelocity(1000);
    expect(() => stepWorld(world)).toThrow(/rate of at most 300 rad\/s/);
  });

  it('[PL2] computes with our own sine and cosine', () => {
    // some of these angles are off by a last bit in this platform's own functions
    for (let i = 0; i < 2000; i++) {
      const angle = i * 0.0031415;
      const rotation = new Rot(angle);
      expect(rotation.s).toBe(sin(angle));
      expect(rotation.c).toBe(cos(angle));
      expect(Math.sin(angle)).toBe(sin(angle));
    }
  });

  it('[PL3] lets a hull rest on the ground itself, not a skin above it', () => {
    // feet so high that the hull lands first: a box whose lowest points are at the footpad plane
    const box = [-1, 1].flatMap((x) => [-1, 1].flatMap((y) => [0.02, 3].map((z) => [x, y, z] as const)));
    const lander = plainLander({ hull: box, force: 10, stroke: 0.5, halfStance: 1.2 });
    const descent = dropLander({ lander, descentRate: 0.2 });
    for (let i = 0; i < 1200; i++) stepDescent(descent, COAST);
    expect(descent.outcome).toBeDefined();
    expect(descent.contact.hullDown).toBe(true);
    // the lowest hull points: 0.02 m above the footpad plane, 2 m below the center
    const lowest = readDescent(descent).y - 2 + 0.02;
    // what comes down softly stops anywhere within the slop of 5 mm; without the shift it would stand 15 to 20 mm up
    expect(lowest).toBeGreaterThan(-0.001);
    expect(lowest).toBeLessThan(0.0055);
  });

  it('[PL3] builds ground only where the lander may touch it', () => {
    const descent = createDescent({
      lander: plainLander(),
      gravity: MOON,
      terrain: evenGround(),
      start: { x: 0, y: 100, angle: 0, vx: 0, vy: 0, rate: 0 },
      propellant: 0,
    });
    expect(descent.hull.chunks.some(Boolean)).toBe(false);
    for (let i = 0; i < 800; i++) stepDescent(descent, COAST);
    const laid = descent.hull.chunks.filter(Boolean).length;
    expect(laid).toBeGreaterThan(0);
    expect(laid).toBeLessThanOrEqual(3);
    expect(descent.hull.chunks.length).toBeGreaterThan(10);
  });
});
