import type { TableView } from '../../engine/table/index.ts';
import { ALERT_LEVELS, type AlertLevel } from '../../engine/talk/index.ts';

/** What is heard of a descent: only from what the view of its seat shows, which in a descent by instruments is what is believed. */
type HeardOf = Pick<TableView, 'stage' | 'held' | 'aborting'> & {
  readonly flight: Pick<TableView['flight'], 'thrust' | 'phase'> & {
    readonly legs: readonly Pick<TableView['flight']['legs'][number], 'strokeUsed'>[];
  };
  readonly margin: { readonly predicted?: { readonly utilisation: number } };
  readonly talk: { readonly alerts: readonly HeardAlert[] };
};
type HeardAlert = Pick<TableView['talk']['alerts'][number], 'id' | 'level' | 'isCleared'>;

/** The engine: noise through a low pass; it grows louder and brighter with thrust. */
interface EngineSound {
  readonly gain: number;
  /** Of the low pass [Hz]. */
  readonly cutoff: number;
}

const LOUDEST_ENGINE = 0.5;
const DULLEST = 90;
const BRIGHTEST = 700;

/** `share` of the most thrust, from 0 to 1. */
export function engineSound(share: number): EngineSound {
  const part = within(share);
  return { gain: LOUDEST_ENGINE * Math.sqrt(part), cutoff: DULLEST + (BRIGHTEST - DULLEST) * part };
}

/** Of the tone of the margin: an octave from no speed to the tip limit, and half of one more beyond it [Hz]. */
const LOWEST_TONE = 196;
const MOST_SHARE = 1.5;

/** How high the margin sounds for a share of the tip limit [Hz]: the nearer to tipping, the higher. */
export function marginTone(utilisation: number): number {
  return LOWEST_TONE * 2 ** within(utilisation, MOST_SHARE);
}

/** One note of an alert. */
interface Note {
  /** [Hz] */
  readonly tone: number;
  /** After the first one begins, and how long it sounds [s]. */
  readonly after: number;
  readonly lasts: number;
}

/** The graver, the more notes; an advisory falls, a caution stands, a warning and an emergency rise. Soft at both ends, and over within a second. */
export const ALERT_NOTES: Readonly<Record<AlertLevel, readonly Note[]>> = {
  emergency: [440, 554, 659, 880].map((tone, i) => ({ tone, after: 0.2 * i, lasts: 0.18 })),
  warning: [440, 554, 659].map((tone, i) => ({ tone, after: 0.22 * i, lasts: 0.2 })),
  caution: [494, 494].map((tone, i) => ({ tone, after: 0.3 * i, lasts: 0.22 })),
  advisory: [392, 330].map((tone, i) => ({ tone, after: 0.26 * i, lasts: 0.24 })),
};

/** Between the beginnings of two alerts that sound at least this long [s]. */
export const ALERTS_APART = 4;

/** What sounds from now on, and what sounds once. */
export interface Heard {
  readonly engine: EngineSound;
  /** [Hz]; undefined where no margin is told. */
  readonly tone: number | undefined;
  /** It has just met the ground. */
  readonly isContact: boolean;
  /** How much more of the stroke of the leg that is crushed most is used up since the view before, from 0 to 1. */
  readonly crush: number;
  readonly alert: AlertLevel | undefined;
}

const DOWN: readonly TableView['flight']['phase'][] = ['contact', 'settling', 'at rest'];

/** From one view to the next of the same descent. `sinceAlert`: since the last alert sounded [s]. */
export function heardOf(
  view: HeardOf,
  before: HeardOf | undefined,
  { maxThrust, sinceAlert }: { readonly maxThrust: number; readonly sinceAlert: number },
): Heard {
  const isRunning = view.stage === 'descending' && !view.held;
  const { flight, margin } = view;
  const went = isRunning && before?.stage === 'descending' ? before : undefined;
  const isAloft = !DOWN.includes(flight.phase);
  return {
    engine: engineSound(isRunning ? flight.thrust / maxThrust : 0),
    tone:
      isRunning && isAloft && !view.aborting && margin.predicted !== undefined
        ? marginTone(margin.predicted.utilisation)
        : undefined,
    isContact: went !== undefined && !isAloft && !DOWN.includes(went.flight.phase),
    crush: went === undefined ? 0 : within(mostCrushed(flight) - mostCrushed(went.flight)),
    alert: view.stage === 'descending' && sinceAlert >= ALERTS_APART ? gravest(newAlerts(view, before)) : undefined,
  };
}

function mostCrushed({ legs }: HeardOf['flight']): number {
  return Math.max(0, ...legs.map(({ strokeUsed }) => strokeUsed));
}

function newAlerts({ talk }: HeardOf, before: HeardOf | undefined): readonly HeardAlert[] {
  return talk.alerts.filter(
    ({ id, isCleared }) => !isCleared && before?.talk.alerts.every((known) => known.id !== id) !== false,
  );
}

function gravest(alerts: readonly HeardAlert[]): AlertLevel | undefined {
  return ALERT_LEVELS.find((level) => alerts.some((alert) => alert.level === level));
}

function within(value: number, most = 1): number {
  return Math.min(most, Math.max(0, value));
}
