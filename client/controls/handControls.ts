import { mostPercent, THRUST_RANGE, TILT_RANGE_DEG, type TableView } from '../../engine/table/index.ts';
import { element, say } from '../panels/element.ts';
import { leanWords } from '../panels/readings.ts';
import { CONTROLS, SEAT_NAMES } from '../text/en.ts';
import { inDegrees, percent } from '../text/numbers.ts';
import type { CommandDesk } from './commands.ts';
import { controlGroup, deadWords, stepButton, type Controls } from './controlGroup.ts';
import { createScale } from './scale.ts';

/** Thrust and tilt: each a scale to set, buttons for steps, and the key that does the same. */
export function createHandControls(desk: CommandDesk, maxThrust: number): Controls {
  const thrust = createScale({
    name: CONTROLS.thrust,
    direction: 'upright',
    ...THRUST_RANGE,
    ruling: 5,
    figures: [0, 25, 50, 75, 100].map((value) => ({ value, words: String(value) })),
    tick: CONTROLS.hover,
    set: (value) => desk.thrustTo(value),
  });
  const tilt = createLeanScale(CONTROLS.tilt, (degrees) => desk.tiltTo(degrees));
  const thrustValue = element('span', { class: 'control-value' });
  const tiltValue = element('span', { class: 'control-value' });
  const thrustKeys = [
    stepButton(CONTROLS.more, 'thrustMore', CONTROLS.thrustMore, desk),
    stepButton(CONTROLS.less, 'thrustLess', CONTROLS.thrustLess, desk),
    stepButton(CONTROLS.off, 'engineOff', CONTROLS.thrustOff, desk),
  ];
  const tiltKeys = [
    stepButton(CONTROLS.left, 'leanLeft', CONTROLS.leanLeft, desk),
    stepButton(CONTROLS.upright, 'upright', CONTROLS.standUpright, desk),
    stepButton(CONTROLS.right, 'leanRight', CONTROLS.leanRight, desk),
  ];
  return {
    groups: [
      controlGroup('thrust', CONTROLS.thrust, thrustValue, thrust.body, thrustKeys),
      controlGroup('tilt', CONTROLS.tilt, tiltValue, tilt.body, tiltKeys),
    ],
    refresh(view, hoverPercent) {
      const { commanded } = desk;
      const { holds } = view.you;
      const share = percent(commanded.thrustPercent / 100);
      thrust.show(commanded.thrustPercent, (100 * view.flight.thrust) / maxThrust, share);
      thrust.showTick(hoverPercent);
      const lean = leanWords(commanded.tiltDeg);
      tilt.show(-commanded.tiltDeg, -inDegrees(view.flight.angle), lean);
      const answers = view.stage === 'descending' && !view.aborting;
      thrust.showMost(mostPercent(view.engine));
      const dead = deadWords(view);
      const isThrustOpen = answers && dead === undefined && holds.thrust;
      thrustValue.classList.toggle('held', dead !== undefined || !holds.thrust);
      tiltValue.classList.toggle('held', !holds.tilt);
      say(thrustValue, dead ?? (holds.thrust ? share : heldWords(view, 'thrust')));
      say(tiltValue, holds.tilt ? lean : heldWords(view, 'tilt'));
      thrust.allow(isThrustOpen);
      tilt.allow(answers && holds.tilt);
      for (const key of thrustKeys) key.show(isThrustOpen);
      for (const key of tiltKeys) key.show(answers && holds.tilt);
    },
  };
}

/** Right is positive on the sheet, counter-clockwise in the engine: `set` gets what the engine has. */
export function createLeanScale(name: string, set: (degrees: number) => void) {
  return createScale({
    name,
    direction: 'level',
    ...TILT_RANGE_DEG,
    ruling: 5,
    figures: [-30, -15, 0, 15, 30].map((value) => ({ value, words: String(Math.abs(value)) })),
    set: (value) => set(-value),
  });
}

/** Who holds a control that this member does not. */
function heldWords(view: TableView, control: 'thrust' | 'tilt'): string {
  const holder = view.seats.find((seat) => seat.name !== undefined && seat.holds[control]);
  return holder === undefined ? CONTROLS.standInHolds : CONTROLS.heldBy(SEAT_NAMES[holder.seat]);
}
