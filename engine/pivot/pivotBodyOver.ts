import { inertiaAlong } from '../lander/inertiaTensor.ts';
import type { MassProperties } from '../lander/massProperties.ts';
import { tan } from '../math/index.ts';
import type { Standing, TipEdge } from '../statics/stance.ts';
import { staticTilt } from '../statics/staticTilt.ts';
import type { PivotBody } from './tripLimit.ts';

/** A standing lander seen along one of its edges: the body that tripLimit and requiredStance take. */
export function pivotBodyOver(edge: TipEdge, stance: Standing, bulk: MassProperties): PivotBody {
  return {
    mass: bulk.mass,
    halfStance: edge.distance,
    centerHeight: edge.height,
    inertia: inertiaAlong(bulk.inertia, edge.axis),
    oppositeHalfStance: edge.height * tan(staticTilt(stance, edge.normal + Math.PI)),
  };
}
