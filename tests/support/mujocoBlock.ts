import loadMujoco from 'mujoco-js';
import type { BlockSize, TippingBlock } from './tippingBlock.ts';

type Mujoco = Awaited<ReturnType<typeof loadMujoco>>;

/** Loads the general-purpose 3-D engine, with a folder in memory for its models. */
export async function loadMujocoEngine(): Promise<Mujoco> {
  const mujoco = await loadMujoco();
  mujoco.FS.mkdir('/models');
  mujoco.FS.mount(mujoco.MEMFS, { root: '.' }, '/models');
  return mujoco;
}

/** Half depth of the block across the section [m]. */
const DEPTH = 1.5;

/** Homogeneous block on a plane: stiff contacts, elliptic friction cones, a tight solver. */
function blockModel({ b, h }: BlockSize, gravity: number, stepRate: number): string {
  return `<mujoco>
  <option timestep="${1 / stepRate}" gravity="0 0 ${-gravity}" integrator="implicitfast" solver="Newton" cone="elliptic"
    iterations="100" tolerance="1e-10" impratio="10"/>
  <default><geom solref="0.01 1" solimp="0.99 0.999 0.001" friction="2 0.005 0.0001"/></default>
  <worldbody>
    <geom type="plane" size="50 50 1"/>
    <body pos="0 0 ${h}"><freejoint/><geom type="box" size="${b} ${DEPTH} ${h}" density="100"/></body>
  </worldbody>
</mujoco>`;
}

/** The same block in the 3-D engine, tipping toward +x about its y axis. */
export function mujocoBlock(mujoco: Mujoco, size: BlockSize, gravity: number, stepRate: number): TippingBlock {
  mujoco.FS.writeFile('/models/block.xml', blockModel(size, gravity, stepRate));
  const model = mujoco.MjModel.loadFromXML('/models/block.xml');
  const data = new mujoco.MjData(model);
  for (let i = 0; i < stepRate; i++) mujoco.mj_step(model, data);
  // the arrays are views of the engine's memory: look them up anew each time
  return {
    step: () => mujoco.mj_step(model, data),
    // quaternion w, x, y, z from qpos[3]; a turn about +y is clockwise in the section
    angle: () => -2 * Math.atan2(data.qpos[5], data.qpos[3]),
    rate: () => -data.qvel[4],
    move: (vx, vy, rate) => {
      data.qvel[0] = vx;
      data.qvel[2] = vy;
      data.qvel[4] = -rate;
      mujoco.mj_forward(model, data);
    },
  };
}
