import type { PhoneLanding } from '../../levels/index.ts';
import { FLIGHT, VOTE } from '../text/hall.ts';
import { metersPerSecond } from '../workbench/figures.ts';
import { endingOf } from './landingsDrawing.ts';
import { sayLanding, type AskedVote } from './voteRequests.ts';

/** A phone that comes so long after the start does not fly any more [ms]. */
const LATE_MS = 10_000;

const loadFlight = () => import('./phoneFlight.ts');

/** Takes one phone through the flight of its hall: counts down, flies, says how it ended. */
interface PhonePilot {
  /** It flies or counts down, or its landing is not known to the hall yet. */
  readonly isFlying: boolean;
  /** What it takes to fly is fetched ahead of the start. */
  prepare(): void;
  /** What the hall asks now, once the presenter has begun the flight. */
  follow(seen: AskedVote, flies: boolean): void;
  /** Nothing of this flight goes on. */
  end(): void;
}

export function createPhonePilot(options: {
  readonly holder: HTMLElement;
  readonly code: string;
  readonly voter: string;
  readonly say: (words: string) => void;
  /** Lays the page of the vote again. */
  readonly back: () => void;
}): PhonePilot {
  const { holder, code, voter, say, back } = options;
  let number = 0;
  let isFlying = false;
  let flight: { end(): void } | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const land = async (landed: number, landing: PhoneLanding) => {
    say(FLIGHT.tells);
    const answer = await sayLanding(code, { number: landed, voter, landing }, () => landed === number);
    if (landed !== number) return;
    isFlying = false;
    if (answer.ok) say(FLIGHT.yours(sumOf(landing)));
    else say(answer.error === '' ? FLIGHT.untold : answer.error);
  };
  const start = async ({ number: flown, descent }: AskedVote) => {
    const { flyForHall } = await loadFlight();
    if (flown !== number || descent === undefined) return;
    flight = flyForHall(holder, descent, (landing) => {
      flight = undefined;
      back();
      isFlying = landing !== undefined;
      if (landing === undefined) say(FLIGHT.leftIt);
      else void land(flown, landing);
    });
  };
  const countDown = (seen: AskedVote, startsAtMs: number) => {
    const leftMs = startsAtMs - performance.now();
    if (leftMs <= 0) {
      start(seen).catch(() => {
        isFlying = false;
        say(VOTE.lost);
      });
      return;
    }
    say(FLIGHT.startsIn(Math.ceil(leftMs / 1000)));
    timer = setTimeout(() => countDown(seen, startsAtMs), leftMs % 1000 || 1000);
  };
  return {
    get isFlying() {
      return isFlying;
    },
    prepare: () => void loadFlight().catch(() => undefined),
    follow(seen, flies) {
      if (seen.number === number) return;
      number = seen.number;
      const { startsInMs = 0 } = seen;
      isFlying = flies && startsInMs > -LATE_MS;
      if (isFlying) countDown(seen, performance.now() + startsInMs);
      else say(FLIGHT.hasBegun);
    },
    end() {
      clearTimeout(timer);
      number = 0;
      isFlying = false;
      flight?.end();
    },
  };
}

/** Of the own landing, for whoever flew it. */
function sumOf(landing: PhoneLanding): string {
  const { contact } = landing;
  const ending = FLIGHT.own[endingOf(landing)];
  if (contact === undefined) return ending;
  const tip = contact.tip === undefined ? [] : [FLIGHT.tip(metersPerSecond(contact.tip))];
  return [ending, FLIGHT.speed(metersPerSecond(contact.speed)), ...tip].join(' ');
}
