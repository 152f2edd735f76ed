import { HALL, type Hall, type HallScene } from '../../levels/index.ts';
import { button, element, say } from '../panels/element.ts';
import { exerciseLine } from '../panels/titleBlock.ts';
import { HALL_PAGE, HANDOUT } from '../text/hall.ts';
import { openStudyThreads } from '../workbench/studyThreads.ts';
import { createDialPart } from './dialPart.ts';
import { createFilmPart } from './filmPart.ts';
import { createFlightPart } from './flightPart.ts';
import { blanks, createHandouts } from './handouts.ts';
import type { HallPart } from './hallPart.ts';
import { createOwnScenes } from './ownScenes.ts';
import { createVoteBooth } from './voteBooth.ts';
import '../styles/workbench.css';
import '../styles/hall.css';

/** Lays the scenes in place of the start page: one question at a time, one key to go on. */
export function layHall(holder: HTMLElement, leave: () => void): { end(): void } {
  let hall: Hall = HALL;
  let at = 0;
  let part: HallPart | undefined;
  const question = element('h1', { tabindex: -1 });
  const facts = element('p', { class: 'hall-facts' });
  const stage = element('main', { class: 'hall-stage' });
  const answer = element('p', { class: 'hall-answer', role: 'status' });
  const place = element('span', { class: 'hall-place' });
  const problem = element('p', { class: 'bench-fault', role: 'alert' });
  const threads = openStudyThreads(() => say(problem, HALL_PAGE.failed));
  const booth = createVoteBooth();
  const next = button(HALL_PAGE.next, () => forward(), { class: 'primary' });
  const previous = button(HALL_PAGE.previous, () => back());
  const sceneAt = (): HallScene => hall.scenes[at]!;

  const layScene = (scene: HallScene): HallPart => {
    if (scene.kind === 'film') return createFilmPart(scene, threads, booth, refresh);
    return scene.kind === 'dial' ? createDialPart(scene, threads) : createFlightPart(scene, booth, refresh);
  };
  const refresh = () => {
    const isLast = at === hall.scenes.length - 1;
    say(next, part?.ahead ?? (isLast ? HALL_PAGE.again : HALL_PAGE.next));
    say(answer, part?.isAnswered === true ? sceneAt().answer : '');
    say(place, HALL_PAGE.place(at + 1, hall.scenes.length));
  };
  const open = (index: number) => {
    part?.end();
    at = (index + hall.scenes.length) % hall.scenes.length;
    document.title = HALL_PAGE.documentTitle(hall.title);
    const scene = sceneAt();
    part = layScene(scene);
    say(question, scene.question);
    say(facts, part.facts);
    stage.replaceChildren(part.node);
    refresh();
    question.focus();
  };
  const forward = () => {
    if (part?.ahead === undefined) open(at + 1);
    else part.forward();
    refresh();
  };
  const back = () => {
    if (part?.rewind() !== true && at > 0) open(at - 1);
    refresh();
  };
  // the page keys are those of a presenter's remote
  const keys: Readonly<Record<string, (() => void) | undefined>> = {
    ' ': forward,
    Enter: forward,
    ArrowRight: forward,
    PageDown: forward,
    ArrowLeft: back,
    PageUp: back,
    ArrowUp: () => part?.nudge(1),
    ArrowDown: () => part?.nudge(-1),
  };
  const onKey = (event: KeyboardEvent) => {
    const isTaken = event.target instanceof Element && event.target.closest('input, button, dialog') !== null;
    if (event.altKey || event.ctrlKey || event.metaKey || (isTaken && !isFree(event))) return;
    const does = keys[event.key];
    if (does === undefined) return;
    event.preventDefault();
    does();
  };
  const own = createOwnScenes((read) => {
    hall = read;
    open(0);
  }, problem);
  /** One page a scene, and nothing else, until it is on paper. */
  const printHandouts = () => {
    const handouts = createHandouts(hall);
    holder.append(handouts);
    holder.dataset['prints'] = 'handouts';
    addEventListener(
      'afterprint',
      () => {
        handouts.remove();
        delete holder.dataset['prints'];
      },
      { once: true },
    );
    window.print();
  };
  document.addEventListener('keydown', onKey);
  holder.replaceChildren(
    element(
      'div',
      { class: 'hall' },
      element('header', { class: 'hall-head' }, question, facts),
      stage,
      answer,
      blanks(),
      element(
        'footer',
        { class: 'hall-foot' },
        problem,
        element(
          'div',
          { class: 'hall-buttons' },
          button(HALL_PAGE.back, leave),
          own.press,
          button(HANDOUT.print, printHandouts, { 'aria-label': HANDOUT.printFully }),
          button(HALL_PAGE.fullScreen, () => void document.documentElement.requestFullscreen().catch(() => undefined)),
          element('span', { class: 'hall-keys' }, HALL_PAGE.keys),
          place,
          previous,
          next,
        ),
        exerciseLine(),
        own.sheet,
      ),
    ),
  );
  open(0);
  return {
    end() {
      document.removeEventListener('keydown', onKey);
      if (document.fullscreenElement !== null) void document.exitFullscreen().catch(() => undefined);
      delete holder.dataset['prints'];
      part?.end();
      booth.end();
      threads.end();
    },
  };
}

/** On a button the arrows and a remote still turn the pages; in a slider the keys are its own. */
function isFree({ target, key }: KeyboardEvent): boolean {
  return target instanceof HTMLButtonElement && (key.startsWith('Arrow') || key.startsWith('Page'));
}
