import { assert } from '../assert.ts';
import type { Bulk } from './motion.ts';

/**
 * Mass properties of the section by propellant left, at equal steps from empty to the load at the start.
 *
 * Mass is exact; height of the center and inertia are taken straight between rows, which for tanks that drain evenly is
 * within 1e-5 of the exact value (they are low-order polynomials over the total mass).
 */
export interface MassTable {
  /** With no usable propellant left [kg]. */
  readonly leastMass: number;
  /** At the last row [kg]. */
  readonly fullPropellant: number;
  /** [m] */
  readonly centerHeights: readonly number[];
  /** [kg·m²] */
  readonly inertias: readonly number[];
}

/** Writes what the lander weighs with this much propellant [kg] into `bulk`. */
export function readMassTable(table: MassTable, propellant: number, bulk: Bulk): void {
  const last = table.centerHeights.length - 1;
  const place = table.fullPropellant > 0 ? (propellant / table.fullPropellant) * last : 0;
  assert(place >= 0 && place <= last, 'propellant must lie between nothing and the load at the start');
  const row = Math.min(Math.floor(place), Math.max(0, last - 1));
  const share = place - row;
  bulk.mass = table.leastMass + propellant;
  bulk.centerHeight = between(table.centerHeights, row, share);
  bulk.inertia = between(table.inertias, row, share);
}

function between(values: readonly number[], row: number, share: number): number {
  const low = values[row] ?? 0;
  return low + share * ((values[row + 1] ?? low) - low);
}
