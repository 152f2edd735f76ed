import { nextUniform, seedRandom } from '../math/random.ts';
import { cos, sin } from '../math/trig.ts';
import type { TouchdownKernel } from '../touchdown/index.ts';
import { DEGREE, land, plane, prepareGear } from './equalLegs.ts';
import type { GravityOf, OutsideCheck } from './outsideCheck.ts';
import { AT_LEAST, AT_MOST } from './tolerances.ts';

const ROGERS = 'NASA TN D-6850, Rogers 1972 [Rogers1972]';
const MODEL_TESTS = 'NASA Langley 1/6-scale landing tests, NTRS 20070030982 [NTRS20070030982]';

/** Arrivals drawn at each design corner, and the seed they are drawn with. */
const DRAWS = 40;
const SEED = 1;

/** Trends that model tests and design studies of landing gear have published. */
export const GEAR_TREND_CHECKS: readonly OutsideCheck[] = [
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
    name: 'design corners of lunar-module-class gear: share of random yaws and leans that stay up',
    source: ROGERS,
    kind: 'trend',
    seen: false,
    expected: '0.95',
    unit: '-',
    note: `3.05 m/s down; 2.13 down and 1.22 along; 6 deg lean, 12 deg slope; ${DRAWS} draws each, seed ${SEED}; nearly all stay up, 0.95 is our reading of it`,
    compute: designCorners,
  },
  {
    ...AT_LEAST,
    name: 'descent-rate trend: width of a strip of descent rates that tip, between lower and higher ones that do not',
    source: 'Report AD-0269413, 1961 [AD0269413]',
    kind: 'trend',
    seen: false,
    expected: '0.1',
    unit: 'm/s',
    note: 'pads meet 12 deg at an angle, friction 1, 1.3 m/s along; 0.1 is the step of the scan',
    compute: widthOfStrip,
  },
];

/** Lunar-module-class gear, invented in its details. */
const CLASS_GEAR = {
  mass: 7000,
  inertia: [18_000, 18_000, 22_000],
  centerHeight: 3.4,
  radius: 4.2,
  stages: [
    { force: 20_000, stroke: 0.25 },
    { force: 42_000, stroke: 0.56 },
  ],
  stiffness: 1e6,
  hipInset: 2.2,
  secondary: { force: 15_000, stroke: 1, stiffness: 1e6 },
} as const;

function classGear(legCount: number): TouchdownKernel {
  return prepareGear({ ...CLASS_GEAR, legCount });
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
    const { outcome } = land(kernel, gravityOf('moon'), { ground: plane(friction, 12 * DEGREE), state });
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

/** Share of the arrivals at both corners that stay up, yaw and direction of the lean drawn at random. */
function designCorners(gravityOf: GravityOf): number {
  const kernel = classGear(4);
  const corners = [
    { descentRate: 3.05, horizontalSpeed: 0 },
    { descentRate: 2.13, horizontalSpeed: 1.22 },
  ];
  const random = seedRandom(SEED);
  const anyAngle = (): number => 2 * Math.PI * nextUniform(random);
  let up = 0;
  for (const corner of corners) {
    for (let i = 0; i < DRAWS; i++) {
      const yaw = anyAngle();
      const lean = anyAngle();
      const state = { ...corner, yaw, pitch: 6 * DEGREE * cos(lean), roll: 6 * DEGREE * sin(lean) };
      const { outcome } = land(kernel, gravityOf('moon'), { ground: plane(0.8, 12 * DEGREE), state });
      if (!outcome.startsWith('tipped')) up++;
    }
  }
  return up / (corners.length * DRAWS);
}

/** Width of the strip of descent rates that tip [m/s]; 0 unless slower and faster arrivals both stay up. */
function widthOfStrip(gravityOf: GravityOf): number {
  const kernel = prepareGear({
    ...CLASS_GEAR,
    legCount: 4,
    stages: [{ force: 20_000, stroke: 1.5 }],
    secondary: { force: 15_000, stroke: 1.5, stiffness: 1e6 },
  });
  const tips = Array.from({ length: 45 }, (_, i) => {
    const state = { horizontalSpeed: 1.3, descentRate: 0.1 * (i + 1), yaw: Math.PI / 4 };
    return land(kernel, gravityOf('moon'), { ground: plane(1, 12 * DEGREE), state }).outcome.startsWith('tipped');
  });
  if (tips[0] === true || tips.at(-1) === true) return 0;
  return 0.1 * tips.filter(Boolean).length;
}
