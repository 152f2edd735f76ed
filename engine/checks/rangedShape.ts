import { massProperties } from '../lander/index.ts';
import type { Lander } from '../lander/lander.ts';
import { pivotBodyOver, type PivotBody } from '../pivot/index.ts';
import { landerStance } from '../statics/index.ts';

/** The shape of a body as the checked range names it; hand it to `outsideCheckedRange` beside the other inputs. */
export interface RangedShape {
  /** b / h [-]. */
  readonly stanceOverHeight: number;
  /** I / (m (b^2 + h^2)), I about the center of mass along the edge [-]. */
  readonly inertiaShare: number;
}

export function rangedShape({ mass, halfStance: b, centerHeight: h, inertia }: PivotBody): RangedShape {
  return { stanceOverHeight: b / h, inertiaShare: inertia / (mass * (b * b + h * h)) };
}

/** Of a lander over its narrowest edge, legs by index; undefined where it does not stand. */
export function landerShape(lander: Lander, missing: readonly number[] = []): RangedShape | undefined {
  const stance = landerStance(lander, { missing });
  if (stance.kind === 'cannotStand') return undefined;
  const bulk = massProperties(lander);
  const shapes = stance.edges.map((edge) => rangedShape(pivotBodyOver(edge, stance, bulk)));
  return shapes.toSorted((a, b) => a.stanceOverHeight - b.stanceOverHeight)[0];
}
