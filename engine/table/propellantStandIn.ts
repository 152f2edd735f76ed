import { TICK_RATE } from '../world/constants.ts';
import type { DescentState } from '../world/descent.ts';
import type { EngineSettings } from './engineSettings.ts';
import type { PropellantReadings } from './seatReadings.ts';

/** What the stand-in at Propellant remembers: for how many ticks in a row each has looked so. Plain data. */
export interface PropellantWatch {
  readonly leakFor: number;
  readonly burnsOnFor: number;
  /** One probe touches, while the lander is believed to be high up. */
  readonly falseTouchFor: number;
  /** A probe touches and the ground is near, where contact is not to shut the engine down. */
  readonly downFor: number;
}

export const NOTHING_SEEN: PropellantWatch = { leakFor: 0, burnsOnFor: 0, falseTouchFor: 0, downFor: 0 };

/** The gauge is good to 1 % of the load: so much less than reckoned is no noise, and no lag of the engine [-]. */
const MISSING_SHARE = 0.04;
/** From seeing a leak to shutting the line, three readings of the gauge [tick]. */
const LEAK_REACTION = 3 * TICK_RATE;
/** From seeing an engine burn on after contact, or a contact light that cannot be, to acting [tick]: a quick person. */
const CUT_REACTION = 1 * TICK_RATE;
/** No lander of ours touches from so high [m]. A second probe would say that it is the height that is wrong. */
const TOO_HIGH_TO_TOUCH = 5;
/** So low a light is believed [m]: two cues, the light and the height. */
const NEAR = 1;

/** What the stand-in goes by besides the readings of its seat. */
interface Seen {
  readonly load: number;
  readonly known: DescentState;
  readonly cutAtContact: boolean;
  readonly commandedPercent: number;
}

/** What the stand-in sees, by what the seat reads. `load` is what was aboard at the start [kg]. */
export function watchPropellant(
  watch: PropellantWatch,
  { gauge, reckoned, burns }: PropellantReadings,
  { load, known, cutAtContact, commandedPercent }: Seen,
): PropellantWatch {
  const { phase, height, legs } = known;
  const touching = legs.filter(({ inContact }) => inContact).length;
  const isLeaking = gauge !== undefined && reckoned - gauge > MISSING_SHARE * load;
  const isFalse = cutAtContact && touching === 1 && height > TOO_HIGH_TO_TOUCH;
  const burnsOn = burns && commandedPercent === 0 && phase === 'contact' && !isFalse;
  const isDown = !cutAtContact && touching > 0 && height < NEAR;
  return {
    leakFor: isLeaking ? watch.leakFor + 1 : 0,
    burnsOnFor: burnsOn ? watch.burnsOnFor + 1 : 0,
    falseTouchFor: isFalse ? watch.falseTouchFor + 1 : 0,
    downFor: isDown ? watch.downFor + 1 : 0,
  };
}

/** What the stand-in sets now. */
export function setByWatch(watch: PropellantWatch, settings: EngineSettings): EngineSettings {
  const { leakFor, burnsOnFor, falseTouchFor, downFor } = watch;
  if (falseTouchFor >= CUT_REACTION) return { ...settings, cutAtContact: false };
  if (Math.max(burnsOnFor, downFor) >= CUT_REACTION && settings.cutOff !== 'fired')
    return { ...settings, cutOff: 'fired' };
  if (leakFor >= LEAK_REACTION && !settings.lineShut) return { ...settings, lineShut: true };
  return settings;
}
