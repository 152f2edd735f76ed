/** Public door of statics: how a lander stands, and how far it may be tilted. */
export { contactPlanes, type ContactPlane } from './contactPlanes.ts';
export {
  landerStance,
  standOn,
  type CannotStand,
  type Footing,
  type Stance,
  type Standing,
  type TipEdge,
} from './stance.ts';
export { bodyTilt, leastStaticTilt, slopeMargin, staticTilt, type LeastTilt } from './staticTilt.ts';
export { supportPolygon, type SupportEdge, type SupportPolygon } from './supportPolygon.ts';
