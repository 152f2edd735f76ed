import { toRadians } from '../../engine/math/index.ts';
import type { FilmScene } from '../../levels/index.ts';
import { drawing, element, say } from '../panels/element.ts';
import { wantsStill } from '../settings/store.ts';
import { FILM, HALL_PAGE, VOTE } from '../text/hall.ts';
import { decimal } from '../text/numbers.ts';
import { drawSide, reachOf } from '../workbench/sideView.ts';
import type { WatchedTouchdown } from '../workbench/studies.ts';
import type { StudyThreads } from '../workbench/studyThreads.ts';
import { factsOf, touchdownOf } from './facts.ts';
import { lengthOf, LINGER, sampleAt } from './filmTime.ts';
import type { HallPart } from './hallPart.ts';
import type { VoteBooth } from './voteBooth.ts';

const SHEET = { width: 560, height: 460, unit: 1.7 } as const;

/** Of the arrow before anything moves, for 1 m/s [px]. */
const PER_SPEED = 44;

/** Presses of a key from end to end. */
const SCRUB_STEPS = 40;

/** Two or three touchdowns on one clock: how they end is said at the end only. */
export function createFilmPart(
  scene: FilmScene,
  threads: StudyThreads,
  booth: VoteBooth,
  changed: () => void,
): HallPart {
  const { shared, own } = factsOf(scene.arrivals);
  const reach = Math.max(...scene.arrivals.map(({ lander }) => reachOf(lander)));
  const frames = scene.arrivals.map((arrival, i) => {
    const picture = element('div', { class: 'hall-picture' });
    const verdict = element('p', { class: 'hall-verdict' }, HALL_PAGE.working);
    const votes = element('p', { class: 'hall-votes' });
    const node = element(
      'article',
      { class: 'hall-frame' },
      element('h2', {}, arrival.name),
      element('p', { class: 'hall-own' }, own[i]),
      picture,
      verdict,
      votes,
    );
    return { arrival, picture, verdict, votes, node };
  });
  const slider = element('input', {
    type: 'range',
    min: 0,
    max: LINGER,
    step: 'any',
    value: 0,
    'aria-label': FILM.time,
  });
  const noneVotes = element('span', {});
  const clock = element('span', { class: 'hall-clock' });
  const node = element(
    'div',
    { class: 'hall-film' },
    element(
      'div',
      { class: 'hall-frames', 'data-count': frames.length },
      ...frames.map((frame) => frame.node),
      scene.isVote ? booth.node : undefined,
    ),
    element('p', { class: 'hall-time' }, noneVotes, slider, clock),
  );
  let films: readonly (WatchedTouchdown | string)[] = [];
  let stage: 'loading' | 'question' | 'running' | 'seen' = 'loading';
  let timer = 0;

  /** Since the start of the touchdowns, and until nothing moves any more [s]. */
  let time = 0;
  let length = LINGER;

  const setTime = (to: number) => {
    time = Math.min(length, Math.max(0, to));
    slider.value = String(time);
  };
  const draw = () => {
    for (const [i, { arrival, picture, verdict }] of frames.entries()) {
      const film = films[i];
      const words = film === undefined ? HALL_PAGE.working : wordsOf(film, stage === 'seen');
      say(verdict, words);
      const samples = typeof film === 'object' ? (film.result.history ?? []) : [];
      if (samples.length === 0) continue;
      const now = sampleAt(samples, time);
      const sheet = { ...SHEET, reach, perSpeed: now === 0 ? PER_SPEED : 0 };
      const side = drawSide(arrival, samples, now, toRadians(arrival.slopeDeg), sheet);
      const label = FILM.drawing(arrival.name, stage === 'seen' ? words : FILM.notYet);
      picture.replaceChildren(drawing(side.markup, { viewBox: side.viewBox, label, class: 'hall-side' }));
    }
    const seconds = FILM.clock(decimal(time, 1));
    slider.setAttribute('aria-valuetext', seconds);
    say(clock, `${seconds}, ${FILM.pace(scene.pace)}`);
  };
  let counts: readonly number[] = [];
  /** Votes are taken while nothing is shown, and told when all is. */
  const poll = () => {
    if (!scene.isVote) return;
    booth.node.hidden = stage !== 'question' || time > 0;
    const choices = [...scene.arrivals.map(({ name }) => name), VOTE.none];
    if (stage === 'loading' || (stage === 'question' && time === 0))
      booth.open({ question: scene.question, choices }, { scan: VOTE.scan, count: (told) => VOTE.voted(sum(told)) });
    else
      booth.close((told) => {
        counts = told;
        showCounts();
      });
    showCounts();
  };
  const showCounts = () => {
    for (const [i, { votes }] of frames.entries())
      say(votes, stage === 'seen' && counts[i] !== undefined ? VOTE.voted(counts[i]) : '');
    const none = counts[frames.length];
    say(noneVotes, stage === 'seen' && none !== undefined ? `${VOTE.none}: ${VOTE.voted(none)}` : '');
  };
  const enter = (next: typeof stage) => {
    cancelAnimationFrame(timer);
    stage = next;
    poll();
    draw();
    changed();
  };
  const showEnd = () => {
    setTime(length);
    enter('seen');
  };
  const run = () => {
    enter('running');
    let last: number | undefined;
    const frame = (now: number) => {
      const passed = last === undefined ? 0 : Math.min(100, now - last) / 1000;
      last = now;
      setTime(time + passed * scene.pace);
      if (time >= length) {
        showEnd();
        return;
      }
      draw();
      timer = requestAnimationFrame(frame);
    };
    timer = requestAnimationFrame(frame);
  };
  /** Moved by hand: it stands there, and the end is the end. */
  const scrub = (to: number) => {
    if (stage === 'loading') return;
    setTime(to);
    if (time >= length) showEnd();
    else enter(stage === 'running' ? 'question' : stage);
  };
  slider.addEventListener('input', () => scrub(Number(slider.value)));
  threads.ask('films', scene.arrivals.map(touchdownOf), (answer, isDone) => {
    if (typeof answer === 'string') return;
    films = answer;
    length = Math.max(LINGER, ...films.map(lengthOf));
    slider.max = String(length);
    if (isDone) enter('question');
    else draw();
  });
  draw();
  poll();
  return {
    node,
    facts: shared,
    get isAnswered() {
      return stage === 'seen';
    },
    get ahead() {
      if (stage === 'loading') return HALL_PAGE.working;
      if (stage === 'question') return FILM.play;
      return stage === 'running' ? FILM.toEnd : undefined;
    },
    forward() {
      if (stage === 'running' || (stage === 'question' && wantsStill())) showEnd();
      else if (stage === 'question') run();
    },
    rewind() {
      const hasBegun = time > 0 || stage === 'running';
      setTime(0);
      if (hasBegun) enter('question');
      return hasBegun;
    },
    nudge: (way) => scrub(time + (way * length) / SCRUB_STEPS),
    end() {
      cancelAnimationFrame(timer);
      booth.close(() => undefined);
      threads.drop('films');
    },
  };
}

function sum(counts: readonly number[]): number {
  return counts.reduce((total, one) => total + one, 0);
}

function wordsOf(film: WatchedTouchdown | string, isSeen: boolean): string {
  if (typeof film === 'string') return film;
  return isSeen ? FILM.verdict[film.result.outcome] : '?';
}
