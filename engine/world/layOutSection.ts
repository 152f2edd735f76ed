import { assert } from '../assert.ts';
import { inertiaAbout } from '../lander/inertiaTensor.ts';
import type { Lander, Leg } from '../lander/lander.ts';
import { massProperties } from '../lander/massProperties.ts';
import { tankLiquid } from '../lander/tankLiquid.ts';
import { cos, sin } from '../math/trig.ts';
import { cross2, dot2, length2, scale2, subtract2, type Vec2 } from '../math/vec2.ts';
import { supportPolygon } from '../statics/supportPolygon.ts';
import type { CrushLaw } from '../touchdown/legCrush.ts';
import type { MassTable } from './massTable.ts';
import type { SectionLander, SectionLeg } from './sectionLander.ts';

/** Steps of the table of mass properties over propellant. */
const MASS_ROWS = 64;

/** A hull of less area than the square of this is widened by it, since the world needs an area [m]. */
const LEAST_HULL = 0.1;

/**
 * Lays a lander out as its section: the footprint edge that is nearest to its center of mass decides the view. `propellant`
 * is what is usable of the tanks' content [kg]; at the start the lander weighs what its file says.
 */
export function layOutSection(lander: Lander, propellant: number): SectionLander {
  const aboard = lander.tanks.reduce((sum, tank) => sum + tankLiquid(tank).mass, 0);
  assert(
    propellant <= aboard * (1 + 1e-9),
    `propellant is at most what the tanks hold, ${aboard} kg; came ${propellant}`,
  );
  // tanks drain evenly; what is not usable stays aboard
  const fills = (left: number) =>
    lander.tanks.map((tank) => (aboard > 0 ? (tank.fill * (aboard - propellant + left)) / aboard : 0));
  const { center } = massProperties(lander, fills(propellant));
  const foot: Vec2 = [center[0], center[1]];
  const edge = nearestEdge(lander, foot);
  const outward: Vec2 = [cos(edge.azimuth), sin(edge.azimuth)];
  return {
    halfStance: edge.distance,
    leg: mergeLegs(lander, edge.legs, outward),
    hull: hullOutline(lander, foot, outward),
    masses: tabulateMasses(lander, propellant, fills, edge.azimuth),
  };
}

interface FootprintEdge {
  /** From the foot point of the center of mass [m]. */
  readonly distance: number;
  /** Azimuth of its outward normal [rad]. */
  readonly azimuth: number;
  /** Legs whose footpads are its ends. */
  readonly legs: readonly Leg[];
}

function nearestEdge({ legs }: Lander, foot: Vec2): FootprintEdge {
  const support = supportPolygon(
    legs.map(({ footpad }): Vec2 => [footpad[0], footpad[1]]),
    foot,
  );
  assert(support.kind === 'polygon', 'the footpads of a lander span an area');
  const nearest = support.edges.reduce((least, edge) => (edge.distance < least.distance ? edge : least));
  assert(nearest.distance > 0, 'the center of mass of a lander stands inside its footprint');
  return {
    distance: nearest.distance,
    azimuth: nearest.normal,
    legs: legs.filter((_, index) => index === nearest.from || index === nearest.to),
  };
}

/**
 * Half of the legs as one, moving along the strut as the section shows it.
 *
 *   travel = q · shortening,   F_section = n/2 · F / q,   k_section = n/2 · k / q²
 *
 * q  length of the strut's unit vector in the section [-]. What a pair of legs moves across the section cancels; the work
 * per meter of shortening is kept. The strut is that of the edge's legs, the law that of the weakest leg.
 */
function mergeLegs(lander: Lander, edgeLegs: readonly Leg[], outward: Vec2): SectionLeg {
  const struts = edgeLegs.map((leg) => strutInSection(leg, outward));
  const mean = scale2(
    struts.reduce((sum: Vec2, strut) => [sum[0] + strut[0], sum[1] + strut[1]], [0, 0]),
    1 / struts.length,
  );
  const shown = length2(mean);
  assert(mean[1] > 0, 'the struts of a lander rise from footpad to hip');
  const { stages, stiffness, bottomedStiffness, footpadDiameter } = weakestLeg(lander.legs);
  const count = lander.legs.length / 2;
  const law: CrushLaw = {
    stages: stages.map(({ force, stroke }) => ({ force: (count * force) / shown, stroke: stroke * shown })),
    stiffness: (count * stiffness) / (shown * shown),
    bottomedStiffness: (count * bottomedStiffness) / (shown * shown),
  };
  return {
    axis: scale2(mean, 1 / shown),
    law,
    strutPerTravel: 1 / shown,
    strutShare: shown / count,
    padRadius: footpadDiameter / 2,
  };
}

/** Unit vector of the strut from footpad to hip, its part in the section. */
function strutInSection({ footpad, hip }: Leg, outward: Vec2): Vec2 {
  const across = dot2(outward, [hip[0] - footpad[0], hip[1] - footpad[1]]);
  const sideways = cross2(outward, [hip[0] - footpad[0], hip[1] - footpad[1]]);
  const up = hip[2] - footpad[2];
  return scale2([across, up], 1 / Math.sqrt(across * across + sideways * sideways + up * up));
}

function weakestLeg(legs: readonly Leg[]): Leg {
  return legs.reduce((weakest, leg) => (crushEnergy(leg) < crushEnergy(weakest) ? leg : weakest));
}

/** What all stages of a leg absorb [J]. */
function crushEnergy(leg: Leg): number {
  return leg.stages.reduce((sum, { force, stroke }) => sum + force * stroke, 0);
}

function hullOutline(lander: Lander, foot: Vec2, outward: Vec2): readonly Vec2[] {
  const points = lander.hull.map(([x, y, z]): Vec2 => [dot2(outward, subtract2([x, y], foot)), z]);
  const outline = convexOutline(points);
  return area(outline) >= LEAST_HULL * LEAST_HULL ? outline : convexOutline(points.flatMap(widen));
}

/** Four corners around a point. */
function widen([x, y]: Vec2): readonly Vec2[] {
  const half = LEAST_HULL / 2;
  return [
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
  ];
}

/** Corners of the convex hull, counter-clockwise; none when the points lie in a line. */
function convexOutline(points: readonly Vec2[]): readonly Vec2[] {
  const outline = supportPolygon(points, [0, 0]);
  return outline.kind === 'polygon' ? outline.corners.map((corner) => points[corner] ?? [0, 0]) : [];
}

/** Of a counter-clockwise outline [m²]. */
function area(outline: readonly Vec2[]): number {
  return outline.reduce((sum, corner, i) => sum + cross2(corner, outline[(i + 1) % outline.length] ?? corner) / 2, 0);
}

function tabulateMasses(
  lander: Lander,
  propellant: number,
  fills: (left: number) => readonly number[],
  azimuth: number,
): MassTable {
  // the body turns about the direction along the edge
  const alongEdge = azimuth + Math.PI / 2;
  const rows = Array.from({ length: MASS_ROWS + 1 }, (_, i) =>
    massProperties(lander, fills((propellant * i) / MASS_ROWS)),
  );
  const empty = rows[0];
  assert(empty !== undefined, 'the table has a first row');
  return {
    leastMass: empty.mass,
    fullPropellant: propellant,
    centerHeights: rows.map(({ center }) => center[2]),
    inertias: rows.map(({ inertia }) => inertiaAbout(inertia, alongEdge)),
  };
}
