import { TICK_RATE } from '../world/constants.ts';
import type { Phase } from '../world/descent.ts';
import type { EngineSettings } from './engineSettings.ts';
import type { PropellantReadings } from './seatReadings.ts';

/** What the stand-in at Propellant remembers: for how many ticks in a row each has looked so. Plain data. */
export interface PropellantWatch {
  readonly leakFor: number;
  readonly burnsOnFor: number;
}

export const NO_LEAK_SEEN: PropellantWatch = { leakFor: 0, burnsOnFor: 0 };

/** The gauge is good to 1 % of the load: so much less than reckoned is no noise, and no lag of the engine [-]. */
const MISSING_SHARE = 0.04;
/** From seeing a leak to shutting the line, three readings of the gauge [tick]. */
const LEAK_REACTION = 3 * TICK_RATE;
/** From seeing an engine burn on after contact to firing the cut-off [tick]: a quick person. */
const CUT_REACTION = 1 * TICK_RATE;

/** What the stand-in sees, by what the seat reads. `load` is what was aboard at the start [kg]. */
export function watchPropellant(
  watch: PropellantWatch,
  { gauge, reckoned, burns }: PropellantReadings,
  { load, phase, commandedPercent }: { load: number; phase: Phase; commandedPercent: number },
): PropellantWatch {
  const isLeaking = gauge !== undefined && reckoned - gauge > MISSING_SHARE * load;
  const burnsOn = burns && commandedPercent === 0 && phase === 'contact';
  return { leakFor: isLeaking ? watch.leakFor + 1 : 0, burnsOnFor: burnsOn ? watch.burnsOnFor + 1 : 0 };
}

/** What the stand-in sets now. */
export function setByWatch({ leakFor, burnsOnFor }: PropellantWatch, settings: EngineSettings): EngineSettings {
  if (burnsOnFor >= CUT_REACTION && settings.cutOff !== 'fired') return { ...settings, cutOff: 'fired' };
  if (leakFor >= LEAK_REACTION && !settings.lineShut) return { ...settings, lineShut: true };
  return settings;
}
