import { POSITION_ITERATIONS, VELOCITY_ITERATIONS } from '../../engine/world/constants.ts';
import { Chain, createWorld, Polygon, type Body, type World } from '../../engine/world/planckWorld.ts';
import type { BlockSize, TippingBlock } from './tippingBlock.ts';

/** A bare homogeneous block on level ground in the engine's rigid-body world, which may be stepped at any rate. */
export function planckBlock({ b, h }: BlockSize, gravity: number, stepRate: number): TippingBlock {
  // high enough that nothing slides
  const surface = { friction: 2, restitution: 0 };
  const world = createWorld(gravity);
  const ground = world.createBody();
  const ends = [
    { x: -200, y: 0 },
    { x: 200, y: 0 },
  ];
  ground.createFixture({ shape: new Chain(ends, false), density: 0, ...surface });
  const body = world.createBody({ type: 'dynamic', allowSleep: false });
  const corners = [
    { x: -b, y: -h },
    { x: b, y: -h },
    { x: b, y: h },
    { x: -b, y: h },
  ];
  body.createFixture({ shape: new Polygon(corners), density: 1, ...surface });
  body.setTransform({ x: 0, y: h + 0.015 }, 0);
  const block = wrap(world, body, stepRate);
  for (let i = 0; i < stepRate; i++) block.step();
  return block;
}

function wrap(world: World, body: Body, stepRate: number): TippingBlock {
  return {
    step: () => world.step(1 / stepRate, VELOCITY_ITERATIONS, POSITION_ITERATIONS),
    angle: () => body.getAngle(),
    rate: () => body.getAngularVelocity(),
    move: (vx, vy, rate) => {
      body.setLinearVelocity({ x: vx, y: vy });
      body.setAngularVelocity(rate);
    },
  };
}
