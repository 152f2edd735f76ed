import { choiceOfHall, FLIES, layOut, type FlightScene, type PhoneLanding } from '../../levels/index.ts';
import { formatProblem } from '../../engine/result.ts';
import { drawing, element, say } from '../panels/element.ts';
import { FILM, FLIGHT, HALL_PAGE } from '../text/hall.ts';
import { factsOfFlight } from './facts.ts';
import type { HallPart } from './hallPart.ts';
import { drawDots, drawKey, drawPaths, endingOf, PLACES, shareOf, type Ending } from './landingsDrawing.ts';
import type { VoteBooth } from './voteBooth.ts';
import type { AskedVote } from './voteRequests.ts';

const ENDINGS: readonly Ending[] = ['stands', 'falls', 'breaks', 'elsewhere'];

/** One descent, flown by every phone: all paths, and all speeds at touchdown against what tips. Nobody is named, and nobody comes first. */
export function createFlightPart(scene: FlightScene, booth: VoteBooth, changed: () => void): HallPart {
  const plan = layOut(choiceOfHall(scene.descent));
  if (!plan.ok) throw new Error(plan.error.map(formatProblem).join('; '));
  const { setup } = plan.value;
  let stage: 'gathering' | 'beginning' | 'flying' | 'seen' = 'gathering';
  let ready = 0;
  let landings: readonly PhoneLanding[] = [];
  const paths = element('div', { class: 'hall-picture' });
  const state = element('p', { class: 'hall-count', role: 'status' });
  const dots = createDots();
  const node = element(
    'div',
    { class: 'hall-flight' },
    element('section', { class: 'hall-paths' }, paths, state),
    booth.node,
    dots.node,
  );

  const show = () => {
    const sum = sumOf(landings);
    const { markup, viewBox } = drawPaths(setup, landings);
    paths.replaceChildren(drawing(markup, { viewBox, label: FLIGHT.paths(sum), class: 'hall-side' }));
    dots.show(landings);
    booth.node.hidden = stage !== 'gathering';
    dots.node.hidden = stage === 'gathering';
    changed();
  };
  const count = (counts: readonly number[]) => {
    ready = counts[FLIES] ?? 0;
    changed();
    return FLIGHT.ready(ready);
  };
  const gather = () => {
    stage = 'gathering';
    landings = [];
    say(state, '');
    const { question, descent } = scene;
    booth.open({ question, choices: [FLIGHT.fly, FLIGHT.watch], descent }, { scan: FLIGHT.scan, count });
    show();
  };
  const hear = ({ startsInMs = 0, flown }: AskedVote) => {
    if (stage === 'beginning') stage = 'flying';
    const told = flown?.landings ?? [];
    const { inAir = 0, left = 0 } = flown ?? {};
    landings = [...landings, ...told];
    const starts = startsInMs > 0 ? FLIGHT.startsIn(Math.ceil(startsInMs / 1000)) : FLIGHT.inAir(inAir);
    say(state, left === 0 ? starts : `${starts}, ${FLIGHT.left(left)}`);
    if (stage === 'flying' && startsInMs <= 0 && inAir === 0) stage = 'seen';
    show();
  };
  gather();
  return {
    node,
    facts: factsOfFlight(scene),
    get isAnswered() {
      return stage === 'seen';
    },
    get ahead() {
      // where no phone is ready there is nothing to begin: the key goes on
      if (stage === 'gathering') return ready === 0 ? undefined : FLIGHT.begin;
      if (stage === 'beginning') return HALL_PAGE.working;
      return stage === 'flying' ? FILM.toEnd : undefined;
    },
    forward() {
      if (stage === 'flying') {
        stage = 'seen';
        show();
      }
      if (stage !== 'gathering' || ready === 0) return;
      stage = 'beginning';
      booth.begin(hear, gather);
    },
    rewind() {
      const hasBegun = stage !== 'gathering';
      if (hasBegun) gather();
      return hasBegun;
    },
    nudge: () => undefined,
    end: () => booth.close(() => undefined),
  };
}

/** The dots over their scale, and what their shapes mean. */
function createDots(): { readonly node: HTMLElement; show(landings: readonly PhoneLanding[]): void } {
  const picture = element('div', {});
  const key = ENDINGS.map((ending) => {
    const words = element('span', {});
    const { markup, viewBox } = drawKey(ending);
    const row = element('li', { hidden: true }, drawing(markup, { viewBox, class: 'hall-key' }), words);
    return { ending, words, row };
  });
  const node = element(
    'section',
    { class: 'hall-dots', 'aria-label': FLIGHT.dots },
    element('h2', {}, FLIGHT.dots),
    picture,
    element(
      'p',
      { class: 'hall-ticks' },
      createTick(0, '0'),
      createTick(PLACES.limit, FLIGHT.tipLimit),
      createTick(PLACES.beyond, FLIGHT.beyond),
    ),
    element('ul', {}, ...key.map(({ row }) => row)),
  );
  return {
    node,
    show(landings) {
      const { markup, viewBox } = drawDots(landings);
      const shares = landings.flatMap(({ contact }) => (contact === undefined ? [] : [shareOf(contact)]));
      const below = shares.filter((share) => share < 1).length;
      const label = FLIGHT.dotsDrawing(below, shares.length - below);
      picture.replaceChildren(drawing(markup, { viewBox, label, class: 'hall-dotted' }));
      for (const { ending, words, row } of key) {
        const count = countOf(landings, ending);
        row.hidden = count === 0;
        say(words, FLIGHT.endings[ending](count));
      }
    },
  };
}

/** A word under the scale. */
function createTick(place: number, words: string): HTMLElement {
  const label = element('span', {}, words);
  label.style.left = `${(100 * place).toFixed(1)}%`;
  return label;
}

function countOf(landings: readonly PhoneLanding[], ending: Ending): number {
  return landings.filter((landing) => endingOf(landing) === ending).length;
}

function sumOf(landings: readonly PhoneLanding[]): string {
  if (landings.length === 0) return `${FLIGHT.none}.`;
  const counts = ENDINGS.map((ending) => [ending, countOf(landings, ending)] as const).filter(([, count]) => count > 0);
  return `${counts.map(([ending, count]) => FLIGHT.endings[ending](count)).join(', ')}.`;
}
