import type { Leg, Lander } from '../lander/lander.ts';
import { cos, sin } from '../math/trig.ts';
import {
  bekkerSinkage,
  prepareTouchdown,
  runTouchdown,
  type ContactState,
  type Ground,
  type TouchdownKernel,
  type TouchdownOptions,
  type TouchdownResult,
} from '../touchdown/index.ts';
import { assert } from '../assert.ts';
import type { GravityOf, OutsideCheck } from './outsideCheck.ts';
import { AT_LEAST, AT_MOST, EQUALS_PRINTED } from './tolerances.ts';

const ENERGY = 'energy: m v^2 / 2 + m g s = n F s; worked out beside the check';
const COULOMB = 'Coulomb friction on an inclined plane: g (sin - mu cos); textbook';
const HOUSNER = 'Housner 1963, Bull. Seism. Soc. Am. 53(2) [Housner1963]';
const ROGERS = 'NASA TN D-6850, Rogers 1972 [Rogers1972]';
const MODEL_TESTS = 'NASA Langley 1/6-scale landing tests, NTRS 20070030982 [NTRS20070030982]';

const FOOTPADS = 'NASA SP-214, 1969, sinkage of footpads [SP214]; soil constants after Lunar Sourcebook 1991 [LSB1991]';

const DERIVED = { kind: 'derived', seen: true } as const;
const DEGREE = Math.PI / 180;
/** Stiff, over-damped legs stand in for a rigid body with plastic impacts: this near to it they have to come [-]. */
const STAND_IN = '0.005';

export const TOUCHDOWN_CHECKS: readonly OutsideCheck[] = [
  drop(4, '0.117261'),
  drop(2, '0.244888'),
  drop(1, '0.537263'),
  {
    ...DERIVED,
    ...EQUALS_PRINTED,
    name: 'speed at contact after the probe has touched',
    source: 'uniform acceleration; textbook',
    expected: '2.523',
    unit: 'm/s',
    note: '67 in of fall from 3 ft/s on the Moon, simulated to first contact',
    compute: fallAfterProbe,
  },
  stick('moon'),
  slide('moon', '0.24481'),
  slide('earth', '1.4781'),
  peak(1, 0.5506),
  peak(2, 0.4199),
  trip(0, 1.774),
  trip(8, 1.3984),
  {
    ...AT_LEAST,
    name: 'sinkage of a footpad in lunar soil, against the least observed',
    source: FOOTPADS,
    kind: 'measurement',
    seen: false,
    expected: '0.025',
    unit: 'm',
    note: '20.0 kN on 0.6875 m^2; k_c 1.4 kN/m^2, k_phi 820 kN/m^3, n 1, for which the Lunar Sourcebook gives some 35 mm',
    compute: lunarSinkage,
  },
  {
    ...AT_MOST,
    name: 'sinkage of a footpad in lunar soil, against the most observed',
    source: FOOTPADS,
    kind: 'measurement',
    seen: false,
    expected: '0.076',
    unit: 'm',
    compute: lunarSinkage,
  },
  {
    ...AT_LEAST,
    name: 'friction trend: share of yaws that stay up at friction 0.4',
    source: MODEL_TESTS,
    kind: 'trend',
    seen: false,
    expected: '1',
    unit: '-',
    note: '12 deg, 2.13 m/s down, 3 m/s along: no overturn at 0.4',
    compute: (gravityOf) => shareUp(gravityOf, { legCount: 4, friction: 0.4, horizontalSpeed: 3 }),
  },
  {
    ...AT_MOST,
    name: 'friction trend: share of yaws that stay up at friction 1',
    source: MODEL_TESTS,
    kind: 'trend',
    seen: false,
    expected: '0.95',
    unit: '-',
    note: 'the same arrival: some overturn at 0.7 to 1.0',
    compute: (gravityOf) => shareUp(gravityOf, { legCount: 4, friction: 1, horizontalSpeed: 3 }),
  },
  {
    ...AT_LEAST,
    name: 'five legs against four: ratio of the least speeds that tip at any yaw',
    source: MODEL_TESTS,
    kind: 'trend',
    seen: false,
    expected: '1',
    unit: '-',
    note: 'equal radius, friction 1, 12 deg, 2.13 m/s down',
    compute: (gravityOf) => leastTipping(gravityOf, 5) / leastTipping(gravityOf, 4),
  },
  {
    ...AT_LEAST,
    name: 'design corners of lunar-module-class gear: share of yaws and leans that stay up',
    source: ROGERS,
    kind: 'trend',
    seen: false,
    expected: '0.95',
    unit: '-',
    note: '3.05 m/s down; 2.13 down and 1.22 along; 6 deg lean, 12 deg slope; nearly all stay up, 0.95 is our reading of it',
    compute: designCorners,
  },
];

function lunarSinkage(): number {
  const soil = { cohesive: 1400, frictional: 820_000, exponent: 1 };
  return bekkerSinkage(20_000, 2 * Math.sqrt(0.6875 / Math.PI), soil);
}

interface Gear {
  readonly mass: number;
  readonly inertia: readonly [number, number, number];
  readonly centerHeight: number;
  readonly legCount: number;
  readonly radius: number;
  readonly firstAzimuth?: number;
  readonly stages: Leg['stages'];
  readonly stiffness: number;
  readonly hipInset?: number;
  readonly secondary?: NonNullable<Leg['secondary']>;
}

/** A lump of mass on equal legs, ready to land. */
function prepare(gear: Gear): TouchdownKernel {
  const legs = Array.from({ length: gear.legCount }, (_, i): Leg => {
    const azimuth = (gear.firstAzimuth ?? 0) + (2 * Math.PI * i) / gear.legCount;
    const hipRadius = gear.radius - (gear.hipInset ?? 0);
    return {
      footpad: [gear.radius * cos(azimuth), gear.radius * sin(azimuth), 0],
      hip: [hipRadius * cos(azimuth), hipRadius * sin(azimuth), 3],
      footpadDiameter: 0.9,
      stiffness: gear.stiffness,
      stages: gear.stages,
      bottomedStiffness: 4 * gear.stiffness,
      ...(gear.secondary === undefined ? {} : { secondary: gear.secondary }),
    };
  });
  const shape = { kind: 'inertia', moments: gear.inertia } as const;
  const lander: Lander = {
    id: 'check',
    name: 'Check',
    summary: 'A lump of mass on equal legs.',
    parts: [{ name: 'body', kind: 'dry', mass: gear.mass, center: [0, 0, gear.centerHeight], shape }],
    tanks: [],
    legs,
    hull: [],
    engine: { maxThrust: 1, minThrust: 1, specificImpulse: 300, lag: 0, attitudeTorque: 0 },
    probeLength: 0,
  };
  const prepared = prepareTouchdown(lander);
  assert(prepared.ok, 'the landers of the checks can be simulated');
  return prepared.value;
}

function run(
  kernel: TouchdownKernel,
  gravity: number,
  arrival: { readonly ground: Ground; readonly state: ContactState },
  options: TouchdownOptions = {},
): TouchdownResult {
  return runTouchdown(kernel, { gravity, ...arrival }, options);
}

function plane(friction: number, slope = 0): Ground {
  return { shape: { kind: 'plane', slope }, friction };
}

function drop(legCount: number, expected: string): OutsideCheck {
  return {
    ...DERIVED,
    ...EQUALS_PRINTED,
    name: `crush stroke of a drop on ${legCount} leg${legCount === 1 ? '' : 's'}`,
    source: ENERGY,
    expected,
    unit: 'm',
    note: '2000 kg, 3 m/s, 20 kN a leg, Moon',
    compute: (gravityOf) => {
      const kernel = prepare({
        mass: 2000,
        inertia: [2000, 2000, 2000],
        centerHeight: 1.5,
        legCount,
        radius: legCount === 1 ? 0 : 2,
        stages: [{ force: 20_000, stroke: 1 }],
        stiffness: 1e12,
      });
      const arrival = { ground: plane(0.7), state: { horizontalSpeed: 0, descentRate: 3 } };
      // until it stands for the first time; the struts are all but rigid
      const timeLimit = 0.4 / legCount;
      return run(kernel, gravityOf('moon'), arrival, { timeLimit, damping: 0 }).strokes[0]!;
    },
  };
}

/** A low, wide body that neither crushes nor tips. */
function sled(): TouchdownKernel {
  return prepare({
    mass: 2000,
    inertia: [1500, 1500, 2500],
    centerHeight: 0.8,
    legCount: 4,
    radius: 2.5,
    stages: [{ force: 1e6, stroke: 1 }],
    stiffness: 2e6,
  });
}

function fallAfterProbe(gravityOf: GravityOf): number {
  const gravity = gravityOf('moon');
  const state = { horizontalSpeed: 0, descentRate: 3 * 0.3048, height: 67 * 0.0254 };
  const { firstContact } = run(sled(), gravity, { ground: plane(0.7), state }, { step: 1 / 4096, timeLimit: 2 });
  return state.descentRate + gravity * firstContact;
}

function stick(world: string): OutsideCheck {
  return {
    ...DERIVED,
    ...AT_MOST,
    name: 'way on a slope of 25 deg when friction is 1.01 times what holds it, Moon',
    source: COULOMB,
    expected: '0.01',
    unit: 'm',
    note: 'it stays where it is set down; 0.01 m is our allowance for the swing of the legs as the weight comes on',
    compute: (gravityOf) => {
      const slope = 25 * DEGREE;
      const ground = plane((1.01 * sin(slope)) / cos(slope), slope);
      const state = { horizontalSpeed: 0, descentRate: 0, pitch: slope };
      const arrival = { ground, state };
      const { outcome, slide: way } = run(sled(), gravityOf(world), arrival, { stopWhenDecided: false, timeLimit: 20 });
      return outcome === 'upright' ? way : Infinity;
    },
  };
}

function slide(world: string, expected: string): OutsideCheck {
  return {
    ...DERIVED,
    ...EQUALS_PRINTED,
    name: `acceleration down a slope of 25 deg at friction 0.3, ${world === 'moon' ? 'Moon' : 'Earth'}`,
    source: COULOMB,
    expected,
    unit: 'm/s^2',
    compute: (gravityOf) => {
      const slope = 25 * DEGREE;
      const state = { horizontalSpeed: 0, descentRate: 0, pitch: slope };
      const { history } = run(
        sled(),
        gravityOf(world),
        { ground: plane(0.3, slope), state },
        { timeLimit: 4, historyEvery: 512, stopWhenDecided: false },
      );
      assert(history !== undefined, 'the history was asked for');
      // at 1 s and at 3 s, when the swing of the legs is over
      const [early, late] = [history[1]!, history[3]!];
      const rise = (i: 0 | 1 | 2): number => late.velocity[i] - early.velocity[i];
      return Math.sqrt(rise(0) * rise(0) + rise(2) * rise(2)) / (late.time - early.time);
    },
  };
}

/** Turning points of a block that rocks on stiff, critically damped legs, over the balance tilt. */
function peak(count: number, published: number): OutsideCheck {
  return {
    ...AT_MOST,
    name: `rocking on stiff legs: peak after ${count} impact${count === 1 ? '' : 's'}, relative deviation from ${published}`,
    source: HOUSNER,
    kind: 'published',
    seen: false,
    expected: STAND_IN,
    unit: '-',
    note: 'rectangle b 0.25 m h 1 m from 0.8 of the balance tilt, g 9.81 m/s^2, six degrees of freedom',
    compute: () => {
      const inertia = (1000 * (0.25 * 0.25 + 1)) / 3;
      const kernel = prepare({
        mass: 1000,
        inertia: [inertia, inertia, inertia],
        centerHeight: 1,
        legCount: 4,
        radius: 0.25 * Math.SQRT2,
        firstAzimuth: Math.PI / 4,
        stages: [{ force: 1e15, stroke: 1 }],
        stiffness: 1e8,
      });
      const balance = BALANCE;
      const state = { horizontalSpeed: 0, descentRate: 0, pitch: 0.8 * balance };
      const { history } = run(
        kernel,
        9.81,
        { ground: plane(5), state },
        { damping: 1, timeLimit: 1 + count, stopWhenDecided: false, historyEvery: 16 },
      );
      assert(history !== undefined, 'the history was asked for');
      const leans = history.map(({ attitude }) => 2 * Math.abs(attitude[2]));
      const peaks = leans.filter(
        (lean, i) => i > 0 && lean >= leans[i - 1]! && lean > (leans[i + 1] ?? Infinity) && lean > 0.02,
      );
      return Math.abs(peaks[count - 1]! / balance / published - 1);
    },
  };
}

/** atan(0.25) [rad]. */
const BALANCE = 0.24497866312686414;

function trip(slopeDeg: number, plastic: number): OutsideCheck {
  const where = slopeDeg === 0 ? 'level' : `${slopeDeg} deg downhill`;
  return {
    ...DERIVED,
    ...AT_MOST,
    name: `simulated limit of a caught foot, ${where}: relative deviation from ${plastic} m/s`,
    source: 'plastic pivot about the caught feet; the values of the trip limit above',
    expected: STAND_IN,
    unit: '-',
    note: 'half stance 1.5 m, center 2 m up, I = 1.5 m^2 x mass, Moon; stiff over-damped legs, friction 10, bisection to 1e-3',
    compute: (gravityOf) => {
      const kernel = prepare({
        mass: 2000,
        inertia: [3000, 3000, 3000],
        centerHeight: 2,
        legCount: 4,
        radius: 1.5 * Math.SQRT2,
        firstAzimuth: Math.PI / 4,
        stages: [{ force: 1e15, stroke: 1 }],
        stiffness: 2e6,
      });
      const slope = slopeDeg * DEGREE;
      const tips = (speed: number): boolean => {
        const state = { horizontalSpeed: speed * cos(slope), descentRate: speed * sin(slope), pitch: slope };
        const arrival = { ground: plane(10, slope), state };
        return run(kernel, gravityOf('moon'), arrival, { damping: 2 }).outcome === 'tipped downhill';
      };
      let [low, high] = [1, 3];
      for (let turn = 0; turn < 11; turn++) {
        const middle = (low + high) / 2;
        if (tips(middle)) high = middle;
        else low = middle;
      }
      return Math.abs((low + high) / 2 / plastic - 1);
    },
  };
}

/** Lunar-module-class gear, invented in its details. */
function classGear(legCount: number): TouchdownKernel {
  return prepare({
    mass: 7000,
    inertia: [18_000, 18_000, 22_000],
    centerHeight: 3.4,
    legCount,
    radius: 4.2,
    stages: [
      { force: 20_000, stroke: 0.25 },
      { force: 42_000, stroke: 0.56 },
    ],
    stiffness: 1e6,
    hipInset: 2.2,
    secondary: { force: 15_000, stroke: 1, stiffness: 1e6 },
  });
}

const YAWS = 12;

interface Arrival {
  readonly legCount: number;
  readonly friction: number;
  readonly horizontalSpeed: number;
}

/** Share of the yaws over one spacing of the legs at which the lander stays up on 12 deg. */
function shareUp(gravityOf: GravityOf, { legCount, friction, horizontalSpeed }: Arrival): number {
  const kernel = classGear(legCount);
  let up = 0;
  for (let i = 0; i < YAWS; i++) {
    const yaw = ((i + 0.5) / YAWS) * ((2 * Math.PI) / legCount);
    const state = { horizontalSpeed, descentRate: 2.13, yaw };
    const { outcome } = run(kernel, gravityOf('moon'), { ground: plane(friction, 12 * DEGREE), state });
    if (!outcome.startsWith('tipped')) up++;
  }
  return up / YAWS;
}

/** Least speed of a scan by quarter meters a second at which the lander tips at any yaw, friction 1 [m/s]. */
function leastTipping(gravityOf: GravityOf, legCount: number): number {
  let horizontalSpeed = 1;
  while (horizontalSpeed < 6 && shareUp(gravityOf, { legCount, friction: 1, horizontalSpeed }) === 1) {
    horizontalSpeed += 0.25;
  }
  return horizontalSpeed;
}

function designCorners(gravityOf: GravityOf): number {
  const kernel = classGear(4);
  const corners = [
    { descentRate: 3.05, horizontalSpeed: 0 },
    { descentRate: 2.13, horizontalSpeed: 1.22 },
  ];
  const each = 40;
  let up = 0;
  for (const corner of corners) {
    for (let i = 0; i < each; i++) {
      // the lean goes round by the golden angle, so that yaw and lean meet in every way
      const lean = GOLDEN_ANGLE * i;
      const state = {
        ...corner,
        yaw: (2 * Math.PI * (i + 0.5)) / each,
        pitch: 6 * DEGREE * cos(lean),
        roll: 6 * DEGREE * sin(lean),
      };
      const { outcome } = run(kernel, gravityOf('moon'), { ground: plane(0.8, 12 * DEGREE), state });
      if (!outcome.startsWith('tipped')) up++;
    }
  }
  return up / (corners.length * each);
}

/** [rad] */
const GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));
