import { drainTanks, massProperties, massRange, tankLiquid, type Lander, type Tank } from '../lander/index.ts';
import {
  AT_REST,
  BAFFLED_DAMPING,
  lateralMode,
  riseAtWall,
  stepSwing,
  swingSize,
  type FeltMotion,
  type Swing,
} from '../slosh/index.ts';
import { TICK_DT, TICK_RATE } from '../world/constants.ts';
import type { DescentState } from '../world/descent.ts';
import type { Run } from './table.ts';

/** How the liquid swings, by what is felt of the motion. Shown, not felt: in the played world it stands still. */

/** For Propellant, of the tank whose liquid moves most. */
export interface SwingReading {
  /** Inner radius [m]. */
  readonly radius: number;
  /** By how much its surface stands higher at the right wall than level, now [m]. */
  readonly now: number;
  /** How far the surface goes up at the wall if it is left alone, and comes down [m]. */
  readonly rise: number;
  /** Of one swing there and back [s]. */
  readonly period: number;
  /** How far all of it can carry the lander's center of mass to a side [m]. */
  readonly shift: number;
}

/** Tanks that are alike swing alike: one pendulum for all of them. */
interface TankKind {
  readonly radius: number;
  /** Place of one of them among the tanks of the lander, and how many tanks of the lander swing like it. */
  readonly tank: number;
  readonly tanks: readonly number[];
  length: number;
  hingeAbove: number;
  /** Mass that swings times its length, of all of them [kg·m]. */
  moment: number;
  swing: Swing;
}

/** What is followed from tick to tick; nothing that is played depends on it. */
export interface TankSwing {
  readonly lander: Lander;
  readonly kinds: readonly TankKind[];
  mass: number;
  /** Of the body, at the last tick [rad/s]. */
  rate: number | undefined;
  felt: FeltMotion | undefined;
}

/** Pushed less than this, the liquid leaves the bottom, and the model says nothing [m/s²]. */
const LEAST_PUSH = 0.1;
/** Tanks drain slowly: what they hold is worked out anew so often [tick]. */
const WEIGHED_EVERY = TICK_RATE;

/** Undefined where no tank stands upright: the swing of a lying one is not modeled. */
export function createTankSwing(lander: Lander): TankSwing | undefined {
  const upright = lander.tanks.flatMap((tank, at) => (tank.orientation === 'upright' && tank.fill > 0 ? [at] : []));
  const kinds: TankKind[] = [];
  for (const at of upright) {
    if (kinds.some(({ tanks }) => tanks.includes(at))) continue;
    const tanks = upright.filter((other) => areAlike(lander.tanks[at]!, lander.tanks[other]!));
    const { radius } = lander.tanks[at]!;
    kinds.push({ radius, tank: at, tanks, length: 0, hingeAbove: 0, moment: 0, swing: AT_REST });
  }
  return kinds.length === 0 ? undefined : { lander, kinds, mass: 0, rate: undefined, felt: undefined };
}

function areAlike(one: Tank, other: Tank): boolean {
  return (
    one.radius === other.radius &&
    one.fill === other.fill &&
    one.length === other.length &&
    one.bottomHeight === other.bottomHeight
  );
}

/** One tick. On the ground, without a figure of the motion, and while nothing pushes, there is no swing to tell: it begins anew, at rest. */
export function followSwing(run: Run, known: DescentState): void {
  const { swing } = run;
  if (swing === undefined) return;
  const motion = known.phase === 'contact' ? undefined : feltMotion(run, known);
  const before = swing.rate;
  swing.rate = motion?.rate;
  if (motion === undefined || motion.along < LEAST_PUSH) {
    swing.felt = undefined;
    for (const kind of swing.kinds) kind.swing = AT_REST;
    return;
  }
  if (swing.felt === undefined || known.tick % WEIGHED_EVERY === 0) weigh(swing, known.mass);
  const felt = { across: motion.across, along: motion.along, rateChange: motion.rate - (before ?? motion.rate) };
  swing.felt = felt;
  for (const kind of swing.kinds)
    kind.swing = stepSwing(kind.swing, { ...kind, damping: BAFFLED_DAMPING }, felt, TICK_DT);
}

/** Undefined where there is no figure. */
export function readSwing({ swing }: Run): SwingReading | undefined {
  if (swing?.felt === undefined) return undefined;
  const { felt, kinds, mass } = swing;
  const sizes = kinds.map((kind) => swingSize(kind.swing, kind.length, felt));
  const moved = kinds.map(({ moment }, at) => moment * (sizes[at] ?? 0));
  const most = kinds.reduce((best, kind) => (kind.moment > best.moment ? kind : best), kinds[0]!);
  return {
    radius: most.radius,
    now: riseAtWall(most.radius, most.swing.angle),
    rise: riseAtWall(most.radius, sizes[kinds.indexOf(most)] ?? 0),
    period: 2 * Math.PI * Math.sqrt(most.length / felt.along),
    shift: moved.reduce((sum, one) => sum + one, 0) / mass,
  };
}

/** What the tanks hold at this mass: the gauge may be off by more than there is room for. */
function weigh(swing: TankSwing, mass: number): void {
  const { empty, full } = massRange(swing.lander);
  const least = empty + LEAST_SHARE * (full - empty);
  const drained = drainTanks(swing.lander, Math.max(least, Math.min(full, mass)));
  const { mass: whole, center } = massProperties(drained);
  swing.mass = whole;
  for (const kind of swing.kinds) {
    const tank = drained.tanks[kind.tank]!;
    const mode = lateralMode({ radius: tank.radius, depth: tank.fill * tank.length }, 1);
    kind.length = mode.pendulumLength;
    kind.hingeAbove = tank.bottomHeight + mode.hingeHeight - center[2];
    const liquid = kind.tanks.reduce((sum, at) => sum + tankLiquid(drained.tanks[at]!).mass, 0);
    kind.moment = mode.massRatio * liquid * mode.pendulumLength;
  }
}

/** Tanks are never taken for quite empty: a film has no mode [-]. */
const LEAST_SHARE = 1e-3;

/** By the inertial unit, or as it is where everything is true. */
function feltMotion(
  { instruments, believed }: Run,
  { thrust, mass, rate }: DescentState,
): { readonly across: number; readonly along: number; readonly rate: number } | undefined {
  if (instruments === undefined || believed === undefined) return { across: 0, along: thrust / mass, rate };
  const { arrivedTick, values } = instruments.readings.inertialUnit;
  const { state } = believed.sources.inertialUnit;
  const [across, along, turning] = arrivedTick < 0 || state === 'no data' || state === 'failed' ? [] : values;
  if (across === undefined || along === undefined || turning === undefined) return undefined;
  return { across, along, rate: turning };
}
