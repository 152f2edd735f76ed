/** Quantities as people read them: few figures, always with the unit, a true minus sign, no thousands of digits. */

const MINUS = '−';
const THIN = '\u202f';

export function decimal(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  // nothing is shown as a negative zero
  return value < 0 && Number(text) !== 0 ? `${MINUS}${text}` : text;
}

/** [m] */
export function meters(value: number): string {
  return `${decimal(value, Math.abs(value) < 99.95 ? 1 : 0)}${THIN}m`;
}

/** How far off something may be to either side [m]. */
export function within(reach: number): string {
  return `±${THIN}${meters(reach)}`;
}

/** A length that is known only so roughly [m]: '10 ± 21 m'. */
export function about(value: number, reach: number): string {
  return `${decimal(value, 0)} ± ${decimal(reach, 0)}${THIN}m`;
}

/** [m/s], two figures after the point where margins are decided, one elsewhere. */
export function speed(value: number, digits: 1 | 2 = 2): string {
  return `${decimal(value, digits)}${THIN}m/s`;
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
export function kilograms(value: number): string {
  return `${decimal(value, 0)}${THIN}kg`;
}

/** [s], whole. */
export function seconds(value: number): string {
  return `${decimal(value, 0)}${THIN}s`;
}

/** [m/s²] */
export function acceleration(value: number): string {
  return `${decimal(value, 2)}${THIN}m/s²`;
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
