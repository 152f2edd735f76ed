import { pivotAtTouchdown, type ArrivalLimit } from '../../engine/table/index.ts';
import type { DescentSetup, TouchdownState } from '../../engine/world/index.ts';
import { SCORECARD } from '../text/en.ts';
import { decimal, inDegrees, speed } from '../text/numbers.ts';
import { drawing, element } from './element.ts';
import { drawSpeedScale, SCALE_WIDTH } from './speedScale.ts';
import { term, termed } from '../terms/term.ts';

/** The command that computes the closed form of this very touchdown again, with every digit, so that nobody has to take them on trust. */
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

/** How the limit was found, what was not checked, the closed form as a reference, and the commands; folded away until somebody asks. */
export function createCheck(options: {
  readonly limit: ArrivalLimit | undefined;
  readonly arrival: TouchdownState;
  readonly formula: string;
  readonly simulation: string;
  readonly outside: readonly string[];
}): HTMLElement {
  const { limit, arrival, formula, simulation, outside } = options;
  const parts: HTMLElement[] = [];
  if (limit !== undefined) {
    parts.push(note(...termed(SCORECARD.footnote(decimal(limit.friction, 2), speed(limit.tolerance)), 'tip limit')));
    if (limit.gear !== undefined)
      parts.push(note(limit.gear > 0 ? SCORECARD.gearFirst(speed(limit.gear)) : SCORECARD.gearAlways));
  }
  if (outside.length > 0) parts.push(note(...termed(SCORECARD.outsideChecked(outside.join('; ')), 'checked range')));
  parts.push(element('p', {}, SCORECARD.simulateLead), element('code', { class: 'check-command' }, simulation));
  if (limit !== undefined) {
    const { tip, upTo, closedForm } = limit;
    const finding = { speed: Math.abs(arrival.vx), tip, upTo, closedForm };
    const { markup, viewBox } = drawSpeedScale(finding, SCALE_WIDTH.full);
    parts.push(
      element('h3', {}, term('closed form', SCORECARD.closedForm)),
      note(SCORECARD.closedFormNote(speed(closedForm))),
      drawing(markup, { viewBox, class: 'speed-scale' }),
      element('p', {}, SCORECARD.checkLead),
      element('code', { class: 'check-command' }, formula),
    );
  }
  return element('details', { class: 'check' }, element('summary', {}, SCORECARD.check), ...parts);
}

function note(...words: readonly (HTMLElement | string)[]): HTMLElement {
  return element('p', { class: 'footnote' }, ...words);
}
