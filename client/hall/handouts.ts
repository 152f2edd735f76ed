import { massProperties } from '../../engine/lander/index.ts';
import { toRadians } from '../../engine/math/index.ts';
import { SHAPE_FACTS } from '../../engine/study/index.ts';
import { findWorld } from '../../engine/worlds.ts';
import {
  choiceOfHall,
  layOut,
  type DialScene,
  type Hall,
  type HallArrival,
  type HallScene,
} from '../../levels/index.ts';
import { drawing, element } from '../panels/element.ts';
import { exerciseLine } from '../panels/titleBlock.ts';
import { HALL_PAGE, HANDOUT } from '../text/hall.ts';
import { FIELD_WORDS } from '../text/workbench.ts';
import { quantity } from '../workbench/figures.ts';
import { drawSide, reachOf, type SeenSample } from '../workbench/sideView.ts';
import { factsOf, factsOfDial, factsOfFlight } from './facts.ts';
import { drawPaths } from './landingsDrawing.ts';

const SHEET = { width: 560, height: 400, unit: 1.7, perSpeed: 44 } as const;

/** A page for each scene to write on: what is asked and given, nothing of how it ends. For paper alone. */
export function createHandouts({ title, scenes }: Hall): HTMLElement {
  const pages = scenes.map((scene, i) =>
    element(
      'article',
      {},
      element('p', { class: 'hall-own' }, HANDOUT.head(title, i + 1, scenes.length)),
      element('h1', {}, scene.question),
      ...contentOf(scene),
      blanks(),
      exerciseLine(),
    ),
  );
  return element('div', { class: 'hall-all' }, ...pages);
}

/** Room to write. */
export function blanks(): HTMLElement {
  return element(
    'div',
    { class: 'hall-handout' },
    element('p', {}, HALL_PAGE.expect),
    element('p', {}, HALL_PAGE.seen),
  );
}

function given(words: string): HTMLElement {
  return element('p', { class: 'hall-facts' }, words);
}

function contentOf(scene: HallScene): readonly HTMLElement[] {
  switch (scene.kind) {
    case 'film': {
      const { shared, own } = factsOf(scene.arrivals);
      return [given(shared), framesOf(scene.arrivals, own)];
    }
    case 'dial':
      return [given(factsOfDial(scene)), framesOf([arrivalOf(scene)], [rangeOf(scene)])];
    case 'flight': {
      const plan = layOut(choiceOfHall(scene.descent));
      const { markup, viewBox } = plan.ok ? drawPaths(plan.value.setup, []) : { markup: '', viewBox: '' };
      return [given(factsOfFlight(scene)), drawing(markup, { viewBox, class: 'hall-picture' })];
    }
  }
  return scene satisfies never;
}

function framesOf(arrivals: readonly HallArrival[], own: readonly string[]): HTMLElement {
  const reach = Math.max(...arrivals.map(({ lander }) => reachOf(lander)));
  const frames = arrivals.map((arrival, i) => {
    const { markup, viewBox } = drawSide(arrival, [firstSample(arrival)], 0, toRadians(arrival.slopeDeg), {
      ...SHEET,
      reach,
    });
    return element(
      'div',
      { class: 'hall-frame' },
      element('h2', {}, arrival.name),
      element('p', { class: 'hall-own' }, own[i]),
      drawing(markup, { viewBox, class: 'hall-picture' }),
    );
  });
  return element('div', { class: 'hall-frames', 'data-count': frames.length }, ...frames);
}

/** As the lander arrives: its lowest foot on the ground. */
function firstSample({ lander, slopeDeg, yawDeg, horizontalSpeed, descentRate }: HallArrival): SeenSample {
  const turn = toRadians(yawDeg);
  const { center } = massProperties(lander);
  const fall = Math.tan(toRadians(slopeDeg));
  const heights = lander.legs.map(({ footpad: [x, y, z] }) => {
    const along = (x - center[0]) * Math.cos(turn) - (y - center[1]) * Math.sin(turn);
    return -fall * along - (z - center[2]);
  });
  return {
    position: [0, 0, Math.max(...heights)],
    attitude: [Math.cos(turn / 2), 0, 0, Math.sin(turn / 2)],
    velocity: [horizontalSpeed, 0, -descentRate],
    strokes: lander.legs.map(() => 0),
  };
}

/** The lander of a dial as it is shipped. */
function arrivalOf({ lander, worlds, slopeDeg, descentRate, friction }: DialScene): HallArrival {
  const world = worlds[0] ?? '';
  return {
    name: lander.name,
    lander,
    missing: [],
    world,
    slopeDeg,
    descentRate,
    horizontalSpeed: 0,
    friction,
    yawDeg: 0,
  };
}

function rangeOf({ field, from, to, worlds }: DialScene): string {
  const { unit } = SHAPE_FACTS[field];
  const names = worlds.map((id) => findWorld(id)?.name ?? id);
  return HANDOUT.range(FIELD_WORDS[field], quantity(from, unit), quantity(to, unit), names.join(', '));
}
