import type { Scorecard } from '../../engine/table/index.ts';
import type { TouchdownResult } from '../../engine/touchdown/index.ts';
import { SIMULATED } from '../text/en.ts';
import { meters } from '../text/numbers.ts';

/** How the simulation of the whole lander ends, in a word, and what a reader should make of it beside the play. */
export interface SimulatedWords {
  readonly ending: string;
  readonly note: string | undefined;
}

export function simulatedWords(simulated: TouchdownResult, { outcome }: Scorecard): SimulatedWords {
  const stood = outcome.startsWith('upright');
  const fell = outcome.startsWith('tipped');
  switch (simulated.outcome) {
    case 'upright':
      return { ending: SIMULATED.upright, note: fell ? SIMULATED.playFell : inside(simulated) };
    case 'overloaded':
      return { ending: SIMULATED.overloaded, note: inside(simulated) };
    case 'tipped downhill':
    case 'tipped uphill':
      return { ending: SIMULATED.tipped, note: stood ? SIMULATED.playStood : fell ? SIMULATED.alike : undefined };
    case 'timed out':
      return { ending: SIMULATED.timedOut, note: inside(simulated) };
  }
  return simulated.outcome satisfies never;
}

function inside({ leastMargin }: TouchdownResult): string {
  return SIMULATED.inside(meters(leastMargin.value));
}
