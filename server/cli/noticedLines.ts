import type { Scorecard } from '../../engine/table/index.ts';

/** What the crew made of each failure: when it was doubted or answered, or that nobody did. */
export function noticedLines({ failures = [], defects = [] }: Scorecard): readonly string[] {
  return [
    ...failures.map(({ source, doubtedAfter }) => noticeLine(source, 'doubted', doubtedAfter)),
    ...defects.map(({ kind, answeredAfter }) => noticeLine(kind, 'answered', answeredAfter)),
  ];
}

function noticeLine(what: string, done: string, after: number | undefined): string {
  return after === undefined ? `noticed: ${what}, by nobody` : `noticed: ${what}, ${done} ${after.toFixed(1)} s later`;
}
