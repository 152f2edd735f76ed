import { pivotAtTouchdown } from '../../engine/table/index.ts';
import type { DescentSetup, TouchdownState } from '../../engine/world/index.ts';
import { SCORECARD, SIMULATED } from '../text/en.ts';
import { inDegrees } from '../text/numbers.ts';
import { element } from './element.ts';

/** The command that computes the limits of this very touchdown again, with every digit, so that nobody has to take them on trust. */
export function checkCommand(setup: DescentSetup, touchdown: TouchdownState): string {
  const { body, condition } = pivotAtTouchdown(setup, touchdown);
  const { gravity, slope, descentRate, rate = 0, firstContact = 'leading' } = condition;
  const options: readonly (readonly [string, number | string | undefined])[] = [
    ['half-stance', body.halfStance],
    ['center-height', body.centerHeight],
    ['mass', body.mass],
    ['inertia', body.inertia],
    ['gravity', gravity],
    ['slope', inDegrees(slope)],
    ['descent', descentRate],
    ['rate', inDegrees(rate)],
    ['first-contact', firstContact],
  ];
  const words = options.flatMap(([name, value]) => (value === undefined ? [] : [`--${name} ${value}`]));
  return `npx kilter limit ${words.join(' ')}`;
}

/** What the limits mean, the command that checks them, and the one that simulates the arrival with what was not checked there, folded away until somebody asks. */
export function createCheck(limits: string, simulation: string, outside: readonly string[]): HTMLElement {
  return element(
    'details',
    { class: 'check' },
    element('summary', {}, SCORECARD.check),
    element('p', { class: 'footnote' }, SCORECARD.footnote),
    element('p', {}, SCORECARD.checkLead),
    element('code', { class: 'check-command' }, limits),
    element('p', {}, SIMULATED.checkLead),
    element('code', { class: 'check-command' }, simulation),
    outside.length === 0
      ? undefined
      : element('p', { class: 'footnote' }, SCORECARD.outsideChecked(outside.join('; '))),
  );
}
