import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../engine/faults/index.ts';
import { playedModel, viewTable, type Seat, type Table, type TableModel } from '../../../engine/table/index.ts';
import { tell } from '../../../engine/talk/index.ts';
import { commandTable } from '../../support/askTable.ts';
import { AT, beginCrew, runTable } from '../../support/crewTable.ts';
import { laid } from '../../support/planChoice.ts';
import { drillOf, ROW } from '../../support/plainDrill.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

const alertsAt = (table: Table, seat: Seat) =>
  viewTable(table, AT[seat]).talk.alerts.map(({ cause, level, isCleared }) =>
    isCleared ? `cleared ${cause}` : `${level} ${cause}`,
  );
const acknowledge = (table: Table, seat: Seat, alert = 1) =>
  commandTable(table, AT[seat], { kind: 'acknowledge', alert });

/** A plain fall at 1000 kg with propellant for so many seconds of hover: 1000 kg at 1.62 m/s2 over 300 s of specific impulse burn 0.5507 kg a second. */
function fallWith(seconds: number): Table {
  const propellant = (seconds * 1000 * 1.62) / (300 * 9.80665);
  return beginCrew({ plan: { ...plainPlan, setup: { ...plainPlan.setup, propellant } } });
}

/** In which the altimeter is silent from the second second to the tenth. */
function silentAltimeter(): Table {
  const silence: Fault = { kind: 'noData', source: 'altimeter', fromTick: 120, toTick: 600, parameters: {} };
  const plan = laid({ seed: 5, sensorTrouble: 'seeded' });
  return beginCrew({ plan: { ...plan, setup: { ...plan.setup, faults: [silence] } }, model: playedModel });
}

/** A world in which the margin of a contact in so many seconds is always outside. */
function outsideIn(seconds: number): TableModel {
  const margin = plainModel.createMarginGauge(plainPlan)({} as never);
  const outside = { ...margin, predicted: { ...margin.predicted!, callout: 'outside' as const, seconds } };
  return { ...plainModel, createMarginGauge: () => () => outside };
}

/** A world in which the margin is outside while this says so. */
function outsideWhile(isOutside: () => boolean): TableModel {
  const createMarginGauge: TableModel['createMarginGauge'] = () => () => {
    const margin = plainModel.createMarginGauge(plainPlan)({} as never);
    return isOutside() ? { ...margin, predicted: { ...margin.predicted!, callout: 'outside' as const } } : margin;
  };
  return { ...plainModel, createMarginGauge };
}

describe('an alert', () => {
  it('[TK5] calls for caution below 20 s of propellant and warns below 10 s, at the seats whose matter that is', () => {
    const some = fallWith(22);
    runTable(some, 60);
    expect(alertsAt(some, 'propellant')).toEqual([]);
    const low = fallWith(19.5);
    runTable(low, 60);
    expect(alertsAt(low, 'propellant')).toEqual(['caution propellantLow']);
    expect(alertsAt(low, 'flying')).toEqual(['caution propellantLow']);
    expect(alertsAt(low, 'site')).toEqual([]);
    const less = fallWith(9.5);
    runTable(less, 60);
    expect(alertsAt(less, 'propellant')).toEqual(['warning propellantLow']);
  });

  it('[TK5] warns everybody of dry tanks and of an engine that was cut off', () => {
    const dry = fallWith(0);
    runTable(dry, 60);
    expect([alertsAt(dry, 'lead'), alertsAt(dry, 'site')]).toEqual([['warning dry'], ['warning dry']]);
    const cut = beginCrew();
    commandTable(cut, AT.propellant, { kind: 'armCutOff', armed: true });
    commandTable(cut, AT.propellant, { kind: 'fireCutOff' });
    runTable(cut, 60);
    expect(alertsAt(cut, 'lead')).toEqual(['warning cutOff']);
  });

  it('[TK5] warns Lead and Flying of a margin that is outside, when the contact is near', () => {
    const near = beginCrew({ model: outsideIn(9) });
    const far = beginCrew({ model: outsideIn(11) });
    runTable(near, 60);
    runTable(far, 60);
    expect(alertsAt(near, 'lead')).toEqual(['warning marginOutside']);
    expect(alertsAt(near, 'flying')).toEqual(['warning marginOutside']);
    expect(alertsAt(near, 'sensors')).toEqual([]);
    expect(alertsAt(far, 'lead')).toEqual([]);
  });

  it('[TK5] is raised at Sensors for a source that is lost, stands while acknowledged, and is cleared with its cause', () => {
    const table = silentAltimeter();
    runTable(table, 120);
    expect(alertsAt(table, 'sensors')).toEqual([]);
    let waited = 0;
    while (alertsAt(table, 'sensors').length === 0 && waited < 400) {
      runTable(table, 6);
      waited += 6;
    }
    expect(alertsAt(table, 'sensors')).toEqual(['caution sourceLost']);
    expect(alertsAt(table, 'lead')).toEqual([]);
    expect(acknowledge(table, 'lead')).toMatchObject({ error: { code: 'table/no-alert' } });
    expect(acknowledge(table, 'sensors').ok).toBe(true);
    expect(acknowledge(table, 'sensors')).toMatchObject({ error: { code: 'table/acknowledged' } });
    expect(viewTable(table, AT.sensors).talk.alerts[0]).toMatchObject({ source: 'altimeter', isAcknowledged: true });
    runTable(table, 600 - table.state.tick);
    expect(alertsAt(table, 'sensors')).toEqual(['caution sourceLost']);
    // two seconds and what the altimeter needs to speak again; then it says so for five
    while (alertsAt(table, 'sensors')[0] === 'caution sourceLost' && waited < 1200) {
      runTable(table, 6);
      waited += 6;
    }
    expect(alertsAt(table, 'sensors')).toEqual(['cleared sourceLost']);
    expect(acknowledge(table, 'sensors')).toMatchObject({ error: { code: 'table/no-alert' } });
    runTable(table, 294);
    expect(alertsAt(table, 'sensors')).toEqual(['cleared sourceLost']);
    runTable(table, 18);
    expect(alertsAt(table, 'sensors')).toEqual([]);
  });

  it('[TK5] is not raised by what lasts less than half a second', () => {
    let outside = false;
    const table = beginCrew({ model: outsideWhile(() => outside) });
    for (let i = 0; i < 20; i += 1) {
      outside = i % 2 === 0;
      runTable(table, 24);
      expect(alertsAt(table, 'lead')).toEqual([]);
    }
    outside = true;
    runTable(table, 42);
    expect(alertsAt(table, 'lead')).toEqual(['warning marginOutside']);
  });

  it('[TK5] that was told for want of a response folds when it is acknowledged, and is cleared by that response alone', () => {
    const tells = { do: 'tell', text: 'Shut the line.', to: ['lead', 'propellant'], level: 'warning' } as const;
    const leak = { ...ROW, id: 'leak', trigger: { on: 'time', seconds: 0.1 }, effects: [] } as const;
    const hint = {
      ...leak,
      id: 'hint',
      kind: 'contingency',
      unless: 'shut',
      trigger: { on: 'time', seconds: 0.5 },
      effects: [tells],
      responses: [],
    } as const;
    const drill = drillOf([leak, hint]);
    const { setup } = plainPlan;
    const table = beginCrew({ plan: { ...plainPlan, setup: { ...setup, start: { ...setup.start, y: 1e6 } }, drill } });
    runTable(table, 60);
    for (const seat of ['lead', 'propellant'] as const) expect(acknowledge(table, seat).ok).toBe(true);
    runTable(table, 600);
    expect(viewTable(table, AT.lead).talk.alerts).toMatchObject([{ isAcknowledged: true, isCleared: false }]);
    commandTable(table, AT.propellant, { kind: 'shutLine', shut: true });
    runTable(table, 12);
    expect(alertsAt(table, 'lead')).toEqual(['cleared told']);
    expect(alertsAt(table, 'propellant')).toEqual(['cleared told']);
    runTable(table, 312);
    expect(alertsAt(table, 'lead')).toEqual([]);
  });

  it('[TK5] that is back while it says that it has gone stands once', () => {
    let outside = true;
    const table = beginCrew({ model: outsideWhile(() => outside) });
    runTable(table, 60);
    outside = false;
    runTable(table, 132);
    expect(alertsAt(table, 'lead')).toEqual(['cleared marginOutside']);
    outside = true;
    runTable(table, 60);
    expect(alertsAt(table, 'lead')).toEqual(['warning marginOutside']);
  });

  it('[TK5] that was told stands until whoever it was told has acknowledged it', () => {
    const table = beginCrew({ seats: ['lead', 'sensors'] });
    tell(table, { text: 'Slope beyond the soft limit', level: 'advisory', to: ['lead', 'sensors', 'site'] });
    runTable(table, 1200);
    expect(viewTable(table, AT.lead).talk.alerts).toMatchObject([{ text: 'Slope beyond the soft limit' }]);
    acknowledge(table, 'lead');
    runTable(table, 12);
    expect(alertsAt(table, 'sensors')).toEqual(['advisory told']);
    acknowledge(table, 'sensors');
    runTable(table, 12);
    expect(alertsAt(table, 'sensors')).toEqual([]);
  });
});
