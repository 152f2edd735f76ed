/**
 * A line to a table over plain requests. `open` answers with the name of a line, which nobody else knows; then `read` is asked again and again and answers as
 * soon as there is something, and `write` brings what the client says. Each is asked one at a time and says its number, from 0: what a network
 * loses or repeats ends the line, and the client comes back with its token. `end` takes leave.
 */
export const LINE_PATHS = { open: 'line/open', read: 'line/read', write: 'line/write', end: 'line/end' } as const;

/** Not in the address: proxies write addresses down. */
export const LINE_HEADERS = {
  line: 'x-kilter-line',
  turn: 'x-kilter-turn',
  /** In an answer: the line has ended, with this code, and why as the parts of an address are written. */
  ended: 'x-kilter-ended',
} as const;

/** How such a line ended where nothing was said at the end, and where it vanished: as it is put for a WebSocket. */
export const LINE_ENDS = { noCode: 1005, vanished: 1006 } as const;

/** Largest body of a write [byte]. */
export const LARGEST_WRITE = 2048;

/** How long a read is kept waiting for something to say [ms]: proxies give up after half a minute or more. */
export const LONGEST_READ_MS = 8000;

/** The body of `open`, and its answer. Without a place it is a line to no table, on which everything is answered with one byte. */
export interface LineOpening {
  /** Process and room, as in the path of a WebSocket. */
  readonly room?: string;
  readonly session?: string;
}
export interface OpenedLine {
  readonly line: string;
}

/** What an answer to a read brings; an empty one: nothing has happened for a while. */
export interface Reading {
  readonly frames: readonly Uint8Array[];
  /** The line has ended, and these were the last frames. */
  readonly ended?: { readonly code: number; readonly reason: string };
}
