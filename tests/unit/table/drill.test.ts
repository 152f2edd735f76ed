import { describe, expect, it } from 'vitest';
import type { EventRow } from '../../../engine/drill/index.ts';
import { viewTable, type Table } from '../../../engine/table/index.ts';
import { commandTable } from '../../support/askTable.ts';
import { LEAK, ROW, setDrill, stepBy } from '../../support/plainDrill.ts';

const tell = (to: EventRow['effects'][number] & { do: 'tell' }) => [to];
const stateOf = (table: Table, id: string) => table.state.events?.rows[id]?.state;

describe('an inject', () => {
  it('[TA45] is sent at its time, at its height, or after another, once, and not while the clock is held', () => {
    const effects = tell({ do: 'tell', text: 'Now.', to: ['lead'] });
    const table = setDrill([
      { ...ROW, id: 'time', trigger: { on: 'time', seconds: 0.5 }, effects },
      { ...ROW, id: 'height', trigger: { on: 'height', meters: 80 }, effects },
      { ...ROW, id: 'after', trigger: { on: 'inject', inject: 'time', seconds: 0.25 }, effects },
    ]);
    stepBy(table, 29);
    commandTable(table, 'm1', { kind: 'hold' });
    stepBy(table, 100);
    expect(stateOf(table, 'time')).toBe('waiting');
    commandTable(table, 'm1', { kind: 'resume' });
    stepBy(table, 1);
    expect(stateOf(table, 'time')).toBe('sent');
    stepBy(table, 70);
    const { rows } = table.state.events!;
    // half a meter a tick: 80 m after 40 ticks
    expect([rows['time'], rows['height'], rows['after']].map((row) => row?.sentTicks)).toEqual([[30], [40], [45]]);
  });

  it('[TA45] reaches the displays that it names and no others, and what it says of itself reaches the control side alone', () => {
    const effects = tell({ do: 'tell', text: 'The page has changed.', to: ['site', 'room'], level: 'advisory' });
    const table = setDrill([{ ...ROW, id: 'page', trigger: { on: 'time', seconds: 0.1 }, effects }]);
    stepBy(table, 10);
    const members = ['m1', 'm2', 'm3', 'm4', 'm5', 'm6', 'm7'];
    const dealt = members.filter((id) => viewTable(table, id).dealt.length > 0);
    expect(dealt).toEqual(['m1', 'm6', 'm7']);
    expect(viewTable(table, 'm6').dealt).toEqual([{ text: 'The page has changed.', level: 'advisory', after: 0.1 }]);
    for (const id of members.slice(1))
      expect(JSON.stringify(viewTable(table, id))).not.toMatch(/it is so|Shut the line/);
  });

  it('[TA45] is sent, repeated, skipped and put off by hand', () => {
    const effects = tell({ do: 'tell', text: 'Now.', to: ['lead'] });
    const row = { ...ROW, effects };
    const table = setDrill([
      { ...row, id: 'hand', trigger: { on: 'hand' } },
      { ...row, id: 'skip', trigger: { on: 'time', seconds: 0.5 } },
      { ...row, id: 'late', trigger: { on: 'time', seconds: 0.5 } },
    ]);
    stepBy(table, 10);
    for (let i = 0; i < 2; i += 1) {
      expect(commandTable(table, 'm1', { kind: 'sendInject', inject: 'hand' }).ok).toBe(true);
      stepBy(table, 5);
    }
    commandTable(table, 'm1', { kind: 'skipInject', inject: 'skip' });
    commandTable(table, 'm1', { kind: 'delayInject', inject: 'late', seconds: 1 });
    const dueIn = () => viewTable(table, 'm1').control?.rows.find(({ id }) => id === 'late')?.dueIn;
    const before = dueIn();
    stepBy(table, 30);
    // it comes down to nothing as the clock of the descent runs
    expect([before! - dueIn()!, table.state.events!.rows['late']!.dueTick]).toEqual([0.5, 20 + 60 * before!]);
    stepBy(table, 50);
    const { rows } = table.state.events!;
    expect(rows['hand']?.sentTicks).toEqual([10, 15]);
    expect(rows['skip']).toEqual({ state: 'skipped', sentTicks: [] });
    expect(rows['late']?.sentTicks).toEqual([80]);
    expect(viewTable(table, 'm2').dealt.length).toBe(3);
    const twice = commandTable(table, 'm1', { kind: 'skipInject', inject: 'late' });
    expect(twice).toMatchObject({ ok: false, error: { code: 'table/inject-over' } });
    const unknown = commandTable(table, 'm1', { kind: 'sendInject', inject: 'none' });
    expect(unknown).toMatchObject({ ok: false, error: { code: 'table/no-inject' } });
  });

  it('[TA45] lets fail what it names from the next tick on, and mends it for as long as it says', () => {
    const table = setDrill([
      {
        ...ROW,
        id: 'leak',
        trigger: { on: 'time', seconds: 0.1 },
        effects: [{ do: 'fail', name: 'leak', fault: LEAK }],
      },
      { ...ROW, id: 'dry', trigger: { on: 'time', seconds: 0.5 }, effects: [{ do: 'mend', name: 'leak', seconds: 1 }] },
    ]);
    stepBy(table, 40);
    const spans = table.state.failures.map(({ fault }) => [fault.fromTick, fault.toTick]);
    expect(spans).toEqual([
      [7, 31],
      [91, undefined],
    ]);
  });

  it('[TA46] of a contingency is sent where nobody has answered, and put away where somebody has', () => {
    const rows: readonly EventRow[] = [
      {
        ...ROW,
        id: 'leak',
        trigger: { on: 'time', seconds: 0.1 },
        effects: [{ do: 'fail', name: 'leak', fault: LEAK }],
      },
      {
        ...ROW,
        id: 'hint',
        kind: 'contingency',
        unless: 'shut',
        trigger: { on: 'inject', inject: 'leak', seconds: 1 },
        effects: tell({ do: 'tell', text: 'Look at the gauge.', to: ['propellant'] }),
        responses: [],
      },
    ];
    const asleep = setDrill(rows);
    stepBy(asleep, 100);
    expect(stateOf(asleep, 'hint')).toBe('sent');
    const awake = setDrill(rows);
    stepBy(awake, 20);
    commandTable(awake, 'm5', { kind: 'shutLine', shut: true });
    stepBy(awake, 80);
    expect(stateOf(awake, 'hint')).toBe('not needed');
  });
});

describe('turns', () => {
  it('[TA44] let orders lie face down until Lead turns them over, then run for four seconds', () => {
    const table = setDrill([]);
    commandTable(table, 'm1', { kind: 'setConduct', conduct: 'turns' });
    const { tick } = table.run.flight;
    stepBy(table, 50);
    expect(table.run.flight.tick).toBe(tick);
    commandTable(table, 'm5', { kind: 'setCeiling', percent: 80 });
    commandTable(table, 'm5', { kind: 'setCeiling', percent: 70 });
    commandTable(table, 'm3', { kind: 'orderDescentRate', tenths: 20 });
    expect(table.state.engine.ceilingPercent).toBe(100);
    expect(viewTable(table, 'm5').turn).toMatchObject({
      laying: true,
      awaited: ['sensors', 'site'],
      own: [{ order: 'setCeiling', figure: 70 }],
    });
    expect(JSON.stringify(viewTable(table, 'm3').turn)).not.toMatch('setCeiling');
    expect(commandTable(table, 'm3', { kind: 'turnOver' })).toMatchObject({ ok: false });
    expect(commandTable(table, 'm2', { kind: 'turnOver' }).ok).toBe(true);
    expect(table.state.engine.ceilingPercent).toBe(70);
    expect(table.state.orders?.descentRateTenths).toBe(20);
    const height = table.run.flight.tick;
    stepBy(table, 500);
    expect(table.run.flight.tick - height).toBeLessThanOrEqual(240);
  });

  it('[TA44] take an order back, and refuse to resume while orders are awaited', () => {
    const table = setDrill([]);
    commandTable(table, 'm1', { kind: 'setConduct', conduct: 'turns' });
    commandTable(table, 'm5', { kind: 'setCeiling', percent: 80 });
    expect(commandTable(table, 'm5', { kind: 'takeBack' }).ok).toBe(true);
    expect(viewTable(table, 'm5').turn?.own).toEqual([]);
    expect(commandTable(table, 'm1', { kind: 'resume' })).toMatchObject({ error: { code: 'table/turns' } });
    commandTable(table, 'm1', { kind: 'turnOver' });
    expect(table.state.engine.ceilingPercent).toBe(100);
  });

  it('[TA43] the control side is shown at which true height it was sent, also by hand', () => {
    const effects = tell({ do: 'tell', text: 'Now.', to: ['lead'] });
    const table = setDrill([{ ...ROW, id: 'card', trigger: { on: 'hand' }, effects }]);
    stepBy(table, 40);
    commandTable(table, 'm1', { kind: 'sendInject', inject: 'card' });
    const [row] = viewTable(table, 'm1').control?.rows ?? [];
    // half a meter a tick
    expect(row?.sentHeight).toBe(80);
  });

  it('[TA43] the control side is shown which responses were seen after it was sent, and when', () => {
    const effects = tell({ do: 'tell', text: 'Now.', to: ['lead'] });
    const table = setDrill([{ ...ROW, id: 'time', trigger: { on: 'time', seconds: 0.5 }, effects }]);
    const seen = () => viewTable(table, 'm1').control?.rows.map((row) => row.seen);
    stepBy(table, 15);
    // before it was sent nothing answers to it
    commandTable(table, 'm5', { kind: 'shutLine', shut: true });
    commandTable(table, 'm5', { kind: 'shutLine', shut: false });
    stepBy(table, 30);
    expect(seen()).toEqual([[]]);
    commandTable(table, 'm5', { kind: 'shutLine', shut: true });
    stepBy(table, 15);
    expect(seen()).toEqual([[{ response: 'shut', after: 0.75 }]]);
  });
});

describe('what failed in a drill', () => {
  it('[TA45] stands on the scorecard in order of time, once where it was mended for a while', () => {
    const altimeter = { source: 'altimeter', kind: 'noData', parameters: {} } as const;
    const radar = { source: 'velocityRadar', kind: 'freeze', parameters: {} } as const;
    const table = setDrill([
      { ...ROW, id: 'late', trigger: { on: 'time', seconds: 1.5 }, effects: [{ do: 'fail', name: 'b', fault: radar }] },
      {
        ...ROW,
        id: 'lost',
        trigger: { on: 'time', seconds: 0.5 },
        effects: [{ do: 'fail', name: 'a', fault: altimeter }],
      },
      { ...ROW, id: 'back', trigger: { on: 'time', seconds: 1 }, effects: [{ do: 'mend', name: 'a', seconds: 1 }] },
    ]);
    stepBy(table, 240);
    const failures = viewTable(table, 'm2').scorecard?.failures?.map(({ source, after }) => [source, after]);
    expect(failures).toEqual([
      ['altimeter', 31 / 60],
      ['velocityRadar', 91 / 60],
    ]);
  });
});
