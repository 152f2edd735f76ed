import type { ControlInput, Valves } from '../world/descent.ts';
import type { TableState } from './tableState.ts';
import type { Command } from './tableTypes.ts';
import { withoutSign } from './withoutSign.ts';

/** not armed: it cannot be fired. fired: the valves are shut for the rest of the descent. */
export const CUT_OFF_STATES = ['not armed', 'armed', 'fired'] as const;

/** How Propellant has set the engine. The whole crew is told. */
export interface EngineSettings {
  /** The most thrust that reaches the engine, whole percent of its maximum [%]. */
  readonly ceilingPercent: number;
  readonly cutOff: (typeof CUT_OFF_STATES)[number];
  /** The contact signal shuts the engine down. */
  readonly cutAtContact: boolean;
  /** One of two feed lines is shut: what leaks there stops, and the engine gets ONE_LINE_PERCENT at most. */
  readonly lineShut: boolean;
}

export const FIRST_SETTINGS: EngineSettings = {
  ceilingPercent: 100,
  cutOff: 'not armed',
  cutAtContact: true,
  lineShut: false,
};

/** Where the ceiling may be set, whole percent [-]. */
export const CEILING_RANGE = { least: 0, most: 100 } as const;

/**
 * What one feed line can give, of full thrust [%]. Ours: a lander that is flown has 1.25 times the thrust of its weight with full tanks, so that one line just
 * carries it.
 */
export const ONE_LINE_PERCENT = 80;

type SettingCommand = Extract<
  Command,
  { kind: 'setCeiling' | 'armCutOff' | 'fireCutOff' | 'setCutAtContact' | 'shutLine' }
>;

export function settingsAfter(settings: EngineSettings, command: SettingCommand): EngineSettings {
  switch (command.kind) {
    case 'setCeiling':
      return { ...settings, ceilingPercent: withoutSign(command.percent) };
    case 'armCutOff':
      return { ...settings, cutOff: command.armed ? 'armed' : 'not armed' };
    case 'fireCutOff':
      return { ...settings, cutOff: 'fired' };
    case 'setCutAtContact':
      return { ...settings, cutAtContact: command.on };
    case 'shutLine':
      return { ...settings, lineShut: command.shut };
  }
  return command satisfies never;
}

/** Sets the engine, and remembers the tick of the descent at which a leak or an engine that burns on was first answered. */
export function setEngine(state: TableState, tick: number, settings: EngineSettings): void {
  const { engine: before } = state;
  state.engine = settings;
  if (settings.lineShut && !before.lineShut) state.answered = { lineShut: tick, ...state.answered };
  if (settings.cutOff === 'fired' && before.cutOff !== 'fired') state.answered = { ...state.answered, cutOff: tick };
}

/** What reaches the engine of what the levers say. */
export function throttled(levers: ControlInput, settings: EngineSettings): ControlInput {
  const most = mostPercent(settings);
  return levers.thrustPercent <= most ? levers : { ...levers, thrustPercent: most };
}

export function mostPercent({ ceilingPercent, cutOff, lineShut }: EngineSettings): number {
  if (cutOff === 'fired') return 0;
  return lineShut ? Math.min(ONE_LINE_PERCENT, ceilingPercent) : ceilingPercent;
}

export function valvesOf({ cutOff, lineShut }: EngineSettings): Valves {
  return { isCut: cutOff === 'fired', isLineShut: lineShut };
}
