import type { Scorecard } from '../../engine/table/index.ts';

/** What the crew made of each failure: when it was doubted or answered, or that nobody did; and how the lander was turned about its long axis. */
export function noticedLines({ failures = [], defects = [], facing }: Scorecard): readonly string[] {
  return [
    ...failures.map(({ source, doubtedAfter }) => noticeLine(source, 'doubted', doubtedAfter)),
    ...defects.map(({ kind, answeredAfter }) => noticeLine(kind, 'answered', answeredAfter)),
    ...(facing === undefined ? [] : [turnedLine(facing)]),
  ];
}

function noticeLine(what: string, done: string, after: number | undefined): string {
  return after === undefined ? `noticed: ${what}, by nobody` : `noticed: ${what}, ${done} ${after.toFixed(1)} s later`;
}

function turnedLine({ steps, orderedAfter, doneAfter }: NonNullable<Scorecard['facing']>): string {
  const done = doneAfter === undefined ? 'not complete before the ground' : `done at ${doneAfter.toFixed(1)} s`;
  const way = steps < 0 ? 'clockwise' : 'counter-clockwise';
  return `turned: by ${Math.abs(steps)} ${way}, seen from above, ordered at ${orderedAfter.toFixed(1)} s, ${done}`;
}
