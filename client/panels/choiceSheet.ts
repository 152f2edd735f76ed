import type { PlanChoice } from '../../engine/table/index.ts';
import { WORLDS } from '../../engine/worlds.ts';
import { findLander, LANDERS, SITES, STARTS, whyNotFlown } from '../../levels/index.ts';
import { drawLanderPicture, drawSitePicture, type Picture } from '../views/choicePictures.ts';
import { CHOICE, LOBBY } from '../text/en.ts';
import { acceleration, decimal, speed } from '../text/numbers.ts';
import { button, drawing, element, say } from './element.ts';
import { exerciseLine } from './titleBlock.ts';

/** What becomes of a choice. The sheet closes before either is called. */
export interface ChoiceActions {
  /** It is flown alone. */
  readonly fly: (choice: PlanChoice) => void;
  /** A table for a crew is opened for it. */
  readonly open: (choice: PlanChoice) => void;
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
  let choice = first;
  const said = element('p', { class: 'choice-said', role: 'status' }, problem);
  const worlds = element('select', { id: 'choice-world', 'aria-describedby': 'choice-world-hint' });
  const worldHint = element('p', { class: 'hint', id: 'choice-world-hint' });
  const seed = element('input', {
    id: 'choice-seed',
    type: 'number',
    min: 0,
    max: Number.MAX_SAFE_INTEGER,
    step: 1,
    inputmode: 'numeric',
    value: first.seed,
  });

  const change = (part: Partial<PlanChoice>) => {
    choice = { ...choice, ...part };
    say(said, fitWorld());
    fillWorlds(worlds, choice);
    say(worldHint, CHOICE.worldHint(landerName(choice)));
    actions.changed(choice);
  };
  /** A world on which the lander cannot be flown gives way to the first on which it can. */
  const fitWorld = () => {
    const lander = findLander(choice.lander);
    const world = WORLDS.find(({ id }) => id === choice.world);
    const other = WORLDS.find((candidate) => lander !== undefined && whyNotFlown(lander, candidate) === undefined);
    if (lander === undefined || world === undefined || other === undefined) return '';
    const why = whyNotFlown(lander, world);
    if (why === undefined) return '';
    choice = { ...choice, world: other.id };
    return CHOICE.otherWorld(other.name, why);
  };
  worlds.addEventListener('change', () => change({ world: worlds.value }));
  seed.addEventListener('input', () => {
    if (seed.value !== '' && seed.validity.valid) change({ seed: Number(seed.value) });
  });

  const form = element(
    'form',
    { class: 'choice-body' },
    element('h2', { id: 'choice-title' }, CHOICE.title),
    said,
    pictures(
      CHOICE.lander,
      'lander',
      LANDERS.map((lander) => ({ ...lander, picture: drawLanderPicture(lander) })),
      first.lander,
      (id) => change({ lander: id }),
    ),
    pictures(
      CHOICE.site,
      'site',
      SITES.map((site) => ({ ...site, picture: drawSitePicture(site, first.seed) })),
      first.site,
      (id) => change({ site: id }),
    ),
    element(
      'div',
      { class: 'choice-rest' },
      starts(first.start, (id) => change({ start: id })),
      element(
        'p',
        { class: 'choice-field' },
        element('label', { for: 'choice-world' }, CHOICE.world),
        worlds,
        worldHint,
      ),
      element(
        'p',
        { class: 'choice-field' },
        element('label', { for: 'choice-seed' }, CHOICE.ground),
        seed,
        element('span', { class: 'hint' }, CHOICE.groundHint),
      ),
    ),
  );
  const sheet = element('dialog', { class: 'choice', 'aria-labelledby': 'choice-title' }, form);
  const finish = (act: () => void) => {
    if (!form.reportValidity()) return;
    sheet.close('done');
    act();
  };
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    finish(() => actions.fly(choice));
  });
  sheet.append(
    element(
      'div',
      { class: 'choice-foot' },
      element(
        'div',
        { class: 'choice-actions' },
        button(CHOICE.fly, () => finish(() => actions.fly(choice)), { class: 'primary' }),
        button(CHOICE.open, () => finish(() => actions.open(choice))),
        ...copyButton(() => actions.addressOf(choice)),
        button(CHOICE.close, () => sheet.close(), { class: 'choice-close' }),
      ),
      exerciseLine(),
    ),
  );
  sheet.addEventListener('close', () => {
    sheet.remove();
    if (sheet.returnValue !== 'done') actions.dismissed();
  });
  document.body.append(sheet);
  const other = fitWorld();
  if (other !== '') say(said, other);
  fillWorlds(worlds, choice);
  say(worldHint, CHOICE.worldHint(landerName(choice)));
  sheet.showModal();
}

function landerName({ lander }: PlanChoice): string {
  return findLander(lander)?.name ?? lander;
}

interface Pictured {
  readonly id: string;
  readonly name: string;
  readonly summary: string;
  readonly picture: Picture;
}

/** One of several, each with its picture. */
function pictures(
  legend: string,
  name: string,
  offered: readonly Pictured[],
  chosen: string,
  choose: (id: string) => void,
): HTMLElement {
  const cards = offered.map(({ id, name: words, summary, picture }) =>
    element(
      'label',
      { class: 'choice-card' },
      radio(name, id, id === chosen, choose),
      drawing(picture.markup, { viewBox: picture.viewBox, class: `choice-picture ${name}` }),
      element('strong', {}, words),
      element('small', {}, summary),
    ),
  );
  return element('fieldset', { class: `choice-cards ${name}` }, element('legend', {}, legend), ...cards);
}

function starts(chosen: string, choose: (id: string) => void): HTMLElement {
  const rows = STARTS.map(({ id, name, height, drift, descentRate }) =>
    element(
      'label',
      { class: 'choice-start' },
      radio('start', id, id === chosen, choose),
      element('strong', {}, name),
      element('small', {}, CHOICE.startWords(`${decimal(height, 0)} m`, speed(drift, 1), speed(descentRate, 1))),
    ),
  );
  return element('fieldset', { class: 'choice-starts' }, element('legend', {}, CHOICE.start), ...rows);
}

function radio(name: string, value: string, checked: boolean, choose: (id: string) => void): HTMLInputElement {
  const input = element('input', { type: 'radio', name, value, checked });
  input.addEventListener('change', () => choose(value));
  return input;
}

/** Every world; those on which this lander cannot be flown cannot be chosen. */
function fillWorlds(worlds: HTMLSelectElement, { lander: id, world: chosen }: PlanChoice): void {
  const lander = findLander(id);
  worlds.replaceChildren(
    ...WORLDS.map((world) =>
      element(
        'option',
        {
          value: world.id,
          selected: world.id === chosen,
          disabled: lander !== undefined && whyNotFlown(lander, world) !== undefined,
        },
        `${world.name}, ${acceleration(world.gravity)}`,
      ),
    ),
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
