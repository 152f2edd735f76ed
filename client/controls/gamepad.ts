import type { DeskAction } from '../settings/keys.ts';
import type { CommandDesk } from './commands.ts';
import { ACTS } from './keyboard.ts';
import { REPEAT } from './repeat.ts';

/** What a gamepad can ask for: flight actions, and to go on or to hold by buttons of their own. */
export type PadAct = Exclude<DeskAction, 'hold'> | 'goOn' | 'pause';

/** What is read of a gamepad, by the open standard mapping. */
export interface PadReading {
  /** -1 to 1: left stick right and down, right stick right and down. */
  readonly axes: readonly number[];
  readonly buttons: readonly { readonly pressed: boolean; readonly value: number }[];
}

/** Of one act: since when it is asked for without a pause, and when it was last done [ms]. */
interface Held {
  readonly since: number | undefined;
  readonly lastAt: number;
}

export type PadMemory = Readonly<Partial<Record<PadAct, Held>>>;

/** A stick or trigger that is pushed less asks for nothing [-]. */
const DEAD_ZONE = 0.4;

/** Places in the standard mapping. */
const AXIS = { leftRight: 0, rightDown: 3 } as const;
const BUTTON = {
  a: 0,
  b: 1,
  x: 2,
  y: 3,
  leftTrigger: 6,
  rightTrigger: 7,
  up: 12,
  down: 13,
  left: 14,
  right: 15,
} as const;

interface Asking {
  readonly act: PadAct;
  readonly isAsked: (pad: PadReading) => boolean;
  /** Goes on for as long as it is held. */
  readonly repeats: boolean;
}

const pushed = (pad: PadReading, axis: number, way: 1 | -1) => way * (pad.axes[axis] ?? 0) > DEAD_ZONE;
const pressed = (pad: PadReading, button: number) => pad.buttons[button]?.pressed === true;
const pulled = (pad: PadReading, button: number) => (pad.buttons[button]?.value ?? 0) > DEAD_ZONE;

const ASKED: readonly Asking[] = [
  {
    act: 'thrustMore',
    isAsked: (pad) => pushed(pad, AXIS.rightDown, -1) || pulled(pad, BUTTON.rightTrigger) || pressed(pad, BUTTON.up),
    repeats: true,
  },
  {
    act: 'thrustLess',
    isAsked: (pad) => pushed(pad, AXIS.rightDown, 1) || pulled(pad, BUTTON.leftTrigger) || pressed(pad, BUTTON.down),
    repeats: true,
  },
  { act: 'leanLeft', isAsked: (pad) => pushed(pad, AXIS.leftRight, -1) || pressed(pad, BUTTON.left), repeats: true },
  { act: 'leanRight', isAsked: (pad) => pushed(pad, AXIS.leftRight, 1) || pressed(pad, BUTTON.right), repeats: true },
  { act: 'goOn', isAsked: (pad) => pressed(pad, BUTTON.a), repeats: false },
  { act: 'pause', isAsked: (pad) => pressed(pad, BUTTON.b), repeats: false },
  { act: 'engineOff', isAsked: (pad) => pressed(pad, BUTTON.x), repeats: false },
  { act: 'upright', isAsked: (pad) => pressed(pad, BUTTON.y), repeats: false },
];

/**
 * What a gamepad asks for at this moment: steps, as from held keys, and no act more often than a held button repeats. A gamepad that is gone asks for
 * nothing, so that what was commanded stays.
 */
export function readPad(
  pad: PadReading | undefined,
  before: PadMemory,
  nowMs: number,
): { readonly acts: readonly PadAct[]; readonly memory: PadMemory } {
  const acts: PadAct[] = [];
  const memory: Partial<Record<PadAct, Held>> = {};
  for (const { act, isAsked, repeats } of ASKED) {
    const { since, lastAt } = before[act] ?? { since: undefined, lastAt: -Infinity };
    const mayAct = nowMs - lastAt >= REPEAT.everyMs;
    if (pad === undefined || !isAsked(pad)) {
      memory[act] = { since: undefined, lastAt };
    } else if (mayAct && (since === undefined || (repeats && nowMs - since >= REPEAT.afterMs))) {
      acts.push(act);
      memory[act] = { since: since ?? nowMs, lastAt: nowMs };
    } else {
      memory[act] = { since, lastAt };
    }
  }
  return { acts, memory };
}

function perform(desk: CommandDesk, act: PadAct): void {
  if (act === 'goOn') desk.goOn();
  else if (act === 'pause') desk.pause();
  else ACTS[act](desk);
}

/** Reads the first gamepad of the standard mapping, frame by frame, for as long as it is to. */
export function followPads(desk: CommandDesk): { follow(isWanted: boolean): void } {
  let frame: number | undefined;
  let memory: PadMemory = {};
  const look = (nowMs: number) => {
    frame = requestAnimationFrame(look);
    const pad = navigator.getGamepads().find((one) => one?.connected === true && one.mapping === 'standard');
    const read = readPad(pad ?? undefined, memory, nowMs);
    ({ memory } = read);
    for (const act of read.acts) perform(desk, act);
  };
  return {
    follow(isWanted) {
      if (isWanted) {
        frame ??= requestAnimationFrame(look);
      } else if (frame !== undefined) {
        cancelAnimationFrame(frame);
        frame = undefined;
      }
    },
  };
}
