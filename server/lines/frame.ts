import { Protocol } from '@colyseus/core';

/**
 * Looks at a frame of a client before anything decodes it: a frame of 2 kB can hold records that are costly to decode, and nobody of ours sends such. What
 * passes is cheap whatever it says: a few values, each written out once, with no type beyond those of JSON.
 */
export function isPlainFrame(frame: Uint8Array): boolean {
  const [code = NO_CODE] = frame;
  switch (code) {
    case Protocol.JOIN_ROOM:
    case Protocol.LEAVE_ROOM:
    case Protocol.PING:
      return frame.length === 1;
    case Protocol.ROOM_DATA:
      return isPlainMessage(frame, 1);
    case Protocol.ROOM_REQUEST: {
      const at = afterRequestNumber(frame);
      return at !== undefined && isPlainMessage(frame, at);
    }
    default:
      return false;
  }
}

const NO_CODE = 0;

/** Objects, lists and what is in them, together; a command of ours has at most a dozen. */
const MOST_VALUES = 64;

/** Bytes that follow the first one of a number, by the library's way of writing one. */
const NUMBER_BYTES: Readonly<Record<number, number>> = { 0xcc: 1, 0xcd: 2, 0xce: 4 };

function afterRequestNumber(frame: Uint8Array): number | undefined {
  const first = frame[1] ?? 0xff;
  if (first < 0x80) return 2;
  const more = NUMBER_BYTES[first];
  return more === undefined ? undefined : 2 + more;
}

/** The name of the message as a short text, then at most one value, which ends with the frame. */
function isPlainMessage(frame: Uint8Array, from: number): boolean {
  const name = frame[from] ?? 0;
  if (!isShortText(name)) return false;
  const at = from + 1 + (name & 0x1f);
  return at === frame.length || endOfValue(frame, at) === frame.length;
}

/** Where the value that begins there ends; undefined where it is not plain, or holds too much. */
function endOfValue(frame: Uint8Array, from: number): number | undefined {
  let at = from;
  let expected = 1;
  for (let seen = 0; expected > 0; seen += 1) {
    const token = readToken(frame, at);
    if (token === undefined || seen === MOST_VALUES) return undefined;
    at += token.bytes;
    expected += token.holds - 1;
  }
  return at;
}

interface Token {
  /** Of the token itself, without what it holds. */
  readonly bytes: number;
  /** Values that follow it and belong to it. */
  readonly holds: number;
}

/** Bytes of the values of fixed size: nothing, truth, and numbers. */
const FIXED_BYTES: Readonly<Record<number, number>> = {
  0xc0: 1,
  0xc2: 1,
  0xc3: 1,
  0xca: 5,
  0xcb: 9,
  0xcc: 2,
  0xcd: 3,
  0xce: 5,
  0xcf: 9,
  0xd0: 2,
  0xd1: 3,
  0xd2: 5,
  0xd3: 9,
};

function readToken(frame: Uint8Array, at: number): Token | undefined {
  const first = frame[at];
  if (first === undefined) return undefined;
  // 0x40 to 0x7f stand for a record declared before: one that is used often is compiled
  if (first < 0x40 || first >= 0xe0) return { bytes: 1, holds: 0 };
  if (first >= 0x80 && first < 0x90) return { bytes: 1, holds: 2 * (first & 0x0f) };
  if (first >= 0x90 && first < 0xa0) return { bytes: 1, holds: first & 0x0f };
  if (isShortText(first)) return { bytes: 1 + (first & 0x1f), holds: 0 };
  const fixed = FIXED_BYTES[first];
  if (fixed !== undefined) return { bytes: fixed, holds: 0 };
  const next = frame[at + 1] ?? 0;
  const length = next * 256 + (frame[at + 2] ?? 0);
  if (first === 0xd9) return { bytes: 2 + next, holds: 0 };
  if (first === 0xda) return { bytes: 3 + length, holds: 0 };
  if (first === 0xdc) return { bytes: 3, holds: length };
  return first === 0xd4 ? readExtension(frame, at) : undefined;
}

/** Of the extensions two, as the library's client writes nothing at all, and an object: its record, which nothing else refers to. */
function readExtension(frame: Uint8Array, at: number): Token | undefined {
  const type = frame[at + 1];
  const declared = frame[at + 2] ?? 0;
  if (type === 0 && declared === 0) return { bytes: 3, holds: 0 };
  const keys = frame[at + 3] ?? 0;
  if (type !== RECORD || declared < 0x40 || declared > 0x7f || keys < 0x90 || keys >= 0xa0) return undefined;
  let end = at + 4;
  for (let key = 0; key < (keys & 0x0f); key += 1) {
    const name = frame[end] ?? 0;
    if (!isShortText(name)) return undefined;
    end += 1 + (name & 0x1f);
  }
  return { bytes: end - at, holds: keys & 0x0f };
}

/** Type of the extension that declares the keys of an object. */
const RECORD = 0x72;

/** Up to 31 bytes. */
function isShortText(first: number): boolean {
  return first >= 0xa0 && first < 0xc0;
}
