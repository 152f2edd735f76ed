import type { Drill } from '../../engine/drill/index.ts';
import { SEATS, type PlanChoice, type Seat } from '../../engine/table/index.ts';
import { findWorld } from '../../engine/worlds.ts';
import { findLander, findSite } from '../../levels/index.ts';
import { choiceOfDrill, DRILLS } from '../drillShelf.ts';
import { DRILL_CHOICE } from '../text/drill.ts';
import { SEAT_NAMES } from '../text/en.ts';
import { drawSitePicture } from '../views/choicePictures.ts';
import { button, drawing, element } from './element.ts';
import { exerciseLine } from './titleBlock.ts';
import { termed } from '../terms/term.ts';

/** What becomes of a drill that was chosen. The sheet closes before anything is done. */
export interface DrillActions {
  readonly open: (choice: PlanChoice) => void;
  readonly alone: (choice: PlanChoice, seat: Seat) => void;
}

/** The sheet on which a drill is chosen, to be run for a crew or flown alone. */
export function openDrillChoice({ open, alone }: DrillActions): void {
  const [first] = DRILLS;
  if (first === undefined) return;
  let drill = first;
  let seat: Seat = 'sensors';
  const cards = DRILLS.map((each) => drillCard(each, each === first, () => (drill = each)));
  const seats = seatChoice(seat, (chosen) => (seat = chosen));
  const sheet = element(
    'dialog',
    { class: 'laid-over choice drill-choice', 'aria-labelledby': 'drills-title' },
    element(
      'form',
      { class: 'laid-over-body' },
      element('h2', { id: 'drills-title', tabindex: -1, autofocus: true }, DRILL_CHOICE.title),
      element('p', {}, DRILL_CHOICE.lead),
      element('fieldset', { class: 'choice-cards drills' }, ...cards),
    ),
  );
  const finish = (act: () => void) => {
    sheet.close();
    act();
  };
  const run = button(DRILL_CHOICE.open, () => finish(() => open(choiceOfDrill(drill))), { class: 'primary' });
  const fly = button(DRILL_CHOICE.alone, () => finish(() => alone(choiceOfDrill(drill), seat)));
  sheet.append(
    element(
      'div',
      { class: 'laid-over-foot' },
      element(
        'div',
        { class: 'drill-ways-in' },
        element('div', {}, run, element('p', { class: 'hint' }, DRILL_CHOICE.openHint)),
        element(
          'div',
          {},
          element('p', { class: 'drill-alone' }, fly, seats),
          element('p', { class: 'hint' }, ...termed(DRILL_CHOICE.aloneHint, 'stand-in', 'Stand-ins')),
        ),
        button(DRILL_CHOICE.back, () => sheet.close(), { class: 'choice-close' }),
      ),
      exerciseLine(),
    ),
  );
  sheet.addEventListener('close', () => sheet.remove());
  document.body.append(sheet);
  sheet.showModal();
}

function drillCard(drill: Drill, isChosen: boolean, choose: () => void): HTMLElement {
  const { plan } = drill;
  const site = findSite(plan.site);
  const input = element('input', { type: 'radio', name: 'drill', value: drill.id, checked: isChosen });
  input.addEventListener('change', choose);
  const picture = site && drawSitePicture(site, plan.seed);
  const flown = DRILL_CHOICE.flown(
    findLander(plan.lander)?.name ?? plan.lander,
    site?.name ?? plan.site,
    findWorld(plan.world)?.name ?? plan.world,
  );
  return element(
    'label',
    { class: 'choice-card' },
    input,
    picture && drawing(picture.markup, { viewBox: picture.viewBox, class: 'choice-picture site' }),
    element('strong', {}, drill.title),
    element(
      'small',
      {},
      element('span', { class: 'drill-summary' }, drill.summary),
      ` ${flown}. ${DRILL_CHOICE.level(drill.level)}, ${DRILL_CHOICE.minutes(drill.minutes)}.`,
    ),
  );
}

function seatChoice(chosen: Seat, choose: (seat: Seat) => void): HTMLElement {
  const options = SEATS.map((seat) => element('option', { value: seat, selected: seat === chosen }, SEAT_NAMES[seat]));
  const list = element('select', { 'aria-label': DRILL_CHOICE.seat }, ...options);
  list.addEventListener('change', () => {
    const picked = SEATS.find((seat) => seat === list.value);
    if (picked !== undefined) choose(picked);
  });
  return list;
}
