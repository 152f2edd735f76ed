import { DEFAULT_KEYS, parseKeys, type KeyMap } from './keys.ts';

/** SI, or feet, pounds and seconds. Everything is computed in SI, whatever is shown. */
export const UNIT_SYSTEMS = ['si', 'us'] as const;
export type UnitSystem = (typeof UNIT_SYSTEMS)[number];

/** 'system': as the device is set. */
export const MOTIONS = ['system', 'less'] as const;
type Motion = (typeof MOTIONS)[number];

/** How one person wants the page, whichever table it shows. */
export interface Settings {
  readonly units: UnitSystem;
  readonly motion: Motion;
  /** Single characters act as keys: off for people whose speech input types them. */
  readonly letters: boolean;
  readonly keys: KeyMap;
  /** A descent is heard, too. */
  readonly sound: boolean;
  /** Of VOLUMES. */
  readonly volume: number;
}

/** How loud [%]. */
export const VOLUMES = [25, 50, 100] as const;

export const DEFAULTS: Settings = {
  units: 'si',
  motion: 'system',
  letters: true,
  keys: DEFAULT_KEYS,
  sound: false,
  volume: 50,
};

/** The settings in a stored text; whatever of it is missing or makes no sense is as it was at first. */
export function parseSettings(text: string | null): Settings {
  const { units, motion, letters, keys, sound, volume } = parseObject(text);
  return {
    units: UNIT_SYSTEMS.find((known) => known === units) ?? DEFAULTS.units,
    motion: MOTIONS.find((known) => known === motion) ?? DEFAULTS.motion,
    letters: typeof letters === 'boolean' ? letters : DEFAULTS.letters,
    keys: (isObject(keys) ? parseKeys(keys) : undefined) ?? DEFAULTS.keys,
    sound: typeof sound === 'boolean' ? sound : DEFAULTS.sound,
    volume: VOLUMES.find((known) => known === volume) ?? DEFAULTS.volume,
  };
}

function parseObject(text: string | null): Readonly<Record<string, unknown>> {
  try {
    const stored: unknown = JSON.parse(text ?? '{}');
    return isObject(stored) ? stored : {};
  } catch {
    return {};
  }
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
