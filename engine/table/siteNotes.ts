import type { PilotAim } from '../descent/index.ts';
import type { TableState } from './tableState.ts';
import type { Command } from './tableTypes.ts';
import { withoutSign } from './withoutSign.ts';

/** Which way to move at the spot: as it comes, or last to the left or to the right. */
export const SPOT_APPROACHES = ['either way', 'to the left', 'to the right'] as const;
export type SpotApproach = (typeof SPOT_APPROACHES)[number];

/** What Site declares of the ground. */
export const GROUND_NOTES = ['as mapped', 'steeper', 'softer', 'rougher'] as const;
export type GroundNote = (typeof GROUND_NOTES)[number];

/** What Site has said. The whole crew is told; the stand-in at Flying makes for the spot. */
export interface SiteNotes {
  readonly spot?: MarkedSpot;
  readonly ground: GroundNote;
  /** The horizontal speed not to be passed at contact, hundredths of a meter a second. */
  readonly limitHundredths?: number;
  /** By how many edges of its footprint, counter-clockwise from the start, the lander is to stand turned; absent before the first such order. */
  readonly facing?: number;
}

/** Where to bring the center of mass down: whole meters of the section [m]. */
export interface MarkedSpot {
  readonly meters: number;
  readonly approach: SpotApproach;
}

export const NO_NOTES: SiteNotes = { ground: 'as mapped' };

/** What limit may be stated, hundredths of a meter a second. */
export const LIMIT_RANGE = { least: 0, most: 1000 } as const;

/** How far a turn may be ordered from the start, whole edges either way: every edge of a lander of up to seven legs. */
export const FACING_RANGE = { least: -3, most: 3 } as const;

type NoteCommand = Extract<
  Command,
  { kind: 'markSpot' | 'clearSpot' | 'declareGround' | 'stateLimit' | 'orderFacing' }
>;

export function notesAfter(notes: SiteNotes, command: NoteCommand): SiteNotes {
  switch (command.kind) {
    case 'markSpot':
      return { ...notes, spot: { meters: withoutSign(command.meters), approach: command.approach } };
    case 'clearSpot': {
      const { spot: _before, ...rest } = notes;
      return rest;
    }
    case 'declareGround':
      return { ...notes, ground: command.ground };
    case 'stateLimit':
      return { ...notes, limitHundredths: withoutSign(command.hundredths) };
    case 'orderFacing':
      return { ...notes, facing: withoutSign(command.steps) };
  }
  return command satisfies never;
}

/** Writes down what Site says with an order to turn, and remembers the tick of the descent at which one was first given. */
export function orderFacing(state: TableState, tick: number, notes: SiteNotes): void {
  if (notes.facing !== (state.site.facing ?? 0)) state.answered = { facing: tick, ...state.answered };
  state.site = notes;
}

/** Drift that a spot is met with, where it is to be come at from one side [m/s]. Ours: a fifth of what a squat lander bears. */
const APPROACH_DRIFT = 0.2;

/** What a pilot makes of a marked spot. */
export function aimAt({ meters, approach }: MarkedSpot): PilotAim {
  const drift = { 'either way': 0, 'to the left': -APPROACH_DRIFT, 'to the right': APPROACH_DRIFT }[approach];
  return { x: meters, drift };
}
