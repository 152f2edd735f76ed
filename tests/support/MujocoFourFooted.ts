import type loadMujoco from 'mujoco-js';

type Mujoco = Awaited<ReturnType<typeof loadMujoco>>;

/** A rigid body on four spherical feet at (+-halfStance, +-halfStance), all frictions and contacts alike. */
export interface FourFooted {
  readonly mass: number;
  /** Principal, about the center of mass [kg·m²]. */
  readonly inertia: readonly [number, number, number];
  readonly halfStance: number;
  /** Above the soles [m]. */
  readonly centerHeight: number;
  readonly footRadius: number;
  readonly friction: number;
  readonly gravity: number;
  /** Slope of the ground, falling toward +x [rad]; the ground stays level and gravity turns. */
  readonly slope: number;
  readonly step: number;
  /** Time constant of the contact [s] and share of critical damping [-]. */
  readonly contact?: readonly [number, number];
}

/** Start or state of the body: velocity of the center of mass and rate of turn about +y, ground frame. */
export interface BodyMotion {
  readonly vx: number;
  readonly vy?: number;
  readonly vz: number;
  readonly rate: number;
}

/** A body that leans this far has fallen: twice the balance angle of what is compared here [rad]. */
const FALLEN = 1.3;

function model(body: FourFooted): string {
  const { mass, inertia, halfStance: b, centerHeight: h, footRadius: r, friction, gravity, slope, step } = body;
  const [constant, damping] = body.contact ?? [0.01, 1];
  const feet = [
    [b, b],
    [-b, b],
    [-b, -b],
    [b, -b],
  ].map(([x, y]) => `<geom type="sphere" size="${r}" pos="${x} ${y} ${r - h}" mass="0"/>`);
  return `<mujoco>
  <option timestep="${step}" gravity="${gravity * Math.sin(slope)} 0 ${-gravity * Math.cos(slope)}" integrator="implicitfast"
    solver="Newton" cone="elliptic" iterations="100" tolerance="1e-10" impratio="10"/>
  <default><geom solref="${constant} ${damping}" solimp="0.99 0.999 0.001" friction="${friction} 0.005 0.0001" condim="3"/></default>
  <worldbody>
    <geom type="plane" size="500 500 1"/>
    <body pos="0 0 ${h}"><freejoint/>
      <inertial pos="0 0 0" mass="${mass}" diaginertia="${inertia.join(' ')}"/>${feet.join('')}
    </body>
  </worldbody>
</mujoco>`;
}

/** The body in the general-purpose 3-D engine. Its arrays are views of the engine's memory: looked up anew each time. */
export class MujocoFourFooted {
  private readonly mujoco: Mujoco;
  private readonly body: FourFooted;
  private readonly model: InstanceType<Mujoco['MjModel']>;
  private readonly data: InstanceType<Mujoco['MjData']>;
  private readonly settled: readonly number[];

  constructor(mujoco: Mujoco, body: FourFooted) {
    this.mujoco = mujoco;
    this.body = body;
    mujoco.FS.writeFile('/models/fourFooted.xml', model(body));
    this.model = mujoco.MjModel.loadFromXML('/models/fourFooted.xml');
    this.data = new mujoco.MjData(this.model);
    for (let i = 0; i < 2 / body.step; i++) mujoco.mj_step(this.model, this.data);
    this.settled = Array.from({ length: 7 }, (_, i) => this.data.qpos[i] as number);
  }

  /** Puts the body back where it stood at rest, `lift` higher, and gives it a motion. */
  start(motion: BodyMotion, lift = 0): void {
    const { mujoco, model, data } = this;
    mujoco.mj_resetData(model, data);
    this.settled.forEach((value, i) => {
      data.qpos[i] = i === 2 ? value + lift : value;
    });
    data.qvel[0] = motion.vx;
    data.qvel[1] = motion.vy ?? 0;
    data.qvel[2] = motion.vz;
    data.qvel[4] = motion.rate;
    mujoco.mj_forward(model, data);
  }

  step(): void {
    this.mujoco.mj_step(this.model, this.data);
  }

  /** Turn of the long axis from the normal of the ground [rad]. */
  lean(): number {
    const { qpos } = this.data;
    const [x, y] = [qpos[4] as number, qpos[5] as number];
    return Math.acos(Math.max(-1, 1 - 2 * (x * x + y * y)));
  }

  /** True when the body falls over, false once it has stood still for half a second. */
  falls(motion: BodyMotion, seconds = 60): boolean {
    const { step } = this.body;
    this.start(motion);
    let quiet = 0;
    for (let i = 0; i < seconds / step; i++) {
      this.step();
      const lean = this.lean();
      if (lean > FALLEN) return true;
      let square = 0;
      for (let k = 0; k < 6; k++) square += (this.data.qvel[k] as number) ** 2;
      quiet = lean < 0.02 && square < 4e-4 ? quiet + 1 : 0;
      if (quiet > 0.5 / step) return false;
    }
    return false;
  }

  delete(): void {
    this.data.delete();
    this.model.delete();
  }
}
