import type { ClipFrame } from '../../engine/replay/index.ts';
import type { TableView } from '../../engine/table/index.ts';
import { TICK_RATE, type DescentState } from '../../engine/world/index.ts';
import { readingBetween } from '../net/index.ts';
import type { LastBelief } from '../scenes/belief.ts';
import { CLIP } from '../text/debrief.ts';
import type { LookBack } from './lookBack.ts';

/** A moment of a clip as it is drawn: in ink what was so, in pencil what was believed. */
export interface ShownMoment {
  /** In ink; a new object for each moment. */
  readonly view: TableView;
  /** The same for figures, which change a few times a second. */
  readonly figures: TableView;
  readonly belief: LastBelief | undefined;
}

/** The clip of the table in this page, in step with every other screen. */
export interface ClipShow {
  /** Takes up, goes on with, or ends what is shown at the table. */
  follow(view: TableView): void;
  /** In words, of a clip that failed. */
  readonly whyNot: string;
  readonly state: 'none' | 'loading' | 'failed' | 'playing' | 'ended';
  /** What the seat was shown at the moment that is played; undefined while there is none. */
  frame(): ClipFrame | undefined;
  moment(): ShownMoment | undefined;
}

type Clip = NonNullable<NonNullable<TableView['review']>['clip']>;

/** A screen that is off by less goes on as it is [s]. */
const IN_STEP = 0.3;
/** Slow ink lasts so long [s], at this pace [-], and begins so long before the contact in the descent's time [s]. */
const SLOW = 0.5;
const SLOW_PACE = 0.25;
const BEFORE = 0.03;
/** Frames between two changes of the figures. */
const FIGURES_EVERY = 3;

export function createClipShow(lookBack: () => LookBack, now: () => number = () => performance.now()): ClipShow {
  let key = '';
  let clip: Clip | undefined;
  let frames: readonly ClipFrame[] | undefined;
  let isFailed = false;
  let startedMs = 0;
  /** Moment of the first contact [s]; undefined while the clip has none. */
  let contact: number | undefined;
  let figures: { readonly frame: ClipFrame; readonly view: TableView } | undefined;

  const at = (): number => {
    if (clip === undefined) return 0;
    const played = clip.from + (now() - startedMs) / 1000;
    return Math.min(clip.to, contact === undefined || contact < clip.from ? played : inSlowInk(played, contact));
  };
  const indexAt = (seconds: number): number => {
    const last = frames?.findLastIndex(({ after }) => after <= seconds) ?? -1;
    return Math.max(0, last);
  };
  const load = (wanted: Clip, wantedKey: string) => {
    frames = undefined;
    contact = undefined;
    isFailed = false;
    const { from, to, seat } = wanted;
    void lookBack()
      .clip({ from, to, ...(seat && { seat }) })
      .then((cut) => {
        if (key !== wantedKey) return;
        frames = cut;
        contact = contactIn(cut);
        isFailed = cut === undefined || cut.length === 0;
      });
  };

  return {
    follow({ review }) {
      const next = review?.clip;
      const nextKey = next === undefined ? '' : `${next.from} ${next.to} ${next.seat ?? ''}`;
      clip = next;
      const started = next === undefined ? 0 : now() - 1000 * next.playedFor;
      const isStartedAnew = key !== nextKey || Math.abs(started - startedMs) > 1000 * IN_STEP;
      if (isStartedAnew) startedMs = started;
      // one that could not be had is tried for again where it is played again
      if (key === nextKey && !(isFailed && isStartedAnew)) return;
      key = nextKey;
      figures = undefined;
      if (next === undefined) frames = undefined;
      else load(next, nextKey);
    },
    get whyNot() {
      return lookBack().refusal ?? CLIP.unread;
    },
    get state() {
      if (clip === undefined) return 'none';
      if (isFailed) return 'failed';
      if (frames === undefined) return 'loading';
      return at() >= Math.min(clip.to, frames.at(-1)?.after ?? 0) ? 'ended' : 'playing';
    },
    frame: () => frames?.[indexAt(at())],
    moment() {
      const seconds = at();
      const index = indexAt(seconds);
      const before = frames?.[index];
      if (frames === undefined || before === undefined) return undefined;
      const figured = frames[index - (index % FIGURES_EVERY)] ?? before;
      if (figures?.frame !== figured) figures = { frame: figured, view: inked(figured, figured.truth) };
      return momentBetween(before, frames[index + 1] ?? before, seconds, figures.view);
    },
  };
}

/** When the lander met the ground first, as the frames have it [s]. */
function contactIn(frames: readonly ClipFrame[] | undefined): number | undefined {
  const down = frames?.find(({ truth }) => truth.touchdown !== undefined);
  if (down?.truth.touchdown === undefined) return undefined;
  return down.after - (down.truth.tick - down.truth.touchdown.tick) / TICK_RATE;
}

/**
 * Moment of the descent that is shown when so much of it would have been played [s]: from just before the first contact on half a second of the
 * page's time is slow ink, at a quarter of the pace. The same on every screen.
 */
export function inSlowInk(played: number, contact: number): number {
  const slow = Math.max(0, played - (contact - BEFORE));
  return played - (1 - SLOW_PACE) * Math.min(slow, SLOW);
}

function momentBetween(before: ClipFrame, after: ClipFrame, seconds: number, figures: TableView): ShownMoment {
  const span = after.after - before.after;
  const share = span > 0 ? Math.min(1, Math.max(0, (seconds - before.after) / span)) : 0;
  const between = (one: DescentState, other: DescentState) => ({
    ...readingBetween(one, other, share),
    tick: one.tick + (other.tick - one.tick) * share,
  });
  const { map, drawnIn } = before.view;
  const belief =
    drawnIn === 'pencil' && map !== undefined
      ? { map, state: between(before.view.flight, after.view.flight) }
      : undefined;
  return { view: inked(before, between(before.truth, after.truth)), figures, belief };
}

/** The frame as it was in truth, to be drawn over the true ground. */
function inked({ view, margin }: ClipFrame, flight: DescentState): TableView {
  const { map: _map, spread: _spread, ...shown } = view;
  return { ...shown, drawnIn: 'ink', flight, margin };
}
