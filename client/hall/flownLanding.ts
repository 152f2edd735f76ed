import type { TableView } from '../../engine/table/index.ts';
import { MOST_POINTS, type PathPoint, type PhoneLanding } from '../../levels/index.ts';

/** How it ended, as the card of that descent has it: the contact that decided. */
export function landingOf({ scorecard }: TableView, path: readonly PathPoint[]): PhoneLanding {
  if (scorecard === undefined) throw new Error('A descent at rest has a card');
  const { outcome, contacts, worst } = scorecard;
  const contact = worst === undefined ? undefined : contacts[worst];
  if (contact === undefined) return { outcome, path };
  const { arrival, limit } = contact;
  return {
    outcome,
    path,
    contact: {
      speed: rounded(Math.abs(arrival.vx)),
      descentRate: rounded(arrival.descentRate),
      ...(limit?.tip !== undefined && { tip: rounded(limit.tip) }),
      ...(limit !== undefined && { upTo: rounded(limit.upTo) }),
    },
  };
}

/** Keeps a path of any length in a few points, the first and the last among them: when there are too many, every other one goes. */
export function keepPath(): { add(point: PathPoint): void; points(): readonly PathPoint[] } {
  let kept: PathPoint[] = [];
  let last: PathPoint | undefined;
  let stride = 1;
  let count = 0;
  return {
    add([x, height]) {
      last = [rounded(x), rounded(height)];
      if (count++ % stride !== 0) return;
      kept.push(last);
      if (kept.length < MOST_POINTS) return;
      kept = kept.filter((_, i) => i % 2 === 0);
      stride *= 2;
    },
    points: () => (last === undefined || kept.at(-1) === last ? kept : [...kept, last]),
  };
}

/** To the hundredth: finer than any drawing, and short to send. */
function rounded(value: number): number {
  return Math.round(100 * value) / 100;
}
