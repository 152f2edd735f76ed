/**
 * Principal inertias of homogeneous solids about their own centers, along body x, y, z.
 * Textbook results: [Meriam2012] table D/4.
 */
import type { BodyPoint, PartShape } from './lander.ts';

/** Inertias of a part about its center [kg·m²]. */
export function shapeInertia(shape: PartShape, mass: number): BodyPoint {
  switch (shape.kind) {
    case 'point':
      return [0, 0, 0];
    case 'cylinder':
      return cylinderInertia(mass, shape);
    case 'tube':
      return tubeInertia(mass, shape);
    case 'box':
      return boxInertia(mass, shape.size);
    case 'inertia':
      return shape.moments;
  }
  const unknown: never = shape;
  return unknown;
}

interface Round {
  readonly radius: number;
  readonly length: number;
  readonly axis: 'y' | 'z';
}

/**
 * Solid circular cylinder.
 *
 *   I_axis = m r² / 2,   I_across = m (3 r² + l²) / 12            [Meriam2012] table D/4
 */
function cylinderInertia(mass: number, { radius: r, length: l, axis }: Round): BodyPoint {
  return roundInertia((mass * r * r) / 2, (mass * (3 * r * r + l * l)) / 12, axis);
}

/**
 * Thin-walled open circular tube.
 *
 *   I_axis = m r²,   I_across = m (6 r² + l²) / 12                [Meriam2012] table D/4
 */
function tubeInertia(mass: number, { radius: r, length: l, axis }: Round): BodyPoint {
  return roundInertia(mass * r * r, (mass * (6 * r * r + l * l)) / 12, axis);
}

function roundInertia(along: number, across: number, axis: 'y' | 'z'): BodyPoint {
  return axis === 'z' ? [across, across, along] : [across, along, across];
}

/**
 * Solid rectangular box of full sides a, b, c along x, y, z.
 *
 *   I_xx = m (b² + c²) / 12, and so on                            [Meriam2012] table D/4
 */
function boxInertia(mass: number, [a, b, c]: BodyPoint): BodyPoint {
  return [(mass * (b * b + c * c)) / 12, (mass * (a * a + c * c)) / 12, (mass * (a * a + b * b)) / 12];
}
