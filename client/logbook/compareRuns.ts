import type { Scorecard } from '../../engine/table/index.ts';
import { TICK_RATE } from '../../engine/world/index.ts';
import { decidingContact, verdictOf } from '../panels/verdict.ts';
import { FORK } from '../text/en.ts';
import { MEASURES } from '../text/debrief.ts';
import { RUN } from '../text/logbook.ts';
import { mass, percent, seconds, speed } from '../text/numbers.ts';
import type { PlayedRun } from './playedRun.ts';

/** One thing in which two runs are held against each other, in words. */
interface Compared {
  readonly name: string;
  readonly first: string;
  readonly second: string;
  readonly differs: boolean;
}

/** How two runs differ: what was flown, how it ended, and the contact that decided. */
export function compareRuns(first: PlayedRun, second: PlayedRun): readonly Compared[] {
  const [one, other] = [factsOf(first), factsOf(second)];
  return one.map(([name, value], i) => {
    const beside = other[i]?.[1] ?? RUN.none;
    return { name, first: value, second: beside, differs: value !== beside };
  });
}

function factsOf({ track: { card, points }, plan }: PlayedRun): readonly (readonly [string, string])[] {
  const last = points.at(-1)?.truth;
  const contact = card && decidingContact(card)?.contact;
  const touchdown = last?.touchdown;
  return [
    [RUN.title, plan.drill?.title ?? plan.title],
    [RUN.world, plan.worldId],
    [RUN.outcome, card === undefined || last === undefined ? RUN.none : verdictOf(card, last).headline],
    [RUN.contactAfter, touchdown === undefined ? RUN.none : seconds(touchdown.tick / TICK_RATE)],
    [FORK.sideways, contact === undefined ? RUN.none : speed(Math.abs(contact.arrival.vx))],
    [FORK.descentRate, contact === undefined ? RUN.none : speed(contact.arrival.descentRate)],
    [RUN.shareOfLimit, shareOf(card)],
    [RUN.propellant, card === undefined ? RUN.none : mass(card.propellantLeft)],
    ...doubts(card),
  ];
}

function shareOf(card: Scorecard | undefined): string {
  const share = card && decidingContact(card)?.contact.utilisation;
  return share === undefined ? RUN.none : percent(share);
}

function doubts(card: Scorecard | undefined): readonly (readonly [string, string])[] {
  const [failure] = card?.failures ?? [];
  return [
    [
      RUN.doubtedAfter,
      failure === undefined || failure.doubtedAfter === undefined
        ? MEASURES.notObserved
        : seconds(failure.doubtedAfter),
    ],
  ];
}
