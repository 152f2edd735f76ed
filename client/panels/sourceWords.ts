import type { SourceReading } from '../../engine/table/index.ts';
import { CONTROLS } from '../text/en.ts';
import { acceleration, bare, decimal, degrees, distance, inDegrees, mass, speed } from '../text/numbers.ts';

const NOTHING = '–';

/** What a source says, in its own words: the raw value with its unit. */
export function sourceValue({ source, values }: Pick<SourceReading, 'source' | 'values'>): string {
  const [first, second, third] = values;
  if (first === undefined) return NOTHING;
  switch (source) {
    case 'altimeter':
      return distance(first);
    case 'velocityRadar':
      return second === undefined
        ? NOTHING
        : `${across(first, (value) => bare('speed', value))}, ${along(second, speed)}`;
    case 'surfaceCamera':
      return across(first, speed);
    case 'attitudeReference':
      return `${degrees(Math.abs(first))}${side(first)}`;
    case 'inertialUnit':
      if (second === undefined || third === undefined) return NOTHING;
      return `${across(first, (value) => bare('acceleration', value))}, ${along(second, acceleration)}, ${turning(third)}`;
    case 'propellantGauge':
      return mass(first);
    case 'contactProbes':
    case 'legIndications':
      return values.map((value) => decimal(value, 0)).join(' ');
  }
  return source satisfies never;
}

/** How old a sample is. */
export function ageWords(age: number | undefined): string {
  return age === undefined ? '' : `${decimal(age, 1)}\u202fs old`;
}

/** Signed, in standard deviations. */
export function disagreementWords(disagreement: number | undefined): string {
  if (disagreement === undefined) return '';
  const figure = decimal(disagreement, 1);
  return `${figure.startsWith('−') || Number(figure) === 0 ? '' : '+'}${figure}\u202fσ`;
}

/** Its way first, so that two beside each other do not read as from one to the other. */
function across(value: number, words: (value: number) => string): string {
  return withWay(words(Math.abs(value)), value > 0 ? '→ ' : '← ');
}

function along(value: number, words: (value: number) => string): string {
  return withWay(words(Math.abs(value)), value > 0 ? '↑ ' : '↓ ');
}

/** What reads as 0.00 has no way. */
function withWay(words: string, way: string): string {
  return `${Number.parseFloat(words) === 0 ? '' : way}${words}`;
}

function turning(rate: number): string {
  return `${decimal(Math.abs(inDegrees(rate)), 1)}°/s${side(rate)}`;
}

function side(counterclockwise: number): string {
  if (Math.abs(inDegrees(counterclockwise)) < 0.05) return '';
  return ` ${counterclockwise > 0 ? CONTROLS.left : CONTROLS.right}`;
}
