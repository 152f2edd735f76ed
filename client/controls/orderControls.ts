import { HELD_ACROSS, type Orders } from '../../engine/descent/index.ts';
import { DESCENT_RATE_RANGE_TENTHS, DRIFT_RANGE_TENTHS, type TableView } from '../../engine/table/index.ts';
import { element, say } from '../panels/element.ts';
import { descentRateWords, driftWords, leanWords } from '../panels/readings.ts';
import { CONTROLS, ORDERS, SEAT_NAMES } from '../text/en.ts';
import { bare, inDegrees } from '../text/numbers.ts';
import type { CommandDesk } from './commands.ts';
import { controlGroup, deadWords, stepButton, stepRow, type Controls } from './controlGroup.ts';
import { createLeanScale } from './handControls.ts';
import { createScale } from './scale.ts';

/** Figures on the scales [dm/s], from the bottom, and from the left. */
const RATE_FIGURES = [-60, -40, -20, 0, 20];
const DRIFT_FIGURES = [-50, -25, 0, 25, 50];

/** What to hold: a descent rate, and a drift or a lean, of which one is held at a time. Marks as by hand: hollow ordered, filled actual. */
export function createOrderControls(desk: CommandDesk): Controls {
  const rate = createRate(desk);
  const across = createAcross(desk);
  return {
    groups: [rate.group, across.group],
    refresh(view) {
      const { orders } = desk.orders;
      if (orders === undefined) return;
      const answers =
        view.stage === 'descending' && !view.aborting && view.you.holds.tilt && deadWords(view) === undefined;
      rate.refresh(view, orders, answers);
      across.refresh(view, orders, answers);
    },
  };
}

function createRate(desk: CommandDesk) {
  const { orders } = desk;
  // down is down on the sheet, positive in an order
  const scale = createScale({
    name: ORDERS.descentRate,
    direction: 'upright',
    least: -DESCENT_RATE_RANGE_TENTHS.most,
    most: -DESCENT_RATE_RANGE_TENTHS.least,
    ruling: 5,
    figures: RATE_FIGURES.map((value) => ({ value, words: speedFigure(value) })),
    set: (value) => orders.descentRateTo(-value),
  });
  const value = element('span', { class: 'control-value' });
  const steps = [
    stepButton(ORDERS.slower, 'thrustMore', ORDERS.slowerFully, desk),
    stepButton(ORDERS.faster, 'thrustLess', ORDERS.fasterFully, desk),
    stepButton(ORDERS.level, 'engineOff', ORDERS.levelFully, desk),
  ];
  return {
    group: controlGroup('thrust', ORDERS.descentRate, value, scale.body, steps),
    refresh(view: TableView, { descentRateTenths }: Orders, answers: boolean) {
      const words = descentRateWords(descentRateTenths / 10);
      scale.show(-descentRateTenths, 10 * view.flight.vy, words);
      scale.figure(speedFigure);
      scale.allow(answers);
      const dead = deadWords(view);
      value.classList.toggle('held', dead !== undefined || !view.you.holds.tilt);
      say(value, dead ?? words);
      for (const step of steps) step.show(answers);
    },
  };
}

function createAcross(desk: CommandDesk) {
  const { orders } = desk;
  const drift = createScale({
    name: ORDERS.drift,
    direction: 'level',
    ...DRIFT_RANGE_TENTHS,
    ruling: 5,
    figures: DRIFT_FIGURES.map((value) => ({ value, words: speedFigure(value) })),
    set: (value) => orders.driftTo(value),
  });
  const lean = createLeanScale(ORDERS.lean, (degrees) => orders.leanTo(degrees));
  const scales = { drift, lean };
  const heads = HELD_ACROSS.map((held) => createHead(held, () => orders.hold(held)));
  const steps = [
    stepButton(CONTROLS.left, 'leanLeft', '', desk),
    stepButton(ORDERS.none.drift, 'upright', '', desk),
    stepButton(CONTROLS.right, 'leanRight', '', desk),
  ] as const;
  const rows = heads.map(({ held, head }) => element('div', { class: 'across-row' }, head, scales[held].body));
  const holder = element('p', { class: 'control-value held across-holder' });
  const group = element(
    'div',
    { class: 'control control-tilt control-across', role: 'group', 'aria-label': ORDERS.across },
    ...rows,
    holder,
    stepRow(steps),
  );
  return {
    group,
    refresh(view: TableView, now: Orders, answers: boolean) {
      const words = { drift: driftWords(now.driftTenths / 10), lean: leanWords(now.leanDeg) };
      drift.show(now.driftTenths, 10 * view.flight.vx, words.drift);
      drift.figure(speedFigure);
      lean.show(-now.leanDeg, -inDegrees(view.flight.angle), words.lean);
      heads.forEach(({ held, show }, i) => {
        const isHeld = now.across === held;
        rows[i]?.classList.toggle('waits', !isHeld);
        show(isHeld, isHeld ? words[held] : ORDERS.notHeld, answers);
        scales[held].allow(answers && isHeld);
      });
      say(holder, view.you.holds.tilt ? '' : ordererWords(view));
      const [left, none, right] = steps;
      left.rename(CONTROLS.left, ORDERS.left[now.across]);
      none.rename(ORDERS.none[now.across], ORDERS.noneFully[now.across]);
      right.rename(CONTROLS.right, ORDERS.right[now.across]);
      for (const step of steps) step.show(answers);
    },
  };
}

/** The name of one of the two with the mark that says which is held, and its value. */
function createHead(held: Orders['across'], hold: () => void) {
  const mark = element('input', { type: 'radio', name: 'held-across', value: held });
  // not 'change', which comes after the page has put the mark back where the table still has it
  mark.addEventListener('click', hold);
  const value = element('span', { class: 'control-value' });
  const head = element('label', { class: 'control-head' }, mark, element('strong', {}, ORDERS[held]), value);
  return {
    held,
    head,
    show: (isHeld: boolean, words: string, answers: boolean) => {
      mark.checked = isHeld;
      mark.disabled = !answers;
      say(value, words);
    },
  };
}

/** Whose orders these are, for whoever gives none. */
function ordererWords({ seats }: TableView): string {
  const isTaken = seats.some(({ seat, name }) => seat === 'flying' && name !== undefined);
  return isTaken ? ORDERS.orderedBy(SEAT_NAMES.flying) : ORDERS.orderedByStandIn;
}

/** A figure on a scale of speeds, for tenths of a meter a second, in the units of the reader. */
function speedFigure(tenths: number): string {
  const figure = bare('speed', Math.abs(tenths) / 10, 1);
  return figure.replace(/\.0$/, '');
}
