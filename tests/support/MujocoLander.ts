import type loadMujoco from 'mujoco-js';
import { addInertia, pointInertia } from '../../engine/lander/inertiaTensor.ts';
import { massProperties, type BodyPoint, type Lander } from '../../engine/lander/index.ts';
import type { Leg } from '../../engine/lander/lander.ts';
import { add3, scale3, subtract3 } from '../../engine/math/index.ts';
import { attitudeOf } from '../../engine/touchdown/attitude.ts';
import type { ContactState } from '../../engine/touchdown/index.ts';

type Mujoco = Awaited<ReturnType<typeof loadMujoco>>;

/** Where a lander of the other engine is set down. The plane falls toward +x. */
interface LandingScene {
  readonly gravity: number;
  readonly slope: number;
  readonly friction: number;
  readonly step: number;
}

/** On either side of the spring of a leg, taken off the body so that the whole stays what it is [kg]. Lighter ones creep more. */
const FOOT_MASS = 15;
/** Spheres; they roll, so small ones [m]. */
const FOOT_RADIUS = 0.02;
/** A leg this strong never gives [N]. */
const RIGID = 1e12;
/** Share of critical damping of a leg, as here [-]. */
const DAMPING = 0.2;
/** Leans like this have fallen [rad]. */
const FALLEN = 0.8;

/**
 * A lander on crushing legs in the general-purpose 3-D engine: one rigid body and, along each strut, a joint that slides against dry friction as
 * large as the crush force (set anew where a stage is used up) as far as its stroke, then the spring and dashpot of the leg, then a small
 * sphere as foot. Dry friction, stops and contacts are constraints solved together. Secondary struts, bottomed legs' own stiffness and hull are left out.
 */
export class MujocoLander {
  private readonly mujoco: Mujoco;
  private readonly lander: Lander;
  private readonly scene: LandingScene;
  private readonly model: InstanceType<Mujoco['MjModel']>;
  private readonly data: InstanceType<Mujoco['MjData']>;
  private readonly crushing: boolean;

  constructor(mujoco: Mujoco, lander: Lander, scene: LandingScene) {
    this.mujoco = mujoco;
    this.lander = lander;
    this.scene = scene;
    this.crushing = !lander.legs.some(isRigid);
    mujoco.FS.writeFile('/models/lander.xml', landerModel(lander, scene));
    this.model = mujoco.MjModel.loadFromXML('/models/lander.xml');
    this.data = new mujoco.MjData(this.model);
  }

  /** Puts the lander just above the ground, its legs as new, and gives it the motion of an arrival. */
  arrive(state: ContactState): void {
    const { mujoco, model, data, scene } = this;
    mujoco.mj_resetData(model, data);
    const attitude = attitudeOf(state.yaw ?? 0, state.pitch ?? 0, state.roll ?? 0);
    data.qpos[2] = 100;
    attitude.forEach((value, i) => (data.qpos[3 + i] = value));
    mujoco.mj_forward(model, data);
    const [sine, cosine] = [Math.sin(scene.slope), Math.cos(scene.slope)];
    // geom 0 is the ground, the others the feet
    const depths = this.lander.legs.map((_, i) => {
      const at = 3 * (i + 1);
      return (FOOT_RADIUS - sine * data.geom_xpos[at] - cosine * data.geom_xpos[at + 2]) / cosine;
    });
    data.qpos[2] = 100 + Math.max(...depths);
    const azimuth = state.travelAzimuth ?? 0;
    data.qvel[0] = state.horizontalSpeed * Math.cos(azimuth);
    data.qvel[1] = state.horizontalSpeed * Math.sin(azimuth);
    data.qvel[2] = -state.descentRate;
    mujoco.mj_forward(model, data);
  }

  step(): void {
    const { mujoco, model, data, lander } = this;
    if (this.crushing) {
      lander.legs.forEach((leg, i) => {
        model.dof_frictionloss[6 + 2 * i] = crushForce(leg, data.qpos[7 + 2 * i]);
      });
    }
    mujoco.mj_step(model, data);
  }

  /** Permanent shortening of each leg [m]. */
  strokes(): readonly number[] {
    return this.lander.legs.map((_, i) => (this.crushing ? this.data.qpos[7 + 2 * i] : 0));
  }

  /** Lean of the long axis from the vertical [rad]. */
  lean(): number {
    const { qpos } = this.data;
    const [x, y] = [qpos[4] as number, qpos[5] as number];
    return Math.acos(Math.max(-1, 1 - 2 * (x * x + y * y)));
  }

  /** An arrival run for so long, or until the lander has fallen. */
  tips(state: ContactState, seconds: number): boolean {
    this.arrive(state);
    for (let i = 0; i < seconds / this.scene.step; i++) {
      this.step();
      if (this.lean() > FALLEN) return true;
    }
    return false;
  }

  delete(): void {
    this.data.delete();
    this.model.delete();
  }
}

/** Mass, center of mass from that of the whole, and inertia about its own of the body that is left when the feet that slide are set apart. */
function withoutFeet(lander: Lander): { mass: number; at: BodyPoint; inertia: readonly number[] } {
  const whole = massProperties(lander);
  const sliding = lander.legs.filter((leg) => !isRigid(leg));
  const mass = whole.mass - sliding.length * 2 * FOOT_MASS;
  let { inertia } = whole;
  let at: BodyPoint = [0, 0, 0];
  for (const { footpad } of sliding) {
    const arm = subtract3(add3(footpad, [0, 0, FOOT_RADIUS]), whole.center);
    inertia = addInertia(inertia, pointInertia(-2 * FOOT_MASS, arm));
    at = add3(at, scale3(arm, (-2 * FOOT_MASS) / mass));
  }
  inertia = addInertia(inertia, pointInertia(-mass, at));
  const { xx, yy, zz, xy, xz, yz } = inertia;
  return { mass, at, inertia: [xx, yy, zz, xy, xz, yz] };
}

/** Of the stage that a leg is in after a stroke [m]; past the last one, of that [N]. */
function crushForce({ stages }: Leg, stroke: number): number {
  let left = stroke;
  for (const stage of stages) {
    if (left < stage.stroke) return stage.force;
    left -= stage.stroke;
  }
  return stages.at(-1)?.force ?? RIGID;
}

/** True for a leg too strong to give: its foot is a part of the body. */
function isRigid({ stages }: Leg): boolean {
  return (stages[0]?.force ?? Infinity) >= RIGID;
}

function landerModel(lander: Lander, { gravity, slope, friction, step }: LandingScene): string {
  const { center } = massProperties(lander);
  const rest = withoutFeet(lander);
  const feet = lander.legs.map((leg) => {
    const { footpad, hip, stages } = leg;
    const pad = footpad.map((value, i) => value - center[i]! + (i === 2 ? FOOT_RADIUS : 0)).join(' ');
    const geom = `<geom type="sphere" size="${FOOT_RADIUS}"`;
    if (isRigid(leg)) return `${geom} mass="0" pos="${pad}"/>`;
    const strut = hip.map((value, i) => value - footpad[i]!).join(' ');
    const stroke = stages.reduce((sum, stage) => sum + stage.stroke, 0);
    const share = massProperties(lander).mass / lander.legs.length;
    const damping = 2 * DAMPING * Math.sqrt(leg.stiffness * share);
    return `<body pos="${pad}"><inertial pos="0 0 0" mass="${FOOT_MASS}" diaginertia="1e-3 1e-3 1e-3"/>
      <joint type="slide" axis="${strut}" frictionloss="${stages[0]!.force}" limited="true" range="-1 ${stroke}"/>
      <body><joint type="slide" axis="${strut}" stiffness="${leg.stiffness}" damping="${damping}"/>${geom} mass="${FOOT_MASS}"/></body></body>`;
  });
  const firm = '0.99 0.999 0.001';
  return `<mujoco>
  <compiler angle="radian"/>
  <option timestep="${step}" gravity="0 0 ${-gravity}" integrator="implicitfast"
    solver="Newton" cone="elliptic" iterations="100" tolerance="1e-10" impratio="10"/>
  <default>
    <geom solref="0.01 1" solimp="${firm}" friction="${friction} 0.005 0.0001" condim="3"/>
    <joint solreffriction="${2 * step} 1" solimpfriction="0.9999 0.9999 0.001" solreflimit="0.01 1" solimplimit="${firm}"/>
  </default>
  <worldbody>
    <geom type="plane" size="500 500 1" euler="0 ${slope} 0"/>
    <body><freejoint/>
      <inertial pos="${rest.at.join(' ')}" mass="${rest.mass}" fullinertia="${rest.inertia.join(' ')}"/>${feet.join('')}
    </body>
  </worldbody>
</mujoco>`;
}
