import type { Side } from '../panels/legPlaces.ts';

/** What a person reads of turning the lander about its long axis. Left and right are as seen from above: left is counter-clockwise. A step brings the next edge of the footprint to the right. */

export const TURN_PART = {
  heading: 'Turn the lander (seen from above)',
  left: (angle: string) => `Left ${angle}`,
  right: (angle: string) => `Right ${angle}`,
  uphill: 'uphill',
  asStarted: 'Stands as it started.',
  turned: (angle: string, way: 'left' | 'right') => `Turned ${angle} ${way}.`,
  turning: (angle: string, way: 'left' | 'right') => `Turning to ${angle} ${way}.`,
  turningBack: 'Turning back.',
  takes: (turn: string) => `A turn takes ${turn}.`,
  togo: (left: string) => `${left} to go.`,
  ground: (until: string) => `Ground in ${until}.`,
  down: 'Down: it turns no more.',
  weakLegs: (legs: readonly number[], where: 'uphill' | 'downhill' | 'amid') =>
    `${legs.length === 1 ? 'Leg' : 'Legs'} ${legs.join(', ')}: ${WEAK_AT[where]}`,
  stands: (leg: number, side: Side) => `leg ${leg} ${SIDES[side]}`,
  inWords: (places: readonly string[], uphill: 'left' | 'right' | undefined) =>
    `From above: ${places.join(', ')}.${uphill === undefined ? '' : ` Uphill is to the ${uphill}.`}`,
  notLocked: (place: string) => `${place}, not locked`,
} as const;

const WEAK_AT = {
  uphill: 'uphill, where a weak leg does best.',
  downhill: 'downhill. A weak leg does better uphill.',
  amid: 'neither uphill nor downhill. A weak leg does better uphill.',
} as const;

const SIDES: Readonly<Record<Side, string>> = { left: 'on the left', right: 'on the right', amid: 'in the middle' };

/** For the crew and the card. */
export const TURNED = {
  ordered: (steps: number, now: string) => `turn ${stepWords(steps)}${now}`,
  now: (angle: string, way: 'left' | 'right') => `, now ${angle} ${way}`,
  done: (steps: number, ordered: string, done: string) =>
    `It was turned about its long axis: ordered ${ordered} after the start, ${stepWords(steps)} from ${done} on.`,
  notDone: (ordered: string) =>
    `A turn about its long axis was ordered ${ordered} after the start; it landed before a step was complete.`,
} as const;

export function stepWords(steps: number): string {
  if (steps === 0) return 'as it started';
  const count = Math.abs(steps);
  return `${count} ${count === 1 ? 'step' : 'steps'} ${steps > 0 ? 'left' : 'right'}`;
}
