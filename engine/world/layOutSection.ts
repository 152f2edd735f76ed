import { assert } from '../assert.ts';
import { inertiaAbout } from '../lander/inertiaTensor.ts';
import type { Lander } from '../lander/lander.ts';
import { massProperties } from '../lander/massProperties.ts';
import { tankLiquid } from '../lander/tankLiquid.ts';
import { cos, sin } from '../math/trig.ts';
import { cross2, dot2, subtract2, type Vec2 } from '../math/vec2.ts';
import { convexOutline } from '../statics/supportPolygon.ts';
import { facingAt, facingsOf } from './facings.ts';
import type { MassTable } from './massTable.ts';
import type { SectionLander } from './sectionLander.ts';

/** Steps of the table of mass properties over propellant. */
const MASS_ROWS = 64;

/** A hull of less area than the square of this is widened by it, since the world needs an area [m]. */
const LEAST_HULL = 0.1;

/**
 * Lays a lander out as its section: the footprint edge that is nearest to its center of mass decides the view, and `steps` by how many edges like it the lander has turned from
 * there, counter-clockwise seen from above. `propellant` is what is usable of the tanks' content [kg]; at the start the lander weighs what its file says.
 */
export function layOutSection(lander: Lander, propellant: number, steps = 0): SectionLander {
  const aboard = lander.tanks.reduce((sum, tank) => sum + tankLiquid(tank).mass, 0);
  assert(
    propellant <= aboard * (1 + 1e-9),
    `propellant is at most what the tanks hold, ${aboard} kg; got ${propellant}`,
  );
  // tanks drain evenly; what is not usable stays aboard
  const fills = (left: number) =>
    lander.tanks.map((tank) => (aboard > 0 ? (tank.fill * (aboard - propellant + left)) / aboard : 0));
  const { center } = massProperties(lander, fills(propellant));
  const foot: Vec2 = [center[0], center[1]];
  const facings = facingsOf(lander, foot);
  const { azimuth, halfStance } = facingAt(facings, steps);
  const outward: Vec2 = [cos(azimuth), sin(azimuth)];
  return {
    facings,
    azimuth,
    halfStance,
    hull: hullOutline(lander, foot, outward),
    masses: tabulateMasses(lander, propellant, fills, azimuth),
  };
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
