import type { PivotBody } from '../pivot/tripLimit.ts';
import { contactLimit } from '../world/contactLimit.ts';
import type { TouchdownState } from '../world/descent.ts';
import { readMassTable } from '../world/massTable.ts';
import type { SectionLander } from '../world/sectionLander.ts';
import { bandOf, calloutOf } from './marginBand.ts';
import type { Callout, MarginBand } from './tableTypes.ts';

/** How far one contact state stays inside the limit for that very state. */
export interface ContactMargin {
  /** +1 to the right, −1 to the left. */
  readonly direction: 1 | -1;
  /** Horizontal speed limits in the direction of travel [m/s]; absent where the slope alone overturns the lander. */
  readonly limit?: { readonly plastic: number; readonly lossless?: number };
  /** Limit less actual speed, to the side on which there is less [m/s]; absent with the limit. */
  readonly speedMargin?: number;
  /** Actual over limit [-]; absent where no forward speed is allowed at all. */
  readonly utilisation?: number;
  readonly band: MarginBand;
  readonly callout: Callout;
}

/** The section as a body about to pivot, with as much mass as it has at the contact [kg]. */
export function pivotBodyAt(section: SectionLander, mass: number): PivotBody {
  const bulk = { mass: 0, centerHeight: 0, inertia: 0 };
  const { leastMass, fullPropellant } = section.masses;
  // mass less least mass leaves a rounding error on either end of what the table holds
  readMassTable(section.masses, Math.max(0, Math.min(fullPropellant, mass - leastMass)), bulk);
  return { ...bulk, halfStance: section.halfStance };
}

/** Margin of a body in one contact state: bands and callouts as the product words them. */
export function contactMargin(body: PivotBody, gravity: number, contact: TouchdownState): ContactMargin {
  const { direction, ahead, behind, utilisation } = contactLimit(body, gravity, contact);
  const band = bandOf(utilisation);
  const verdict = { direction, band, callout: calloutOf(band) };
  if (ahead.kind === 'cannotStand' || behind.kind === 'cannotStand') return verdict;
  const speed = Math.abs(contact.vx);
  const { plastic, lossless } = ahead;
  return {
    ...verdict,
    limit: { plastic: plastic.horizontal, ...(lossless && { lossless: lossless.horizontal }) },
    speedMargin: Math.min(plastic.horizontal - speed, behind.plastic.horizontal + speed),
    ...(utilisation < Infinity && { utilisation }),
  };
}
