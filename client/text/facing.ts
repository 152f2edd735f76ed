/** What a person reads of turning the lander about its long axis. A step brings the next edge of its footprint to the right; steps count from how it started, to the left seen from above. */

export function stepWords(steps: number): string {
  if (steps === 0) return 'as it started';
  const count = Math.abs(steps);
  return `${count} ${count === 1 ? 'step' : 'steps'} ${steps > 0 ? 'left' : 'right'}`;
}
