import type { EngineSettings } from '../../engine/table/index.ts';
import { PROPELLANT_CARD } from '../text/en.ts';
import { button, element, pressIfShown, say } from './element.ts';
import type { Ask } from './seatCard.ts';

/** The cut-off, in two steps: nobody fires it by one press. */
export function createCutOff(ask: Ask): {
  readonly group: HTMLElement;
  refresh(state: EngineSettings['cutOff']): void;
  arm(): void;
  fire(): void;
} {
  let said: EngineSettings['cutOff'] = 'not armed';
  const arm = button(PROPELLANT_CARD.arm, () => ask({ kind: 'armCutOff', armed: said !== 'armed' }));
  const fire = button(PROPELLANT_CARD.fire, () => ask({ kind: 'fireCutOff' }), { class: 'fire' });
  const fired = element('p', { class: 'fired' }, PROPELLANT_CARD.fired);
  return {
    group: element('div', { class: 'cut-off', role: 'group', 'aria-label': PROPELLANT_CARD.cutOff }, arm, fire, fired),
    refresh(state) {
      said = state;
      say(arm, state === 'armed' ? PROPELLANT_CARD.disarm : PROPELLANT_CARD.arm);
      arm.hidden = state === 'fired';
      fire.hidden = state === 'fired';
      fire.disabled = state !== 'armed';
      fired.hidden = state !== 'fired';
    },
    arm: () => pressIfShown(arm),
    fire: () => pressIfShown(fire),
  };
}
