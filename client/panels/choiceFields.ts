import {
  FLIGHT_MODES,
  PACES,
  SEATS,
  SENSOR_TROUBLES,
  type FlightMode,
  type Pace,
  type PlanChoice,
  type Seat,
  type SensorTrouble,
} from '../../engine/table/index.ts';
import { WORLDS } from '../../engine/worlds.ts';
import { findLander, LANDERS, SITES, STARTS, whyNotFlown } from '../../levels/index.ts';
import { CHOICE, PACE, SEAT_NAMES } from '../text/en.ts';
import { acceleration, distance, speed } from '../text/numbers.ts';
import { drawLanderPicture, drawSitePicture, type Picture } from '../views/choicePictures.ts';
import { drawing, element, say } from './element.ts';

export type ChangeChoice = (part: Partial<PlanChoice>) => void;

interface Pictured {
  readonly id: string;
  readonly name: string;
  readonly summary: string;
  readonly picture: Picture;
}

export function landerField(chosen: string, change: ChangeChoice): HTMLElement {
  const offered = LANDERS.map((lander) => ({ ...lander, picture: drawLanderPicture(lander) }));
  return pictures({ legend: CHOICE.lander, name: 'lander', offered, chosen }, (lander) => change({ lander }));
}

export function siteField({ site: chosen, seed }: PlanChoice, change: ChangeChoice): HTMLElement {
  const offered = SITES.map((site) => ({ ...site, picture: drawSitePicture(site, seed) }));
  return pictures({ legend: CHOICE.site, name: 'site', offered, chosen }, (site) => change({ site }));
}

/** One of several, each with its picture. */
function pictures(
  field: {
    readonly legend: string;
    readonly name: string;
    readonly offered: readonly Pictured[];
    readonly chosen: string;
  },
  choose: (id: string) => void,
): HTMLElement {
  const { legend, name, offered, chosen } = field;
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

export function startField(chosen: string, change: ChangeChoice): HTMLElement {
  const rows = STARTS.map(({ id, name, height, drift, descentRate }) =>
    row(
      radio('start', id, id === chosen, (start) => change({ start })),
      name,
      CHOICE.startWords(distance(height, 0), speed(drift, 1), speed(descentRate, 1)),
    ),
  );
  return element('fieldset', { class: 'choice-starts' }, element('legend', {}, CHOICE.start), ...rows);
}

/** Whether Flying sets the controls, or says what to hold. */
export function modeField(chosen: FlightMode, change: ChangeChoice): HTMLElement {
  const rows = FLIGHT_MODES.map((mode) =>
    row(
      radio('mode', mode, mode === chosen, () => change({ mode })),
      CHOICE.modes[mode],
      CHOICE.modeWords[mode],
    ),
  );
  return element('fieldset', { class: 'choice-starts choice-mode' }, element('legend', {}, CHOICE.mode), ...rows);
}

/** How fast the clock runs; it can be set otherwise at the table. */
export function paceField(chosen: Pace, change: ChangeChoice): HTMLElement {
  const rows = PACES.map((pace) =>
    row(
      radio('pace', String(pace), pace === chosen, () => change({ pace })),
      PACE.short(pace),
      PACE.words[pace],
    ),
  );
  return element('fieldset', { class: 'choice-starts choice-pace' }, element('legend', {}, PACE.label), ...rows);
}

export interface TroubleField {
  readonly field: HTMLElement;
  /** Where the person sits in a descent with trouble; without, there is nothing to do but to fly. */
  seat(): Seat;
}

/** Who sits where what fails can be found out; a source is met best by who flies. */
const SEAT_FOR: Readonly<Record<SensorTrouble, Seat>> = {
  none: 'flying',
  seeded: 'flying',
  engine: 'propellant',
  legs: 'site',
};

/** Whether something fails, and then from which seat the person meets it: the others are left to stand-ins. */
export function createTroubleField(
  { sensorTrouble: chosen }: PlanChoice,
  change: ChangeChoice,
  asksSeat: boolean,
): TroubleField {
  let seat: Seat = 'flying';
  const marks = Object.fromEntries(
    SEATS.map((name) => [name, radio('seat', name, name === seat, () => (seat = name))]),
  );
  const seats = element(
    'div',
    { class: 'choice-seats', role: 'group', 'aria-label': CHOICE.seat, hidden: !asksSeat || chosen === 'none' },
    element('span', {}, CHOICE.seat),
    ...SEATS.map((name) =>
      element('label', { class: 'choice-seat' }, marks[name], element('strong', {}, SEAT_NAMES[name])),
    ),
  );
  const rows = SENSOR_TROUBLES.map((trouble) =>
    row(
      radio('trouble', trouble, trouble === chosen, () => {
        seats.hidden = !asksSeat || trouble === 'none';
        // who can find it out is offered first
        seat = SEAT_FOR[trouble];
        const mark = marks[seat];
        if (mark !== undefined) mark.checked = true;
        change({ sensorTrouble: trouble });
      }),
      CHOICE.troubles[trouble],
      CHOICE.troubleWords[trouble],
    ),
  );
  const legend = element('legend', {}, CHOICE.trouble);
  const field = element('fieldset', { class: 'choice-starts choice-trouble' }, legend, ...rows, seats);
  return { field, seat: () => (seats.hidden ? 'flying' : seat) };
}

/** One of a few in a row each: its mark, its name, and a little more. */
function row(mark: HTMLElement, name: string, more: string): HTMLElement {
  return element('label', { class: 'choice-start' }, mark, element('strong', {}, name), element('small', {}, more));
}

function radio(name: string, value: string, checked: boolean, choose: (id: string) => void): HTMLInputElement {
  const input = element('input', { type: 'radio', name, value, checked });
  input.addEventListener('change', () => choose(value));
  return input;
}

export interface WorldField {
  readonly field: HTMLElement;
  /** Shows every world; those on which the lander cannot be flown cannot be chosen. */
  refresh(choice: PlanChoice): void;
}

export function createWorldField(change: ChangeChoice): WorldField {
  const worlds = element('select', { id: 'choice-world', 'aria-describedby': 'choice-world-hint' });
  const hint = element('p', { class: 'hint', id: 'choice-world-hint' });
  worlds.addEventListener('change', () => change({ world: worlds.value }));
  return {
    field: element(
      'div',
      { class: 'choice-field' },
      element('label', { for: 'choice-world' }, CHOICE.world),
      worlds,
      hint,
    ),
    refresh({ lander: id, world: chosen }) {
      const lander = findLander(id);
      if (lander === undefined) return;
      const options = WORLDS.map((world) => {
        const disabled = whyNotFlown(lander, world) !== undefined;
        const words = `${world.name}, ${acceleration(world.gravity)}`;
        return element('option', { value: world.id, selected: world.id === chosen, disabled }, words);
      });
      worlds.replaceChildren(...options);
      say(hint, CHOICE.worldHint(lander.name));
    },
  };
}

/** What fixes the ground; a number that is none changes nothing, and the form refuses it. */
export function seedField(chosen: number, change: ChangeChoice): HTMLElement {
  const seed = element('input', {
    id: 'choice-seed',
    type: 'number',
    min: 0,
    max: Number.MAX_SAFE_INTEGER,
    step: 1,
    required: true,
    value: chosen,
    'aria-describedby': 'choice-seed-hint',
  });
  seed.addEventListener('input', () => {
    if (seed.validity.valid) change({ seed: Number(seed.value) });
  });
  const hint = element('p', { class: 'hint', id: 'choice-seed-hint' }, CHOICE.groundHint);
  return element('div', { class: 'choice-field' }, element('label', { for: 'choice-seed' }, CHOICE.ground), seed, hint);
}
