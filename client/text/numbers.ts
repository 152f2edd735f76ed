import type { UnitSystem } from '../settings/settings.ts';
import { settings } from '../settings/store.ts';

/**
 * Quantities as people read them: few figures, always with the unit, a true minus sign, no thousands of digits. What comes in is SI; what is
 * written is in the units that this viewer chose. Angles, seconds and shares are the same in both.
 */

const MINUS = '−';
const THIN = '\u202f';

/** A unit: its sign, and how much of the SI unit it is. */
interface Unit {
  readonly sign: string;
  readonly size: number;
}

/** International foot and avoirdupois pound, exact by definition. */
const FOOT = 0.3048;
const POUND = 0.45359237;

const UNITS = {
  si: {
    length: { sign: 'm', size: 1 },
    speed: { sign: 'm/s', size: 1 },
    acceleration: { sign: 'm/s²', size: 1 },
    mass: { sign: 'kg', size: 1 },
  },
  us: {
    length: { sign: 'ft', size: FOOT },
    speed: { sign: 'ft/s', size: FOOT },
    acceleration: { sign: 'ft/s²', size: FOOT },
    mass: { sign: 'lb', size: POUND },
  },
} as const satisfies Record<UnitSystem, Record<string, Unit>>;

type Quantity = keyof (typeof UNITS)['si'];

/** The unit of a quantity for this viewer. */
export function unitOf(quantity: Quantity): Unit {
  return UNITS[settings().units][quantity];
}

function written(value: number, unit: Unit, digits: number): string {
  return `${decimal(value / unit.size, digits)}${THIN}${unit.sign}`;
}

export function decimal(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  // nothing is shown as a negative zero
  return value < 0 && Number(text) !== 0 ? `${MINUS}${text}` : text;
}

/** [m]; one figure after the point up to a hundred units, unless said otherwise. */
export function distance(value: number, digits?: 0 | 1 | 2): string {
  const unit = unitOf('length');
  return written(value, unit, digits ?? (Math.abs(value / unit.size) < 99.95 ? 1 : 0));
}

/** How far off something may be to either side [m]. */
export function within(reach: number): string {
  return `±${THIN}${distance(reach)}`;
}

/** A length that is known only so roughly [m]: '10 ± 21 m'. */
export function about(value: number, reach: number, digits: 0 | 1 = 0): string {
  const unit = unitOf('length');
  return `${decimal(value / unit.size, digits)} ± ${written(reach, unit, digits)}`;
}

/** [m/s], two figures after the point where margins are decided, one elsewhere. */
export function speed(value: number, digits: 1 | 2 = 2): string {
  return written(value, unitOf('speed'), digits);
}

/** A quantity [SI] without its unit, which stands beside it. */
export function bare(quantity: Quantity, value: number, digits: 0 | 1 | 2 = 2): string {
  return decimal(value / unitOf(quantity).size, digits);
}

/** [rad] shown in degrees. */
export function degrees(radians: number, digits: 0 | 1 = 1): string {
  return `${decimal(inDegrees(radians), digits)}°`;
}

/** [deg] */
export function inDegrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

/** A share shown in whole percent. */
export function percent(share: number): string {
  return `${decimal(share * 100, 0)}${THIN}%`;
}

/** [kg] */
export function mass(value: number): string {
  return written(value, unitOf('mass'), 0);
}

/** [s], whole. */
export function seconds(value: number): string {
  return `${decimal(value, 0)}${THIN}s`;
}

/** [s], to a tenth. */
export function tenthsOfSeconds(value: number): string {
  return `${decimal(value, 1)}${THIN}s`;
}

/** [m/s²] */
export function acceleration(value: number): string {
  return written(value, unitOf('acceleration'), 2);
}

/** Minutes and seconds, such as '01:52'. */
export function clock(totalSeconds: number): string {
  const whole = Math.max(0, Math.floor(totalSeconds));
  const [minutes, rest] = [Math.floor(whole / 60), whole % 60].map((part) => String(part).padStart(2, '0'));
  return `${minutes}:${rest}`;
}

/** A moment on the path flown, in whole seconds since the start. */
export function trailTime(since: number): string {
  return `${since}${THIN}s`;
}
