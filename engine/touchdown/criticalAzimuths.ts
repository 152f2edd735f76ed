import type { Lander } from '../lander/lander.ts';
import { massProperties } from '../lander/massProperties.ts';
import { atan2 } from '../math/trig.ts';
import { supportPolygon } from '../statics/supportPolygon.ts';

/** Two azimuths nearer than this are one [rad]: a tenth of a degree, over which no limit changes by as much as its tolerance. */
const SAME_AZIMUTH = Math.PI / 1800;
const TURN = 2 * Math.PI;

/**
 * Azimuths of travel, in the lander's own frame, among which the worst of a lander is looked for [rad], rising from 0: square to every edge of the
 * footprint, along every foot, and half way between neighbors of these. A round number of yaws may miss them all. `missing` names legs that are gone.
 */
export function criticalAzimuths(lander: Lander, missing: readonly number[] = []): readonly number[] {
  const { center } = massProperties(lander);
  const feet = lander.legs.flatMap(({ footpad }, index) => (missing.includes(index) ? [] : [footpad]));
  const support = supportPolygon(
    feet.map((foot) => [foot[0], foot[1]]),
    [center[0], center[1]],
  );
  const edges = support.kind === 'polygon' ? support.edges.map(({ normal }) => normal) : [];
  const spokes = feet.map((foot) => atan2(foot[1] - center[1], foot[0] - center[0]));
  const around = distinct([...edges, ...spokes]);
  const between = around.map((azimuth, i) => {
    const next = around[i + 1] ?? (around[0] ?? 0) + TURN;
    return (azimuth + next) / 2;
  });
  return distinct([...around, ...between]);
}

/** Within one turn, rising, each once. */
function distinct(azimuths: readonly number[]): readonly number[] {
  const rising = azimuths.map((azimuth) => azimuth - TURN * Math.floor(azimuth / TURN)).toSorted((a, b) => a - b);
  return rising.filter((azimuth, i) => {
    const before = rising[i - 1] ?? (rising.at(-1) ?? 0) - TURN;
    return rising.length === 1 || azimuth - before > SAME_AZIMUTH;
  });
}
