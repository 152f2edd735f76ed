import { massProperties, type BodyPoint, type Lander } from '../../../engine/lander/index.ts';
import { layOutSection } from '../../../engine/world/layOutSection.ts';

/**
 * The lander with feet and hull moved out of its section until the center of mass stands half way between the outermost feet there: what a center of mass
 * off the plane of the play does is then gone, all else stays.
 */
export function centerInPlane(lander: Lander): Lander {
  const { azimuth } = layOutSection(lander, 0);
  const across = [-Math.sin(azimuth), Math.cos(azimuth)] as const;
  const out = ([x, y]: BodyPoint): number => x * across[0] + y * across[1];
  const feet = lander.legs.map(({ footpad }) => out(footpad));
  const by = out(massProperties(lander).center) - (Math.min(...feet) + Math.max(...feet)) / 2;
  const move = ([x, y, z]: BodyPoint): BodyPoint => [x + by * across[0], y + by * across[1], z];
  const legs = lander.legs.map((leg) => ({ ...leg, footpad: move(leg.footpad), hip: move(leg.hip) }));
  return { ...lander, legs, hull: lander.hull.map(move) };
}
