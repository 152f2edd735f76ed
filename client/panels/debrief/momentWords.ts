import type { Drill } from '../../../engine/drill/index.ts';
import type { ReviewMoment } from '../../../engine/review/index.ts';
import { MOMENT_WORDS } from '../../text/debrief.ts';
import { SEAT_NAMES } from '../../text/en.ts';
import { clock } from '../../text/numbers.ts';

/** What happened at a moment, in words; `drill` names its injects, where it is known. */
export function momentWords({ kind, inject, seat, text }: ReviewMoment, drill: Drill | undefined): string {
  const words = MOMENT_WORDS[kind](inject === undefined ? (text ?? '') : injectWords(inject, drill));
  return seat === undefined ? words : `${words} (${SEAT_NAMES[seat]})`;
}

export function injectWords(inject: string, drill: Drill | undefined): string {
  return drill?.events.find(({ id }) => id === inject)?.title ?? inject;
}

/** With the time from the start of the descent. */
export function timedMoment(moment: ReviewMoment, drill: Drill | undefined): string {
  return `${clock(moment.after)} ${momentWords(moment, drill)}`;
}
