import type { Room } from '@colyseus/core';

/** How long a reserved place is kept for whoever asked for it [s], and a table for its first member. */
export const RESERVED_SECONDS = 10;

/** For a room that closes: the library would wait for everybody who asked for a place and has not come. */
export function dropReservations(room: Room): void {
  // private to the library by their types alone
  for (const timeout of Object.values<NodeJS.Timeout>(room['_reservedSeatTimeouts'])) clearTimeout(timeout);
  for (const sessionId of Object.keys(room['_reservedSeats'])) delete room['_reservedSeats'][sessionId];
}
