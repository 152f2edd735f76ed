/**
 * A message of 2 kB that costs a decoder of the library's kind 5 to 9 ms: it declares 135 shapes of objects, and uses each often enough that the decoder
 * compiles it. No two frames of a process share a shape, so that nothing is found in a cache.
 */
export function dearFrame(): Uint8Array<ArrayBuffer> {
  const bytes: number[] = [ROOM_DATA, 0xa0 + 'command'.length, ...Buffer.from('command'), 0xdc, 0, 0];
  const sizeAt = bytes.length - 2;
  let items = 0;
  while (bytes.length < 2030) {
    bytes.push(0xd4, 0x72, SHAPE, 0x91, 0xa4, ...nextName(), 0xc0);
    for (let use = 0; use < 3; use += 1) bytes.push(SHAPE, 0xc0);
    items += 4;
  }
  bytes[sizeAt] = items >> 8;
  bytes[sizeAt + 1] = items & 0xff;
  return new Uint8Array(bytes);
}

/** Of the room library's protocol: a message without an answer. */
const ROOM_DATA = 13;

/** First of the bytes that stand for a declared shape. */
const SHAPE = 0x40;

let names = 0;

function nextName(): readonly number[] {
  names += 1;
  return [1, 26, 676, 17_576].map((place) => 97 + (Math.floor(names / place) % 26));
}
