import { massProperties, type Lander } from '../../../engine/lander/index.ts';

/**
 * What a drawing of a lander needs to know, in its section frame: origin on the footpad plane straight below the center
 * of mass, x across the edge over which it tips most easily, z toward the nose. All lengths in meters.
 */
export interface Figure {
  readonly id: string;
  readonly name: string;
  readonly centerHeight: number;
  /** From the middle to either foot. */
  readonly halfStance: number;
  readonly hip: { readonly x: number; readonly z: number };
  readonly padRadius: number;
  readonly stroke: number;
  /** x of the feet between the outer two, as seen in the section; drawn behind. */
  readonly innerFeet: readonly number[];
  readonly hull: {
    readonly left: number;
    readonly right: number;
    readonly bottom: number;
    readonly top: number;
  };
  /** Points of the structure by height: half width at each. */
  readonly profile: readonly { readonly z: number; readonly half: number }[];
  readonly tanks: readonly TankFigure[];
  readonly cargo: readonly CargoFigure[];
}

export interface TankFigure {
  readonly x: number;
  /** Distance behind the plane of the section; 0 when it is cut through its middle. */
  readonly depth: number;
  readonly bottom: number;
  readonly top: number;
  readonly half: number;
  readonly lying: boolean;
  readonly fill: number;
}

interface CargoFigure {
  readonly name: string;
  readonly x: number;
  readonly z: number;
  readonly half: number;
  readonly height: number;
}

/** Feet nearer to the middle than this share of the half stance, or doubled on the outer feet, are no feet of their own. */
const SAME_FOOT = 0.04;

export function figureOf(lander: Lander): Figure {
  const { mass, center } = massProperties(lander);
  const azimuth = tippingAzimuth(lander, center[0], center[1]);
  const across = (x: number, y: number) => (x - center[0]) * Math.cos(azimuth) + (y - center[1]) * Math.sin(azimuth);
  const feet = lander.legs.map((leg) => across(leg.footpad[0], leg.footpad[1]));
  const halfStance = Math.max(...feet);
  const outer = lander.legs[feet.indexOf(halfStance)];
  const hull = lander.hull.map(([x, y, z]) => ({ x: across(x, y), z }));
  const widest = Math.max(...hull.map((point) => Math.abs(point.x)));
  return {
    id: lander.id,
    name: lander.name,
    centerHeight: mass > 0 ? center[2] : 0,
    halfStance,
    hip: outer === undefined ? { x: 0, z: 0 } : { x: across(outer.hip[0], outer.hip[1]), z: outer.hip[2] },
    padRadius: (outer?.footpadDiameter ?? 0) / 2,
    stroke: outer?.stages.reduce((sum, stage) => sum + stage.stroke, 0) ?? 0,
    innerFeet: innerFeet(feet, halfStance),
    hull: {
      left: Math.min(...hull.map((point) => point.x)),
      right: Math.max(...hull.map((point) => point.x)),
      bottom: Math.min(...hull.map((point) => point.z)),
      top: Math.max(...hull.map((point) => point.z)),
    },
    profile: profileOf(hull),
    tanks: lander.tanks.map((tank): TankFigure => {
      const lying = tank.orientation === 'lying';
      return {
        x: across(tank.offset[0], tank.offset[1]),
        depth: Math.abs(
          (tank.offset[1] - center[1]) * Math.cos(azimuth) - (tank.offset[0] - center[0]) * Math.sin(azimuth),
        ),
        bottom: tank.bottomHeight,
        top: tank.bottomHeight + (lying ? 2 * tank.radius : tank.length),
        // a round hull is known by the corners of its outline only, and those lie nearer in between
        half: lying
          ? tank.radius
          : Math.min(tank.radius, 0.94 * widest - Math.abs(across(tank.offset[0], tank.offset[1]))),
        lying,
        fill: tank.fill,
      };
    }),
    cargo: lander.parts.flatMap((part): CargoFigure[] => {
      if (part.kind !== 'payload') return [];
      const size = part.shape.kind === 'box' ? part.shape.size : [0.8, 0.8, 0.6];
      const [width, , height] = size;
      return [
        { name: part.name, x: across(part.center[0], part.center[1]), z: part.center[2], half: width / 2, height },
      ];
    }),
  };
}

/** Direction across the footprint's nearest edge [rad]: the section looks along that edge. */
function tippingAzimuth(lander: Lander, centerX: number, centerY: number): number {
  const feet = lander.legs
    .map((leg) => ({ x: leg.footpad[0] - centerX, y: leg.footpad[1] - centerY }))
    .toSorted((a, b) => Math.atan2(a.y, a.x) - Math.atan2(b.y, b.x));
  let least = Infinity;
  let azimuth = 0;
  feet.forEach((foot, index) => {
    const next = feet[(index + 1) % feet.length] ?? foot;
    const length = Math.hypot(next.x - foot.x, next.y - foot.y);
    if (length === 0) return;
    // feet run counter-clockwise, so the outward normal of an edge is its direction turned clockwise
    const normalX = (next.y - foot.y) / length;
    const normalY = -(next.x - foot.x) / length;
    const distance = foot.x * normalX + foot.y * normalY;
    if (distance < least - 1e-9) {
      least = distance;
      azimuth = Math.atan2(normalY, normalX);
    }
  });
  return azimuth;
}

function innerFeet(feet: readonly number[], halfStance: number): number[] {
  const inner: number[] = [];
  for (const foot of feet) {
    if (Math.abs(foot) > (1 - SAME_FOOT) * halfStance) continue;
    if (!inner.some((other) => Math.abs(other - foot) < SAME_FOOT * halfStance)) inner.push(foot);
  }
  return inner;
}

/** Widest point of the structure at each height it has points at, from the lowest up. */
function profileOf(hull: readonly { readonly x: number; readonly z: number }[]): { z: number; half: number }[] {
  const widest = new Map<number, number>();
  for (const point of hull) widest.set(point.z, Math.max(widest.get(point.z) ?? 0, Math.abs(point.x)));
  return [...widest].map(([z, half]) => ({ z, half })).toSorted((a, b) => a.z - b.z);
}
