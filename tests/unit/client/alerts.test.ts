import { describe, expect, it } from 'vitest';
import { alertWords, isDry } from '../../../client/panels/alerts.ts';
import { ALERT_CAUSES, type AlertView } from '../../../engine/talk/index.ts';
import { viewOf } from '../../support/flightView.ts';

const alert = (more: Partial<AlertView>): AlertView => ({
  id: 1,
  cause: 'dry',
  level: 'warning',
  isAcknowledged: false,
  isCleared: false,
  ...more,
});

describe('the alerts of a seat', () => {
  it('say what is the matter, each in words of its own', () => {
    const words = ALERT_CAUSES.map((cause) => alertWords(alert({ cause, source: 'altimeter', text: 'as told' })));
    expect(new Set(words).size).toBe(ALERT_CAUSES.length);
    expect(alertWords(alert({ cause: 'sourceLost', source: 'velocityRadar' }))).toBe('velocity radar is lost');
    expect(alertWords(alert({ cause: 'told', text: 'Slope changed' }))).toBe('Slope changed');
  });

  it('say below how many seconds the propellant is', () => {
    expect(alertWords(alert({ cause: 'propellantLow', level: 'caution' }))).toMatch(/less than 20\ss/);
    expect(alertWords(alert({ cause: 'propellantLow', level: 'warning' }))).toMatch(/less than 10\ss/);
  });
});

describe('dry tanks', () => {
  it('matter only in flight', () => {
    expect(isDry(viewOf({ propellant: 0 }))).toBe(true);
    expect(isDry(viewOf({ propellant: 0.5 }))).toBe(false);
    expect(isDry(viewOf({ propellant: 0, phase: 'contact' }))).toBe(false);
  });
});
