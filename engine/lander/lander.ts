/**
 * A legged lander. Only `parseLander` makes one from foreign data.
 *
 * Body frame: origin on the footpad plane, z along the long axis from the footpad plane to the nose, x and y across.
 * Azimuths are measured from +x toward +y. SI throughout; angles in radians.
 */
export interface Lander {
  /** Lower-case identifier, such as 'trivet'. */
  readonly id: string;
  readonly name: string;
  readonly summary: string;
  /** Everything with mass except propellant in tanks; at least one. */
  readonly parts: readonly Part[];
  readonly tanks: readonly Tank[];
  readonly legs: readonly Leg[];
  /** Points of the structure, other than footpads, that may touch the ground [m]. Includes the lowest hardware. */
  readonly hull: readonly BodyPoint[];
  readonly engine: Engine;
  /** Length of the contact probe below the footpad plane; 0 when there is none [m]. */
  readonly probeLength: number;
}

/** A point or direction in the body frame: x, y, z [m]. */
export type BodyPoint = readonly [number, number, number];

/** Structure, landing gear, or what is carried: what is gear goes when other legs take its place. */
export const PART_KINDS = ['dry', 'gear', 'payload'] as const;

/** A homogeneous solid, or a lump with a stated inertia, whose axes are parallel to the body's. */
export interface Part {
  readonly name: string;
  readonly kind: (typeof PART_KINDS)[number];
  /** [kg] */
  readonly mass: number;
  /** Center of mass of the part [m]. */
  readonly center: BodyPoint;
  readonly shape: PartShape;
}

export type PartShape =
  /** All mass at the center. */
  | { readonly kind: 'point' }
  /** Solid cylinder along body z, or along y when lying. Radius and length [m]. */
  | { readonly kind: 'cylinder'; readonly radius: number; readonly length: number; readonly axis: 'y' | 'z' }
  /** Thin-walled open tube, same frame. */
  | { readonly kind: 'tube'; readonly radius: number; readonly length: number; readonly axis: 'y' | 'z' }
  /** Solid box, full side lengths along x, y, z [m]. */
  | { readonly kind: 'box'; readonly size: BodyPoint }
  /** Principal inertias about the part's own center along x, y, z [kg·m²]. */
  | { readonly kind: 'inertia'; readonly moments: BodyPoint };

/** A cylindrical tank. Upright: axis along z. Lying: axis along y. */
export interface Tank {
  readonly name: string;
  readonly orientation: 'upright' | 'lying';
  /** Inner radius [m]. */
  readonly radius: number;
  /** Inner length along its axis [m]. */
  readonly length: number;
  /** Lowest inner point above the footpad plane [m]. */
  readonly bottomHeight: number;
  /** Center of the tank across the body: x, y [m]. */
  readonly offset: readonly [number, number];
  /** Filled fraction of the inner volume, 0 to 1 [-]. */
  readonly fill: number;
  /** Of the propellant [kg/m³]. */
  readonly density: number;
}

export interface Leg {
  /** Center of the footpad sole, unloaded [m]; z is 0 on the footpad plane. */
  readonly footpad: BodyPoint;
  /** Where the strut meets the body [m]; the leg crushes along the line from footpad to hip. */
  readonly hip: BodyPoint;
  /** [m] */
  readonly footpadDiameter: number;
  /** Axial stiffness before the first stage crushes [N/m]. */
  readonly stiffness: number;
  /** Honeycomb stages in the order in which they crush; forces do not decrease. At least one. */
  readonly stages: readonly CrushStage[];
  /** Stiffness once all stages are used up [N/m]. */
  readonly bottomedStiffness: number;
  /** Secondary (lateral) strut, when modeled: crush force [N] and stroke [m] across the primary. */
  readonly secondary?: CrushStage & { readonly stiffness: number };
}

export interface CrushStage {
  /** Axial force at which the stage crushes [N]. */
  readonly force: number;
  /** Length it can shorten by [m]. */
  readonly stroke: number;
}

export interface Engine {
  /** [N] */
  readonly maxThrust: number;
  /** Lowest thrust at which the engine burns [N]. */
  readonly minThrust: number;
  /** [s] */
  readonly specificImpulse: number;
  /** First-order lag of thrust behind command [s]. */
  readonly lag: number;
  /** Largest torque of the attitude thrusters about a lateral axis [N·m]. */
  readonly attitudeTorque: number;
}
