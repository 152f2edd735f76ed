/** A lander with some of its dimensions changed, each by a stated rule, as a designer would try them. */
import { formatLander, massProperties, parseLander, tankLiquid, type BodyPoint, type Lander } from '../lander/index.ts';
import { atan2, cos, hypot2, sin } from '../math/index.ts';
import { refuse, type FieldProblem, type Result } from '../result.ts';
import { heavier, withLegs } from '../structure/index.ts';

/** What can be changed of a lander, in SI. */
export const SHAPE_FIELDS = ['legCount', 'footRadius', 'crushForce', 'stroke', 'mass', 'fill', 'centerHeight'] as const;
export type ShapeField = (typeof SHAPE_FIELDS)[number];

/** Each in place of what the lander has; absent: as it is. Applied in the order of SHAPE_FIELDS. */
export type Reshaping = { readonly [Field in ShapeField]?: number };

interface ShapeFact {
  /** A short name. */
  readonly words: string;
  /** '-' for a ratio or a count. */
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly whole?: boolean;
  /** What it is, and what else changes with it. */
  readonly meaning: string;
}

/** Bounds keep typing slips out; what a lander file may hold is checked after that. */
export const SHAPE_FACTS: { readonly [Field in ShapeField]: ShapeFact } = {
  legCount: {
    words: 'legs',
    unit: '-',
    least: 3,
    most: 12,
    whole: true,
    meaning: 'legs of a ring; their mass goes with their number',
  },
  footRadius: {
    words: 'foot to the long axis',
    unit: 'm',
    least: 0.1,
    most: 50,
    meaning: 'long axis to the farthest footpad; hips stay, and longer legs weigh more',
  },
  crushForce: {
    words: 'crush force of a leg',
    unit: 'N',
    least: 1,
    most: 1e8,
    meaning:
      'axial force at which the first stage of a leg crushes; later stages keep their ratio, stronger legs weigh more',
  },
  stroke: {
    words: 'stroke of a leg',
    unit: 'm',
    least: 0.01,
    most: 10,
    meaning: 'length that a leg can crush by, all stages; its mass stays',
  },
  mass: {
    words: 'mass with propellant',
    unit: 'kg',
    least: 1,
    most: 1e8,
    meaning: 'mass with propellant; legs and propellant stay, all else weighs more or less',
  },
  fill: { words: 'tanks filled to', unit: '-', least: 0, most: 1, meaning: 'filled share of every tank' },
  centerHeight: {
    words: 'height of the center of mass',
    unit: 'm',
    least: 0.01,
    most: 100,
    meaning:
      'center of mass over the footpad plane; the body is drawn out or pressed together from its lowest point up',
  },
};

/** The present values of what can be changed. */
export function shapeOf(lander: Lander): { readonly [Field in ShapeField]: number } {
  const { mass, center } = massProperties(lander);
  const [leg] = lander.legs;
  const volume = lander.tanks.reduce((sum, tank) => sum + tank.radius * tank.radius * tank.length, 0);
  const filled = lander.tanks.reduce((sum, tank) => sum + tank.fill * tank.radius * tank.radius * tank.length, 0);
  return {
    legCount: lander.legs.length,
    footRadius: footRadiusOf(lander),
    crushForce: leg?.stages[0]?.force ?? 0,
    stroke: leg?.stages.reduce((sum, { stroke }) => sum + stroke, 0) ?? 0,
    mass,
    fill: volume === 0 ? 0 : filled / volume,
    centerHeight: center[2],
  };
}

/** The lander so changed, or why there is none: every bound and rule of a lander file holds for it too. */
export function reshape(lander: Lander, to: Reshaping): Result<Lander, readonly FieldProblem[]> {
  const problems = SHAPE_FIELDS.flatMap((field) => boundProblem(field, to[field]));
  if (problems.length > 0) return refuse(problems);
  let shaped = lander;
  for (const field of SHAPE_FIELDS) {
    const value = to[field];
    if (value === undefined) continue;
    const next = RULES[field](shaped, value);
    if ('expected' in next) return refuse([{ code: 'shape/not-possible', path: field, came: String(value), ...next }]);
    shaped = next;
  }
  return parseLander(formatLander(shaped));
}

/** What a rule cannot do. */
interface Impossible {
  readonly expected: string;
}

const RULES: { readonly [Field in ShapeField]: (lander: Lander, value: number) => Lander | Impossible } = {
  legCount: withLegCount,
  footRadius(lander, radius) {
    const factor = radius / footRadiusOf(lander);
    const legs = lander.legs.map((leg) => {
      const [x, y, z] = leg.footpad;
      return { ...leg, footpad: [factor * x, factor * y, z] as const };
    });
    return withLegs(lander, legs);
  },
  crushForce(lander, force) {
    const factor = force / shapeOf(lander).crushForce;
    return withLegs(
      lander,
      withStages(lander, ({ force: before, stroke }) => ({ force: before * factor, stroke })),
    );
  },
  stroke(lander, stroke) {
    const factor = stroke / shapeOf(lander).stroke;
    return { ...lander, legs: withStages(lander, (stage) => ({ ...stage, stroke: stage.stroke * factor })) };
  },
  mass: withMass,
  fill: (lander, fill) => ({ ...lander, tanks: lander.tanks.map((tank) => ({ ...tank, fill })) }),
  centerHeight: withCenterHeight,
};

type Stage = Lander['legs'][number]['stages'][number];

function withStages(lander: Lander, change: (stage: Stage) => Stage): Lander['legs'] {
  return lander.legs.map((leg) => ({ ...leg, stages: leg.stages.map(change) }));
}

function footRadiusOf({ legs }: Lander): number {
  return Math.max(...legs.map(({ footpad: [x, y] }) => hypot2(x, y)));
}

/** Lengths and angles this near to each other are those of a ring [m], [rad]: a millimeter over some meters. */
const RING_SLACK = 1e-3;

function withLegCount(lander: Lander, count: number): Lander | Impossible {
  const { legs } = lander;
  const [first] = legs;
  if (first === undefined || !isRing(legs)) return { expected: 'a lander whose legs stand in an even ring' };
  const ring = Array.from({ length: count }, (_, i) => {
    const turn = (2 * Math.PI * i) / count;
    return { ...first, footpad: turnedBy(turn, first.footpad), hip: turnedBy(turn, first.hip) };
  });
  return withLegs(lander, ring);
}

function turnedBy(turn: number, [x, y, z]: BodyPoint): BodyPoint {
  return [x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn), z];
}

function isRing(legs: Lander['legs']): boolean {
  const azimuths = legs.map(({ footpad: [x, y] }) => atan2(y, x));
  const radii = legs.map(({ footpad: [x, y] }) => hypot2(x, y));
  const step = (2 * Math.PI) / legs.length;
  const sorted = azimuths.toSorted((a, b) => a - b);
  const isEven = sorted.every((azimuth, i) => Math.abs(azimuth - (sorted[0]! + i * step)) < RING_SLACK);
  const isAlike = (key: (leg: Lander['legs'][number]) => number) =>
    legs.every((leg) => Math.abs(key(leg) - key(legs[0]!)) < RING_SLACK);
  return isEven && radii.every((radius) => Math.abs(radius - radii[0]!) < RING_SLACK) && isAlike(({ hip }) => hip[2]);
}

function withMass(lander: Lander, mass: number): Lander | Impossible {
  const body = lander.parts.filter(({ kind }) => kind !== 'gear').reduce((sum, part) => sum + part.mass, 0);
  const rest = massProperties(lander).mass - body;
  if (mass <= rest) return { expected: `more than its legs and propellant weigh, ${Math.ceil(rest)} kg` };
  const factor = (mass - rest) / body;
  return { ...lander, parts: lander.parts.map((part) => (part.kind === 'gear' ? part : heavier(part, factor))) };
}

/**
 * The body drawn out or pressed together along its long axis, from the lowest point of its hull, where the legs are.
 *
 *   m z = m_g z_g + sum m_i (z_0 + s (z_i - z_0))                    first moments; the masses stay
 *
 * z  wanted height   g  gear   i  all else   z_0  lowest hull point   s  stretch. What lies in the body keeps its own size, so its inertia about itself.
 */
function withCenterHeight(lander: Lander, height: number): Lander | Impossible {
  const { mass, center } = massProperties(lander);
  const gear = lander.parts.filter(({ kind }) => kind === 'gear');
  const gearMass = gear.reduce((sum, part) => sum + part.mass, 0);
  const gearMoment = gear.reduce((sum, part) => sum + part.mass * part.center[2], 0);
  const base = Math.min(...lander.hull.map(([, , z]) => z));
  const bodyMoment = mass * center[2] - gearMoment - (mass - gearMass) * base;
  const stretch = (mass * height - gearMoment - (mass - gearMass) * base) / bodyMoment;
  if (!(stretch > 0)) {
    const lowest = (gearMoment + (mass - gearMass) * base) / mass;
    return { expected: `more than ${lowest.toFixed(2)} m, where all of its body would lie at its lowest point` };
  }
  const stretched = (z: number) => base + stretch * (z - base);
  const moved = ([x, y, z]: readonly [number, number, number]) => [x, y, stretched(z)] as const;
  return {
    ...lander,
    parts: lander.parts.map((part) => (part.kind === 'gear' ? part : { ...part, center: moved(part.center) })),
    tanks: lander.tanks.map((tank) => {
      const [, , z] = tankLiquid(tank).center;
      return { ...tank, bottomHeight: tank.bottomHeight + stretched(z) - z };
    }),
    hull: lander.hull.map(moved),
  };
}

function boundProblem(field: ShapeField, value: number | undefined): readonly FieldProblem[] {
  const { least, most, whole = false, unit } = SHAPE_FACTS[field];
  if (value === undefined || (value >= least && value <= most && (!whole || Number.isInteger(value)))) return [];
  const expected = `${whole ? 'a whole number' : 'a number'} from ${least} to ${most}${unit === '-' ? '' : ` ${unit}`}`;
  return [{ code: 'shape/out-of-range', path: field, expected, came: String(value) }];
}
