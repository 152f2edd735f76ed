import type { Source } from '../sensors/sources.ts';
import type { BiasFault } from './bias.ts';
import type { CutOffFailsFault } from './cutOffFails.ts';
import type { DelayFault } from './delay.ts';
import type { DriftFault } from './drift.ts';
import type { FalseInvalidFault } from './falseInvalid.ts';
import type { FalseValidFault } from './falseValid.ts';
import type { FreezeFault } from './freeze.ts';
import type { IndicationAbsentFault } from './indicationAbsent.ts';
import type { LeakFault } from './leak.ts';
import type { LegMissingFault } from './legMissing.ts';
import type { LegNotLatchedFault } from './legNotLatched.ts';
import type { LegSoftFault } from './legSoft.ts';
import type { NoDataFault } from './noData.ts';
import type { NoiseFault } from './noise.ts';
import type { SpikeFault } from './spike.ts';
import type { ThrustLossFault } from './thrustLoss.ts';
import type { ThrustOffsetFault } from './thrustOffset.ts';

/** What can go wrong with what a source says. */
export const SENSOR_FAULT_KINDS = [
  'noData',
  'freeze',
  'bias',
  'drift',
  'noise',
  'delay',
  'spike',
  'falseValid',
  'falseInvalid',
] as const;

/** What can go wrong with the lander. */
export const VEHICLE_FAULT_KINDS = [
  'thrustLoss',
  'thrustOffset',
  'cutOffFails',
  'leak',
  'legSoft',
  'legMissing',
  'legNotLatched',
  'indicationAbsent',
] as const;
export type VehicleFaultKind = (typeof VEHICLE_FAULT_KINDS)[number];

/** The parts of a lander that can be out of order. */
export const VEHICLE_PARTS = ['engine', 'tanks', 'legs'] as const;
export type VehiclePart = (typeof VEHICLE_PARTS)[number];

/** The part that each belongs to. */
export const VEHICLE_FAULT_SOURCES = {
  thrustLoss: 'engine',
  thrustOffset: 'engine',
  cutOffFails: 'engine',
  leak: 'tanks',
  legSoft: 'legs',
  legMissing: 'legs',
  legNotLatched: 'legs',
  indicationAbsent: 'legs',
} as const satisfies Readonly<Record<VehicleFaultKind, VehiclePart>>;

/** When a fault acts: from `fromTick` on, and no more from `toTick` on; without one, to the end [tick]. */
export interface FaultSpan {
  readonly fromTick: number;
  readonly toTick?: number;
}

/** Which readings a sensor fault acts on: those of one channel of the source, or of all. */
export interface SensorFaultFrame extends FaultSpan {
  readonly source: Source;
  /** Name of a channel of the source, see CHANNELS; absent: all of them. */
  readonly channel?: string;
}

export interface VehicleFaultFrame<Part extends VehiclePart> extends FaultSpan {
  readonly source: Part;
}

export type SensorFault =
  | NoDataFault
  | FreezeFault
  | BiasFault
  | DriftFault
  | NoiseFault
  | DelayFault
  | SpikeFault
  | FalseValidFault
  | FalseInvalidFault;

export type VehicleFault =
  | ThrustLossFault
  | ThrustOffsetFault
  | CutOffFailsFault
  | LeakFault
  | LegSoftFault
  | LegMissingFault
  | LegNotLatchedFault
  | IndicationAbsentFault;

/** Something that goes wrong. Plain data; only `parseFault` makes one from foreign data. */
export type Fault = SensorFault | VehicleFault;

/** A fault without the ticks between which it acts: what a drill deals. */
export type UndatedFault = Fault extends infer Each
  ? Each extends Fault
    ? Omit<Each, keyof FaultSpan>
    : never
  : never;

export function isSensorFault(fault: Fault): fault is SensorFault {
  return SENSOR_FAULT_KINDS.some((kind) => kind === fault.kind);
}
