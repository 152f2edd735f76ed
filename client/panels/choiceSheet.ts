import type { PlanChoice, Seat } from '../../engine/table/index.ts';
import { findWorld } from '../../engine/worlds.ts';
import { findLander, whyNotFlown, worldsFor } from '../../levels/index.ts';
import { CHOICE, LOBBY } from '../text/en.ts';
import {
  createTroubleField,
  createWorldField,
  landerField,
  modeField,
  paceField,
  seedField,
  siteField,
  startField,
} from './choiceFields.ts';
import { button, element, say } from './element.ts';
import { exerciseLine } from './titleBlock.ts';

/** What becomes of a choice. The sheet closes before anything is done with it. */
export interface ChoiceActions {
  /** What can be done with it, the usual first. */
  readonly ways: readonly { readonly words: string; readonly act: (choice: PlanChoice, seat: Seat) => void }[];
  /** Whether it is asked from which seat a failure is met. */
  readonly asksSeat: boolean;
  /** After each change: the address follows. */
  readonly changed: (choice: PlanChoice) => void;
  /** The person goes back without either. */
  readonly dismissed: () => void;
  /** The address that leads to this choice. */
  readonly addressOf: (choice: PlanChoice) => string;
}

/**
 * The sheet on which a landing is chosen: three landers and five sites by their pictures, worlds, starts and ground. A modal dialog: the browser keeps
 * the keyboard in it, and Escape closes it. `problem`: what was wrong with a link.
 */
export function openChoiceSheet(first: PlanChoice, actions: ChoiceActions, problem = ''): void {
  let { choice, words } = onFlyableWorld(first);
  const said = element('p', { class: 'choice-said', role: 'status' }, problem === '' ? words : problem);
  const change = (part: Partial<PlanChoice>) => {
    ({ choice, words } = onFlyableWorld({ ...choice, ...part }));
    say(said, words);
    world.refresh(choice);
    actions.changed(choice);
  };
  const world = createWorldField(change);
  world.refresh(choice);
  const { ways } = actions;
  const trouble = createTroubleField(choice, change, actions.asksSeat);
  // whoever came for a failure meets it first
  const isTroubled = first.sensorTrouble !== 'none';
  const form = element(
    'form',
    { class: 'laid-over-body' },
    element(
      'h2',
      { id: 'choice-title', tabindex: -1, autofocus: true },
      isTroubled ? CHOICE.troubleTitle : CHOICE.title,
    ),
    said,
    ...(isTroubled ? [trouble.field] : []),
    landerField(choice.lander, change),
    siteField(choice, change),
    element(
      'div',
      { class: 'choice-rest' },
      startField(choice.start, change),
      modeField(choice.mode, change),
      paceField(choice.pace, change),
      ...(isTroubled ? [] : [trouble.field]),
      world.field,
      seedField(choice.seed, change),
    ),
  );
  const sheet = element('dialog', { class: 'laid-over choice', 'aria-labelledby': 'choice-title' }, form);
  const finish = (act: (chosen: PlanChoice, seat: Seat) => void) => {
    if (!form.reportValidity()) return;
    sheet.close(FINISHED);
    act(choice, trouble.seat());
  };
  sheet.append(
    foot([
      ...ways.map(({ words: name, act }, i) => button(name, () => finish(act), i === 0 ? { class: 'primary' } : {})),
      ...copyButton(() => actions.addressOf(choice)),
      button(CHOICE.close, () => sheet.close(), { class: 'choice-close' }),
    ]),
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const [usual] = ways;
    if (usual !== undefined) finish(usual.act);
  });
  sheet.addEventListener('close', () => {
    sheet.remove();
    if (sheet.returnValue !== FINISHED) actions.dismissed();
  });
  document.body.append(sheet);
  sheet.showModal();
}

/** What the dialog answers when something comes of it. */
const FINISHED = 'finished';

/** A world on which the lander cannot be flown gives way to the first on which it can, in words. */
function onFlyableWorld(choice: PlanChoice): { choice: PlanChoice; words: string } {
  const lander = findLander(choice.lander);
  const world = findWorld(choice.world);
  if (lander === undefined || world === undefined) return { choice, words: '' };
  const why = whyNotFlown(lander, world);
  const [other] = worldsFor(lander);
  if (why === undefined || other === undefined) return { choice, words: '' };
  return { choice: { ...choice, world: other.id }, words: CHOICE.otherWorld(other.name, why) };
}

function foot(actions: readonly HTMLElement[]): HTMLElement {
  return element(
    'div',
    { class: 'laid-over-foot' },
    element('div', { class: 'choice-actions' }, ...actions),
    exerciseLine(),
  );
}

function copyButton(address: () => string): readonly HTMLElement[] {
  const copied = element('span', { role: 'status', class: 'hint' });
  const copy = button(LOBBY.copy, () => {
    navigator.clipboard.writeText(address()).then(
      () => say(copied, LOBBY.copied),
      () => say(copied, `${LOBBY.copyByHand}: ${address()}`),
    );
  });
  return [copy, copied];
}
