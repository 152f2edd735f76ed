import { compareWorlds, type WorldTouchdown } from '../../engine/table/index.ts';
import type { TouchdownState } from '../../engine/world/index.ts';
import type { PlayedPlan } from '../plan.ts';
import { WorldSection } from '../scenes/worldSection.ts';
import { SCORECARD, WORLDS_VIEW } from '../text/en.ts';
import { acceleration, degrees, percent, speed } from '../text/numbers.ts';
import type { Term } from '../text/glossary.ts';
import { figureOf } from '../views/lander/figure.ts';
import { hasFallen } from './verdict.ts';
import { againButton, button, element, entry, leaveButton } from './element.ts';
import { tableSheet } from './tableSheet.ts';
import { term } from '../terms/term.ts';

export interface WorldsSheet {
  readonly sheet: HTMLElement;
  stop(): void;
}

/** The same touchdown on three worlds, side by side, played again from the moment of contact. */
export function createWorldsSheet(options: {
  readonly touchdown: TouchdownState;
  readonly plan: PlayedPlan;
  readonly again: () => void;
  readonly back: () => void;
  readonly leave: () => void;
}): WorldsSheet {
  const { touchdown, plan } = options;
  const worlds = compareWorlds(touchdown, plan.setup);
  const figure = figureOf(plan.setup.lander);
  const sections = worlds.map((world) => new WorldSection({ world, figure }));
  const columns = worlds.map((world, index) => column(world, touchdown, sections[index]?.canvas, index === 0));
  const replay = () => {
    for (const section of sections) section.restart();
  };
  const sheet = tableSheet(
    {
      kind: 'worlds',
      label: WORLDS_VIEW.title,
      actions: [
        ...againButton(options.again),
        button(WORLDS_VIEW.replay, replay),
        button(SCORECARD.back, options.back),
        button(SCORECARD.print, () => window.print()),
        leaveButton(options.leave),
      ],
    },
    element('h2', { tabindex: -1 }, WORLDS_VIEW.title),
    element('p', { class: 'why' }, WORLDS_VIEW.lead(speed(Math.abs(touchdown.vx)), speed(touchdown.descentRate))),
    element('div', { class: 'worlds-row' }, ...columns),
  );

  let last = performance.now();
  let frame = requestAnimationFrame(function draw(now) {
    const seconds = Math.min(0.1, Math.max(0, (now - last) / 1000));
    last = now;
    for (const section of sections) section.draw(seconds);
    frame = requestAnimationFrame(draw);
  });
  return { sheet, stop: () => cancelAnimationFrame(frame) };
}

function column(
  world: WorldTouchdown,
  touchdown: TouchdownState,
  canvas: HTMLCanvasElement | undefined,
  isFirst: boolean,
): HTMLElement {
  const name = (of: Term, said: string) => (isFirst ? term(of, said) : said);
  const stood = world.outcome.startsWith('upright');
  const words = WORLDS_VIEW.outcome(world.outcome, hasFallen(world.final.angle));
  canvas?.setAttribute('role', 'img');
  canvas?.setAttribute('aria-label', `${world.world.name}: ${words}`);
  return element(
    'article',
    { class: 'world', 'data-stood': String(stood) },
    element('h3', {}, world.world.name, element('small', {}, ` ${acceleration(world.world.gravity)}`)),
    canvas,
    element('p', { class: 'world-outcome' }, words),
    element(
      'dl',
      {},
      entry(name('tip limit', WORLDS_VIEW.tipLimit), tipWords(world)),
      entry(name('utilization', WORLDS_VIEW.share), shareWords(world), speed(Math.abs(touchdown.vx))),
      entry(name('static tilt', WORLDS_VIEW.staticTilt), degrees(world.staticTilt), WORLDS_VIEW.staticSame),
    ),
  );
}

/** The least speed at which it tips there, or that no speed tips it, or any does. */
function tipWords({ limit }: WorldTouchdown): string {
  if (limit === undefined || limit.tip === 0) return WORLDS_VIEW.noSpeed;
  return limit.tip === undefined ? WORLDS_VIEW.neverUpTo(speed(limit.upTo, 1)) : speed(limit.tip);
}

function shareWords({ limit, utilisation }: WorldTouchdown): string {
  if (utilisation !== undefined) return percent(utilisation);
  return limit !== undefined && limit.tip === undefined ? '–' : WORLDS_VIEW.over;
}
