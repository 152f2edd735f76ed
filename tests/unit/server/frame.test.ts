import { Packr } from 'msgpackr';
import { describe, expect, it } from 'vitest';
import { isPlainFrame } from '../../../server/lines/index.ts';
import { dearFrame } from '../../support/dearFrame.ts';

/** As the room library's client writes a message and a request. */
function framesOf(value: unknown): readonly Uint8Array[] {
  const packed = value === undefined ? [] : [...new Packr().pack(value)];
  const name = [0xa7, ...Buffer.from('command')];
  return [
    [13, ...name, ...packed],
    [21, 5, ...name, ...packed],
    [21, 0xcd, 1, 44, ...name, ...packed],
  ].map((bytes) => new Uint8Array(bytes));
}

describe('a frame of our own client passes', () => {
  it.each([
    ['with nothing', undefined],
    ['with no fields', {}],
    ['with a number', { kind: 'setThrust', percent: 50 }],
    ['with numbers of every size', { a: -1, b: 63, c: 64, d: 300, e: 70_000, f: -70_000, g: 0.5, h: 5e12 }],
    ['with truth and nothing', { a: true, b: false, c: null, d: undefined }],
    ['with a long text', { kind: 'noteTopic', topic: 'other', text: 'å'.repeat(280) }],
    ['with a few values one in another', { a: { b: [1, 2, { c: 'd' }] } }],
  ])('%s', (_what, value) => {
    expect(framesOf(value).map(isPlainFrame)).toEqual([true, true, true]);
  });

  it('to join, to leave and to try the line', () => {
    expect([10, 12, 18].map((code) => isPlainFrame(new Uint8Array([code])))).toEqual([true, true, true]);
  });
});

describe('no frame passes', () => {
  it('that declares shapes and uses them again', () => {
    expect(isPlainFrame(dearFrame())).toBe(false);
  });

  it('that holds more than a command of ours ever does', () => {
    expect(framesOf(Array.from({ length: 15 }, () => [1, 2, 3, 4])).map(isPlainFrame)).toEqual([false, false, false]);
    expect(framesOf(JSON.parse(`${'['.repeat(100)}${']'.repeat(100)}`)).map(isPlainFrame)).not.toContain(true);
  });

  it('that was cut short or has more at its end', () => {
    for (const whole of framesOf({ kind: 'setThrust', percent: 50 })) {
      // shorter, it is a message with nothing
      for (let end = 14; end < whole.length; end += 1) expect(isPlainFrame(whole.subarray(0, end))).toBe(false);
      expect(isPlainFrame(new Uint8Array([...whole, 0]))).toBe(false);
    }
  });

  it.each([
    ['dates', new Date(0)],
    ['bytes', new Uint8Array(4)],
  ])('with %s', (_what, value) => {
    expect(framesOf({ value }).map(isPlainFrame)).toEqual([false, false, false]);
  });
});
