/** Public door of statics: how a lander stands, and how far it may be tilted. */
export { contactPlanes } from './contactPlanes.ts';
export { landerStance, standOn, type Footing, type Stance, type Standing, type TipEdge } from './stance.ts';
export { bodyTilt, leastStaticTilt, slopeMargin, staticTilt } from './staticTilt.ts';
export { convexOutline, supportPolygon } from './supportPolygon.ts';
