import { LIMIT_RANGE, type SiteReadings } from '../../engine/table/index.ts';
import { SITE_CARD } from '../text/en.ts';
import { speed } from '../text/numbers.ts';
import { button, element, pressIfShown, say } from './element.ts';
import type { Ask } from './seatCard.ts';
import { offeredLimit } from './siteWords.ts';
import { createStepper } from './stepper.ts';

/** One press of the buttons [hundredths of m/s]. */
const STEP = 5;

/** States the limit in force: what is offered follows what is known, until somebody changes it. */
export function createLimitInForce(ask: Ask): {
  readonly group: HTMLElement;
  refresh(readings: SiteReadings, said: number | undefined, isOpen: boolean): void;
  state(): void;
} {
  let chosen: number | undefined;
  let offered = 0;
  const stepper = createStepper({
    label: SITE_CARD.limitInForce,
    less: SITE_CARD.limitLess,
    more: SITE_CARD.limitMore,
    step: STEP,
    range: () => LIMIT_RANGE,
    words: (hundredths) => speed(hundredths / 100),
    set: (hundredths) => {
      chosen = hundredths;
      offered = hundredths;
    },
  });
  const state = button(SITE_CARD.state, () => {
    ask({ kind: 'stateLimit', hundredths: offered });
    chosen = undefined;
  });
  const inForce = element('small', {});
  return {
    group: element('div', { class: 'limit-in-force' }, stepper.group, state, inForce),
    state: () => pressIfShown(state),
    refresh(readings, said, isOpen) {
      offered = chosen ?? offeredLimit(readings) ?? said ?? offered;
      stepper.refresh(offered, isOpen);
      state.disabled = !isOpen;
      say(inForce, said === undefined ? SITE_CARD.notStated : SITE_CARD.stated(speed(said / 100)));
    },
  };
}
