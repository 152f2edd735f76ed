import { describe, expect, it } from 'vitest';
import { packFrames, unpackFrames } from '../../../server/messages/index.ts';

const bytes = (...list: readonly number[]) => new Uint8Array(list);

describe('a packet of frames', () => {
  it('is their lengths and bytes, in order, and is read as that', () => {
    const frames = [bytes(1, 2), bytes(), bytes(3)];
    expect([...packFrames(frames)]).toEqual([0, 0, 0, 2, 1, 2, 0, 0, 0, 0, 0, 0, 0, 1, 3]);
    expect(unpackFrames(packFrames(frames))).toEqual(frames);
    expect(unpackFrames(bytes())).toEqual([]);
  });

  it.each([
    ['a length that breaks off', [0, 0, 0]],
    ['a frame that breaks off', [0, 0, 0, 2, 1]],
    ['the largest length there is', [255, 255, 255, 255, 1]],
  ])('is refused with %s', (_what, list) => {
    expect(unpackFrames(bytes(...list))).toBeUndefined();
  });
});
