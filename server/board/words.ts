import { figure, shortAngle } from '../../engine/figures.ts';
import type { LeastTipFields, TipFields } from '../../engine/study/index.ts';

/** A limit in a sentence: '1.23 m/s', '0 m/s: it tips at any speed', 'none up to 8.2 m/s'. */
export function limitWords({ tip, tipUpTo }: TipFields): string {
  if (tip === null) return `none up to ${figure(tipUpTo, 1)} m/s`;
  return tip === 0 ? '0 m/s: it tips at any speed' : `${figure(tip, 2)} m/s`;
}

/** The headline of an arrival against its limit. */
export function standingWords(least: LeastTipFields, speed: number): string {
  const { tip, tipUpTo } = least;
  if (tip === null) return `Tips at no speed up to ${figure(tipUpTo, 1)} m/s; it arrives at ${figure(speed, 2)} m/s.`;
  if (tip === 0) return `Tips at any speed; it arrives at ${figure(speed, 2)} m/s.`;
  const share = `${figure((100 * speed) / tip, 0)} %`;
  const uses = speed <= tip ? `uses ${share} of that` : `is beyond that: ${share} of it`;
  return `Tips above ${figure(tip, 2)} m/s sideways; the arrival at ${figure(speed, 2)} m/s ${uses}.`;
}

/** Whether a leg is used up before it tips. */
export function gearWords({ gear, firstLimit }: TipFields): string {
  if (firstLimit !== 'gear' || gear === null) return '';
  return gear === 0
    ? 'A leg is used up even without sideways speed: that comes first.'
    : `A leg is used up from ${figure(gear, 2)} m/s: that comes first.`;
}

export function angleWords(degrees: number): string {
  return `${shortAngle(degrees)} deg`;
}

export function percentWords(share: number, decimals: number): string {
  return `${figure(100 * share, decimals)} %`;
}
