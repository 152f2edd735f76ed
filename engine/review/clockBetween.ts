import type { Pace } from '../table/planChoice.ts';
import type { Conduct } from '../table/tableTypes.ts';
import type { LogLine } from '../talk/talk.ts';

/**
 * How the clock was run between two moments, where that keeps a time from being compared with others. hold: it stood, by a hold, a stop or to talk. turns: it
 * ran by turns. pace: it ran at another pace than the drill asks for.
 */
export const CLOCK_SIGNS = ['hold', 'turns', 'pace'] as const;
export type ClockSign = (typeof CLOCK_SIGNS)[number];

/** How a descent began: what stood before the first line of its log. */
export interface ClockAtStart {
  readonly pace: Pace;
  readonly conduct: Conduct;
}

/** Between a tick of the descent and a line of the log. */
export function clockBetween(
  log: readonly LogLine[],
  begun: ClockAtStart,
  { since, line, asked }: { readonly since: number; readonly line: number; readonly asked: Pace },
): readonly ClockSign[] {
  let { pace, conduct } = begun;
  const signs = new Set<ClockSign>();
  const look = () => {
    if (pace !== asked) signs.add('pace');
    if (conduct === 'turns') signs.add('turns');
  };
  for (const { descentTick, what } of log.slice(0, line)) {
    const isWithin = descentTick >= since;
    // what stood when the span began counts too
    if (isWithin) look();
    if (what.kind === 'setPace') pace = what.pace;
    if (what.kind === 'setConduct') conduct = what.conduct;
    if (isWithin && STANDS.some((kind) => kind === what.kind)) signs.add('hold');
  }
  look();
  return CLOCK_SIGNS.filter((sign) => signs.has(sign));
}

/** What makes the clock stand. Another way to play time is begun on hold. */
const STANDS = ['hold', 'stop', 'setConduct'] as const;
