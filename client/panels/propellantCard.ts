import {
  CEILING_RANGE,
  mostPercent,
  ONE_LINE_PERCENT,
  type PropellantReadings,
  type TableView,
} from '../../engine/table/index.ts';
import { PROPELLANT_CARD } from '../text/en.ts';
import { distance, mass, percent, seconds, tenthsOfSeconds } from '../text/numbers.ts';
import { createCutOff } from './cutOff.ts';
import { element, say } from './element.ts';
import { createPressedRow } from './pressedRow.ts';
import {
  type ActsOf,
  type Ask,
  cardPart,
  createLiveDrawing,
  createStateMark,
  figureLine,
  seatCardFrame,
  type SeatCard,
} from './seatCard.ts';
import { createStepper } from './stepper.ts';
import { drawSwing } from './swingDrawing.ts';
import { drawTwoBars } from './twoBars.ts';
import { term } from '../terms/term.ts';

/** One press of the ceiling's buttons [%]. */
const CEILING_STEP = 5;

/** For Propellant: what is left by two ways of knowing it, thrust commanded against felt, and what is set on the engine. */
export function createPropellantCard(
  ask: Ask,
  { fullPropellant, hasUprightTanks }: { readonly fullPropellant: number; readonly hasUprightTanks: boolean },
): SeatCard & ActsOf<'propellant'> {
  const left = createLeft(fullPropellant);
  const thrust = createThrust();
  const swing = createSwing();
  const ceiling = createStepper({
    label: PROPELLANT_CARD.ceiling,
    less: PROPELLANT_CARD.ceilingLower,
    more: PROPELLANT_CARD.ceilingHigher,
    step: CEILING_STEP,
    range: () => CEILING_RANGE,
    words: (value) => percent(value / 100),
    set: (value) => ask({ kind: 'setCeiling', percent: value }),
  });
  const contact = createPressedRow<'on' | 'off'>({
    label: PROPELLANT_CARD.cutAtContact,
    choices: [
      ['on', PROPELLANT_CARD.on],
      ['off', PROPELLANT_CARD.off],
    ],
    press: (value) => ask({ kind: 'setCutAtContact', on: value === 'on' }),
  });
  const line = createPressedRow<'open' | 'shut'>({
    label: PROPELLANT_CARD.line,
    choices: [
      ['open', PROPELLANT_CARD.lineOpen],
      ['shut', PROPELLANT_CARD.lineShut],
    ],
    press: (value) => ask({ kind: 'shutLine', shut: value === 'shut' }),
  });
  const cutOff = createCutOff(ask);
  const card = seatCardFrame(
    'propellant',
    cardPart(PROPELLANT_CARD.left, ...left.nodes),
    cardPart(PROPELLANT_CARD.thrust, ...thrust.nodes),
    element(
      'div',
      { class: 'action-row' },
      element('span', {}, term('thrust ceiling', PROPELLANT_CARD.ceiling)),
      ceiling.group,
    ),
    element(
      'div',
      { class: 'action-row' },
      element('span', {}, term('cut at contact', PROPELLANT_CARD.cutAtContact)),
      contact.group,
    ),
    element('div', { class: 'action-row' }, element('span', {}, term('feed lines', PROPELLANT_CARD.line)), line.group),
    element('p', { class: 'card-note' }, PROPELLANT_CARD.lineNote(percent(ONE_LINE_PERCENT / 100))),
    element(
      'div',
      { class: 'action-row' },
      element('span', {}, term('engine cut-off', PROPELLANT_CARD.cutOff)),
      cutOff.group,
    ),
    ...(hasUprightTanks ? [swing.row] : []),
  );
  return {
    card,
    acts: {
      ceilingUp: () => ceiling.step(1),
      ceilingDown: () => ceiling.step(-1),
      armCutOff: () => cutOff.arm(),
      fireCutOff: () => cutOff.fire(),
      cutAtContact: () => contact.pressNext(),
      line: () => line.pressNext(),
    },
    refresh(view) {
      const { propellantReadings: readings, engine, stage } = view;
      card.hidden = view.you.seat !== 'propellant' || readings === undefined;
      if (readings === undefined) return;
      const isOpen = stage === 'descending' && engine.cutOff !== 'fired';
      left.show(readings);
      thrust.show(view, readings);
      swing.show(readings);
      ceiling.refresh(engine.ceilingPercent, isOpen);
      contact.refresh(engine.cutAtContact ? 'on' : 'off', isOpen);
      line.refresh(engine.lineShut ? 'shut' : 'open', isOpen);
      cutOff.refresh(engine.cutOff);
    },
  };
}

/** Gauge against the sum of thrust times time. */
function createLeft(full: number) {
  const bars = createLiveDrawing('bars');
  const gauge = figureLine(PROPELLANT_CARD.gauge);
  const mark = createStateMark();
  gauge.line.append(mark.mark);
  const reckoned = figureLine(term('reckoned', PROPELLANT_CARD.reckoned));
  const lasts = figureLine(PROPELLANT_CARD.lasts);
  return {
    nodes: [bars.holder, gauge.line, reckoned.line, lasts.line],
    show(readings: PropellantReadings) {
      const { gauge: measured, gaugeState, gaugeAge } = readings;
      const { markup, viewBox } = drawTwoBars(
        [
          {
            words: PROPELLANT_CARD.gaugeShort,
            share: measured === undefined ? undefined : measured / full,
            look: 'filled',
          },
          { words: PROPELLANT_CARD.reckonedShort, share: readings.reckoned / full, look: 'hollow' },
        ],
        { id: 'left' },
      );
      bars.show(markup, viewBox);
      gauge.show(measured === undefined ? PROPELLANT_CARD.nothing : mass(measured));
      mark.show(gaugeState, gaugeAge);
      reckoned.show(mass(readings.reckoned), apartWords(readings));
      lasts.show(seconds(Math.floor(readings.seconds)), PROPELLANT_CARD.lastsNote);
    },
  };
}

/** How far the gauge is from what was reckoned. */
export function apartWords({ gauge, reckoned }: Pick<PropellantReadings, 'gauge' | 'reckoned'>): string {
  if (gauge === undefined) return '';
  const apart = gauge - reckoned;
  if (Math.abs(apart) < 1) return PROPELLANT_CARD.agree;
  return apart < 0 ? PROPELLANT_CARD.gaugeLess(mass(-apart)) : PROPELLANT_CARD.gaugeMore(mass(apart));
}

/** Smaller is quiet, and moves nothing worth a word [m]. */
const LEAST_RISE = 0.01;
const LEAST_SHIFT = 0.01;

/** How the liquid swings, drawn and in words. */
function createSwing() {
  const picture = createLiveDrawing('swing-picture');
  const size = element('strong', {});
  const more = element('small', {});
  return {
    row: element('div', { class: 'swing-row' }, picture.holder, element('p', { class: 'figure-line' }, size, more)),
    show({ swing }: PropellantReadings) {
      const { markup, viewBox } = drawSwing(swing);
      picture.show(markup, viewBox, PROPELLANT_CARD.swingDrawn);
      say(size, swingWords(swing));
      say(more, swing === undefined || swing.rise < LEAST_RISE ? '' : periodWords(swing));
    },
  };
}

/** How high the surface goes at the wall. */
export function swingWords(swing: PropellantReadings['swing']): string {
  if (swing === undefined) return PROPELLANT_CARD.swingNone;
  return swing.rise < LEAST_RISE ? PROPELLANT_CARD.swingQuiet : PROPELLANT_CARD.swings(distance(swing.rise, 2));
}

function periodWords({ period, shift }: NonNullable<PropellantReadings['swing']>): string {
  return PROPELLANT_CARD.swingFelt(tenthsOfSeconds(period), shift < LEAST_SHIFT ? undefined : distance(shift, 2));
}

/** Below which legs a probe touches, or says that it does. */
export function lightWords(legs: readonly { readonly inContact: boolean }[]): string {
  const lit = legs.flatMap(({ inContact }, index) => (inContact ? [index + 1] : []));
  return lit.length === 0 ? PROPELLANT_CARD.noneLit : PROPELLANT_CARD.lit(lit);
}

/** Thrust as it reaches the engine against what is felt, and what is to shut the engine down. */
function createThrust() {
  const bars = createLiveDrawing('bars');
  const words = element('p', { class: 'figure-line' });
  const engine = figureLine(PROPELLANT_CARD.engine);
  const lights = figureLine(term('contact lights', PROPELLANT_CARD.lights));
  return {
    nodes: [bars.holder, words, engine.line, lights.line],
    show(view: TableView, { felt, burns }: PropellantReadings) {
      const { commanded } = view;
      const most = mostPercent(view.engine) / 100;
      const given = Math.min(commanded.thrustPercent / 100, most);
      const { markup, viewBox } = drawTwoBars(
        [
          { words: PROPELLANT_CARD.feltShort, share: felt, look: 'filled' },
          { words: PROPELLANT_CARD.commandedShort, share: given, look: 'hollow' },
        ],
        { id: 'thrust', most },
      );
      bars.show(markup, viewBox);
      lights.show(lightWords(view.flight.legs));
      engine.show(burns ? PROPELLANT_CARD.burns : PROPELLANT_CARD.burnsNot, PROPELLANT_CARD.engineNote);
      words.textContent = PROPELLANT_CARD.thrustWords(
        felt === undefined ? PROPELLANT_CARD.nothing : percent(felt),
        percent(given),
      );
    },
  };
}
