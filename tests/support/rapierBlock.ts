import { ColliderDesc, init, RigidBodyDesc, World } from '@dimforge/rapier2d-compat';
import type { BlockSize, TippingBlock } from './tippingBlock.ts';

/** Loads the second general-purpose 2-D engine. */
export async function loadRapier(): Promise<void> {
  await init();
}

/** The same block on level ground in the second engine, default solver. */
export function rapierBlock({ b, h }: BlockSize, gravity: number, stepRate: number): TippingBlock {
  const world = new World({ x: 0, y: -gravity });
  world.timestep = 1 / stepRate;
  world.createCollider(ColliderDesc.cuboid(200, 1).setTranslation(0, -1).setFriction(2));
  const body = world.createRigidBody(RigidBodyDesc.dynamic().setTranslation(0, h).setCanSleep(false));
  world.createCollider(ColliderDesc.cuboid(b, h).setFriction(2).setRestitution(0), body);
  for (let i = 0; i < stepRate; i++) world.step();
  return {
    step: () => world.step(),
    angle: () => body.rotation(),
    rate: () => body.angvel(),
    move: (vx, vy, rate) => {
      body.setLinvel({ x: vx, y: vy }, true);
      body.setAngvel(rate, true);
    },
  };
}
