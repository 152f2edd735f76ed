/**
 * Shear and bending moment of a straight beam under transverse loads in equilibrium.
 *
 *   V(y) = Σ forces left of y,   M(y) = Σ force × arm left of y           statics of a cut, [Hibbeler2018] ch. 6
 *
 * Forces are positive upward; M > 0 where the beam sags (tension below). y runs along the beam from any origin [m].
 */

export type BeamLoad =
  /** [N] at y [m]. */
  | { readonly kind: 'point'; readonly at: number; readonly force: number }
  /** Load per length that changes linearly between its ends [N/m]; from < to. */
  | {
      readonly kind: 'line';
      readonly from: number;
      readonly to: number;
      readonly atFrom: number;
      readonly atTo: number;
    };

export interface BeamExtremes {
  /** Moment of the largest magnitude, with its sign [N·m]. */
  readonly moment: { readonly value: number; readonly at: number };
  /** Shear of the largest magnitude, with its sign [N]. */
  readonly shear: { readonly value: number; readonly at: number };
}

/** Moment of all loads left of y about y [N·m]. */
export function momentAt(loads: readonly BeamLoad[], y: number): number {
  let sum = 0;
  for (const load of loads) {
    if (load.kind === 'point') {
      if (y > load.at) sum += load.force * (y - load.at);
    } else if (y > load.from) {
      const { s, slope } = reached(load, y);
      sum +=
        (y - load.from) * (load.atFrom * s + (slope * s * s) / 2) -
        ((load.atFrom * s * s) / 2 + (slope * s * s * s) / 3);
    }
  }
  return sum;
}

/** Sum of all loads left of y, those at y included when `after` [N]. */
export function shearAt(loads: readonly BeamLoad[], y: number, after: boolean): number {
  let sum = 0;
  for (const load of loads) {
    if (load.kind === 'point') {
      if (y > load.at || (after && y === load.at)) sum += load.force;
    } else if (y > load.from) {
      const { s, slope } = reached(load, y);
      sum += load.atFrom * s + (slope * s * s) / 2;
    }
  }
  return sum;
}

/** Largest moment and shear, exactly: at loads, and where shear or load per length change sign between them. */
export function beamExtremes(loads: readonly BeamLoad[]): BeamExtremes {
  const ends = breakpoints(loads);
  let moment = { value: 0, at: ends[0] ?? 0 };
  let shear = { value: 0, at: ends[0] ?? 0 };
  for (const [i, from] of ends.entries()) {
    const to = ends[i + 1] ?? from;
    for (const at of [from, ...turningPoints(loads, from, to)]) {
      const value = momentAt(loads, at);
      if (Math.abs(value) > Math.abs(moment.value)) moment = { value, at };
      for (const after of [false, true]) {
        const force = shearAt(loads, at, after);
        if (Math.abs(force) > Math.abs(shear.value)) shear = { value: force, at };
      }
    }
  }
  return { moment, shear };
}

/** Where a load starts, ends or stands, ascending [m]. */
export function breakpoints(loads: readonly BeamLoad[]): readonly number[] {
  const all = loads.flatMap((load) => (load.kind === 'point' ? [load.at] : [load.from, load.to]));
  return [...new Set(all)].toSorted((a, b) => a - b);
}

/** Inside a span without breakpoints: zeros of the shear (quadratic) and of the load per length (linear). */
function turningPoints(loads: readonly BeamLoad[], from: number, to: number): readonly number[] {
  const length = to - from;
  if (!(length > 0)) return [];
  const atFrom = lineLoadAt(loads, from, from + length / 2);
  const atTo = lineLoadAt(loads, to, from + length / 2);
  const slope = (atTo - atFrom) / length;
  const shear = shearAt(loads, from, true);
  const places = slope === 0 ? [] : [-atFrom / slope];
  // shear + atFrom s + slope s²/2 = 0
  if (slope === 0) {
    if (atFrom !== 0) places.push(-shear / atFrom);
  } else {
    const root = Math.sqrt(Math.max(0, atFrom * atFrom - 2 * slope * shear));
    // without cancellation: a slope that is mere rounding must not move the zero of the shear
    const q = atFrom < 0 ? root - atFrom : -(root + atFrom);
    places.push(q / slope, (2 * shear) / q);
  }
  return places.filter((s) => s > 0 && s < length).map((s) => from + s);
}

/** Load per length at y, of the line loads that cover `inside`. */
function lineLoadAt(loads: readonly BeamLoad[], y: number, inside: number): number {
  let sum = 0;
  for (const load of loads) {
    if (load.kind !== 'line' || inside <= load.from || inside >= load.to) continue;
    sum += load.atFrom + ((load.atTo - load.atFrom) * (y - load.from)) / (load.to - load.from);
  }
  return sum;
}

/** How much of a line load lies left of y [m], and how its load per length grows [N/m²]. */
function reached(
  load: BeamLoad & { readonly kind: 'line' },
  y: number,
): { readonly s: number; readonly slope: number } {
  return { s: Math.min(y, load.to) - load.from, slope: (load.atTo - load.atFrom) / (load.to - load.from) };
}
