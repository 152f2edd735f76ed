import { describe, expect, it } from 'vitest';
import { alertOf } from '../../../client/panels/alerts.ts';
import type { TableView } from '../../../engine/table/index.ts';
import { HOVER, viewOf } from '../../support/flightView.ts';

/** 10 kN for 300 s from 9.80665 m/s2: hovering at 34 % burns 1.156 kg a second. */
const CONTEXT = { maxThrust: 10_000, burnPerImpulse: 1 / (300 * 9.80665) };

function alertFor(view: TableView) {
  return alertOf(view, HOVER, CONTEXT);
}

describe('the alerts of a seat', () => {
  it('say nothing while there is propellant for 20 s of hover', () => {
    expect(alertFor(viewOf({ propellant: 23.2 }))).toBeUndefined();
  });

  it('caution when there is less, with the whole seconds that are left', () => {
    expect(alertFor(viewOf({ propellant: 22 }))).toMatchObject({ level: 'caution' });
    expect(alertFor(viewOf({ propellant: 22 }))?.words).toMatch(/^propellant for 19\ss of hover$/);
    expect(alertFor(viewOf({ propellant: 0.5 }))?.words).toMatch(/^propellant for 0\ss of hover$/);
  });

  it('warn that the engine no longer answers once the tanks are dry', () => {
    const alert = alertFor(viewOf({ propellant: 0 }));
    expect(alert).toEqual({ level: 'warning', words: 'tanks dry, the engine no longer answers' });
  });

  it('warn that Propellant has cut the engine off', () => {
    const view = viewOf({ propellant: 50 });
    const alert = alertFor({ ...view, engine: { ...view.engine, cutOff: 'fired' } });
    expect(alert).toEqual({ level: 'warning', words: 'engine cut off, it stays out in this descent' });
    expect(alertFor({ ...view, engine: { ...view.engine, cutOff: 'armed' } })).toBeUndefined();
  });

  it('say nothing before a descent, after it, and once a foot has touched', () => {
    expect(alertFor({ ...viewOf({ propellant: 0 }), stage: 'gathering' })).toBeUndefined();
    expect(alertFor({ ...viewOf({ propellant: 0 }), stage: 'resolved' })).toBeUndefined();
    expect(alertFor(viewOf({ propellant: 0, phase: 'contact' }))).toBeUndefined();
  });
});
