import { describe, expect, it } from 'vitest';
import type { Fault, SensorFault } from '../../../engine/faults/index.ts';
import { SENSOR_FAULT_KINDS } from '../../../engine/faults/index.ts';
import { SOURCES, TIMINGS, type Source } from '../../../engine/sensors/index.ts';
import { TICK_DT, type DescentState } from '../../../engine/world/index.ts';
import { kinematicState, livelyDescent, readOver, still } from '../../support/kinematicTruth.ts';

const SEED = 21;
const FROM = 200;
const TO = 400;
const TRUTH = livelyDescent(600);

interface Report {
  readonly tick: number;
  readonly isValid: boolean;
  readonly hasLock: boolean;
  readonly values: readonly number[];
}

/** All reports of a source, as they come. */
function reports(source: Source, faults: readonly Fault[], truth: readonly DescentState[] = TRUTH): readonly Report[] {
  const found: Report[] = [];
  readOver(truth, { seed: SEED, faults }, (readings, tick) => {
    const { arrivedTick, isValid, hasLock, values } = readings[source];
    if (arrivedTick === tick) found.push({ tick, isValid, hasLock, values: [...values] });
  });
  return found;
}

const SPAN = { fromTick: FROM, toTick: TO };
const RADAR = { source: 'velocityRadar', ...SPAN } as const;
const FAULTS: Readonly<Record<SensorFault['kind'], SensorFault>> = {
  noData: { ...RADAR, kind: 'noData', parameters: {} },
  freeze: { ...RADAR, kind: 'freeze', parameters: {} },
  bias: { ...RADAR, kind: 'bias', parameters: { size: 2, rise: 0 } },
  drift: { ...RADAR, kind: 'drift', parameters: { rate: 0.5 } },
  noise: { ...RADAR, kind: 'noise', parameters: { sigma: 1 } },
  delay: { ...RADAR, kind: 'delay', parameters: { by: 0.5 } },
  spike: { ...RADAR, kind: 'spike', parameters: { size: 20, chance: 0.3 } },
  falseValid: { ...RADAR, kind: 'falseValid', parameters: {} },
  falseInvalid: { ...RADAR, kind: 'falseInvalid', parameters: {} },
};

const HEALTHY = reports('velocityRadar', []);
const isInside = ({ tick }: Report): boolean => tick >= FROM && tick < TO;

/** Pairs of a report with the fault and the healthy one of the same tick, inside the span. */
function pairs(fault: SensorFault): readonly (readonly [Report, Report])[] {
  return reports('velocityRadar', [fault]).flatMap((report) => {
    const healthy = HEALTHY.find(({ tick }) => tick === report.tick);
    return healthy !== undefined && isInside(report) ? [[report, healthy] as const] : [];
  });
}

/** Reports of the radar from the last tick of the span on. */
function late(fault: SensorFault): readonly Report[] {
  return reports('velocityRadar', [fault]).filter(({ tick }) => tick >= TO);
}

describe('a sensor fault', () => {
  it.each(SENSOR_FAULT_KINDS)('[FA1] changes nothing before its first tick and from its last on: %s', (kind) => {
    const outside = reports('velocityRadar', [FAULTS[kind]]).filter((report) => !isInside(report));
    expect(outside).toEqual(HEALTHY.filter((report) => !isInside(report)));
    expect(outside.length).toBeGreaterThan(50);
  });

  // a radar that has lock is valid anyhow: false valid has a test of its own
  it.each(SENSOR_FAULT_KINDS.filter((kind) => kind !== 'falseValid'))(
    '[FA1] lasts to the end when no end is stated: %s',
    (kind) => {
      const { toTick: _, ...endless } = FAULTS[kind];
      expect(late(endless as SensorFault)).not.toEqual(late(FAULTS[kind]));
    },
  );

  it.each(SENSOR_FAULT_KINDS)('[FA1] leaves every other source alone: %s', (kind) => {
    for (const source of SOURCES.filter((name) => name !== 'velocityRadar'))
      expect(reports(source, [FAULTS[kind]])).toEqual(reports(source, []));
  });

  it('[FA1] no data: no report comes', () => {
    expect(reports('velocityRadar', [FAULTS.noData]).filter(isInside)).toEqual([]);
  });

  it('[FA1] freeze: each report repeats the last before it', () => {
    const last = HEALTHY.findLast(({ tick }) => tick < FROM)!;
    const frozen = pairs(FAULTS.freeze);
    expect(frozen.length).toBe(Math.floor((TO - FROM) / TIMINGS.velocityRadar.period));
    for (const [report] of frozen) expect(report.values).toEqual(last.values);
  });

  it('[FA1] bias: a constant at once, or in a ramp', () => {
    for (const [report, healthy] of pairs(FAULTS.bias))
      for (const [c, value] of report.values.entries()) expect(value - healthy.values[c]!).toBeCloseTo(2, 12);
    const ramp = { ...RADAR, kind: 'bias', parameters: { size: 2, rise: 2 } } as const;
    for (const [report, healthy] of pairs(ramp)) {
      const since = (report.tick - FROM) * TICK_DT;
      expect(report.values[0]! - healthy.values[0]!).toBeCloseTo(Math.min(2, since), 12);
    }
  });

  it('[FA1] drift: grows with time', () => {
    for (const [report, healthy] of pairs(FAULTS.drift))
      expect(report.values[1]! - healthy.values[1]!).toBeCloseTo(0.5 * (report.tick - FROM) * TICK_DT, 12);
  });

  it('[FA1] noise: of the stated deviation', () => {
    const endless = { source: 'inertialUnit', kind: 'noise', parameters: { sigma: 3 }, fromTick: 1 } as const;
    const truth = Array.from({ length: 4000 }, (_, tick) => kinematicState(tick, still(50)));
    const [noisy, healthy] = [reports('inertialUnit', [endless], truth), reports('inertialUnit', [], truth)];
    let sum = 0;
    for (const [i, { values }] of noisy.entries()) sum += (values[0]! - healthy[i]!.values[0]!) ** 2;
    // standard error of a variance: √(2/n); four of them
    expect(Math.abs(sum / noisy.length / 9 - 1)).toBeLessThan(4 * Math.sqrt(2 / noisy.length));
  });

  it('[FA1] delay: each report is the one of so much earlier', () => {
    // half a second is five samples of the radar
    for (const [report] of pairs(FAULTS.delay))
      expect(report.values).toEqual(HEALTHY.find(({ tick }) => tick === report.tick - 30)!.values);
  });

  it('[FA1] delay: up to the longest allowed, for every source', () => {
    for (const source of SOURCES) {
      const late = { source, kind: 'delay', parameters: { by: 3 }, fromTick: 300 } as const;
      const healthy = reports(source, []);
      for (const report of reports(source, [late]).filter(({ tick }) => tick >= 300)) {
        const period = TIMINGS[source].period;
        const back = Math.ceil(180 / period) * period;
        expect(report.values).toEqual(healthy.find(({ tick }) => tick === report.tick - back)!.values);
      }
    }
  });

  it('[FA1] spike: the stated share of the reports, up and down alike', () => {
    const endless = {
      source: 'inertialUnit',
      kind: 'spike',
      parameters: { size: 20, chance: 0.3 },
      fromTick: 1,
    } as const;
    const truth = Array.from({ length: 4000 }, (_, tick) => kinematicState(tick, still(50)));
    const [spiked, healthy] = [reports('inertialUnit', [endless], truth), reports('inertialUnit', [], truth)];
    const added = spiked.map(({ values }, i) => Math.round((values[0]! - healthy[i]!.values[0]!) * 1e6) / 1e6);
    expect(new Set(added)).toEqual(new Set([-20, 0, 20]));
    const share = (size: number): number => added.filter((value) => value === size).length / added.length;
    // binomial: four standard errors about 0.15
    const close = 4 * Math.sqrt((0.15 * 0.85) / added.length);
    expect(Math.abs(share(20) - 0.15)).toBeLessThan(close);
    expect(Math.abs(share(-20) - 0.15)).toBeLessThan(close);
  });

  it('[FA1] false valid: what cannot be measured is called good, and repeats itself', () => {
    const truth = Array.from({ length: 601 }, (_, tick) => kinematicState(tick, still(50, tick > 150 ? 0.5 : 0)));
    const healthy = reports('velocityRadar', [], truth).filter(isInside);
    const called = reports('velocityRadar', [FAULTS.falseValid], truth).filter(isInside);
    expect(healthy.every(({ isValid }) => !isValid)).toBe(true);
    expect(called.every(({ isValid, hasLock }) => isValid && hasLock)).toBe(true);
    expect(called.map(({ values }) => values)).toEqual(healthy.map(({ values }) => values));
  });

  it('[FA1] false invalid: what is good is called invalid', () => {
    for (const [report, healthy] of pairs(FAULTS.falseInvalid)) {
      expect(report).toMatchObject({ isValid: false, hasLock: true });
      expect(report.values).toEqual(healthy.values);
    }
  });

  it.each(['freeze', 'bias', 'drift', 'noise', 'spike'] as const)('[FA1] keeps to its channel: %s', (kind) => {
    const along = { ...FAULTS[kind], channel: 'along' };
    let changed = 0;
    for (const [report, healthy] of pairs(along)) {
      expect(report.values[0]).toBe(healthy.values[0]);
      if (report.values[1] !== healthy.values[1]) changed++;
    }
    expect(changed).toBeGreaterThan(5);
  });

  it('[FA1] on a frozen sensor a bias is added once, not with every report', () => {
    const last = HEALTHY.findLast(({ tick }) => tick < FROM)!;
    for (const report of reports('velocityRadar', [FAULTS.freeze, FAULTS.bias]).filter(isInside))
      expect(report.values[0]).toBeCloseTo(last.values[0]! + 2, 12);
  });

  it('[FA1] the indication of a leg is absent, or says that it is not latched, and no other', () => {
    for (const kind of ['indicationAbsent', 'legNotLatched', 'legMissing'] as const) {
      const fault = { source: 'legs', kind, parameters: { leg: 2 }, ...SPAN } as const;
      for (const report of reports('legIndications', [fault])) {
        // a sample is a tick old when it is reported; the switch itself fails at once
        const sampled = kind === 'indicationAbsent' ? report.tick : report.tick - TIMINGS.legIndications.latency;
        expect(report.values).toEqual([1, 1, sampled >= FROM && sampled < TO ? 0 : 1, 1]);
      }
    }
  });
});
