import { Protocol } from '@colyseus/core';
import { createTokenBucket } from '../tokenBucket.ts';
import { createBacklogWatch } from './backlog.ts';
import { isPlainFrame } from './frame.ts';

/** Frames of one line: four times what is ever answered. Past this it is cut. */
const FRAME_RATE = { burst: 160, perSecond: 120 } as const;

/** How long a line may take to join the table that it came for [ms]. */
const JOIN_MS = 5000;

/** How long the other end has to take its leave when it is cut [ms]. */
export const FAREWELL_MS = 500;

/** A rule of this server was broken; our own client comes back. */
export const POLICY = 1008;

/** What one client may do with its line, whatever the line is made of. */
interface LineRules {
  /** Why the line is to be cut for this frame; undefined: it may pass. */
  offence(frame: Uint8Array): string | undefined;
  /** Whether too much is left unread; to be asked each time something is to be sent. */
  isChoked(waitingBytes: number): boolean;
  /** The line has ended. */
  end(): void;
}

export function createLineRules(cut: (reason: string) => void): LineRules {
  const frames = createTokenBucket(FRAME_RATE);
  const isChoked = createBacklogWatch();
  const joining = setTimeout(() => cut('Nothing was joined.'), JOIN_MS).unref();
  return {
    offence(frame) {
      if (!frames.draw(performance.now())) return 'Too many messages.';
      if (!isPlainFrame(frame)) return 'Not understood.';
      if (frame[0] === Protocol.JOIN_ROOM) clearTimeout(joining);
      return undefined;
    },
    isChoked: (waitingBytes) => isChoked(waitingBytes, performance.now()),
    end: () => clearTimeout(joining),
  };
}
