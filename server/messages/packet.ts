/**
 * Several frames of a line as one body of a request or an answer, where the network lets no WebSocket through: before each frame its length, in four bytes,
 * the highest first.
 */
export function packFrames(frames: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const packet = new Uint8Array(frames.reduce((sum, frame) => sum + LENGTH_BYTES + frame.length, 0));
  const view = new DataView(packet.buffer);
  let at = 0;
  for (const frame of frames) {
    view.setUint32(at, frame.length);
    packet.set(frame, at + LENGTH_BYTES);
    at += LENGTH_BYTES + frame.length;
  }
  return packet;
}

/** The frames of a packet; undefined where it is none. */
export function unpackFrames(packet: Uint8Array): readonly Uint8Array[] | undefined {
  const view = new DataView(packet.buffer, packet.byteOffset, packet.length);
  const frames: Uint8Array[] = [];
  let at = 0;
  while (at < packet.length) {
    const from = at + LENGTH_BYTES;
    if (from > packet.length) return undefined;
    at = from + view.getUint32(at);
    if (at > packet.length) return undefined;
    frames.push(packet.slice(from, at));
  }
  return frames;
}

export const LENGTH_BYTES = 4;
