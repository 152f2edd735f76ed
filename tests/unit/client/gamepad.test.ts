import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPad, type PadAct, type PadMemory, type PadReading } from '../../../client/controls/gamepad.ts';
import { REPEAT } from '../../../client/controls/repeat.ts';

/** Buttons of the standard mapping, with triggers that give a share. */
const BUTTONS = 17;

function padOf(pushed: {
  readonly axes?: readonly number[];
  readonly buttons?: Readonly<Record<number, number>>;
}): PadReading {
  const { axes = [0, 0, 0, 0], buttons = {} } = pushed;
  return {
    axes,
    buttons: Array.from({ length: BUTTONS }, (_, i) => ({ pressed: (buttons[i] ?? 0) > 0.1, value: buttons[i] ?? 0 })),
  };
}

/** What is done in all while a gamepad is read once a frame for so long [ms]. */
function hold(pad: PadReading | undefined, forMs: number, before: PadMemory = {}, fromMs = 0) {
  let memory = before;
  const acts: PadAct[] = [];
  for (let now = fromMs; now < fromMs + forMs; now += 10) {
    const read = readPad(pad, memory, now);
    ({ memory } = read);
    acts.push(...read.acts);
  }
  return { acts, memory };
}

const AT_REST = padOf({});

describe('a gamepad', () => {
  it.each([
    ['left stick to the left', padOf({ axes: [-0.9, 0, 0, 0] }), 'leanLeft'],
    ['left stick to the right', padOf({ axes: [0.9, 0, 0, 0] }), 'leanRight'],
    ['right stick up', padOf({ axes: [0, 0, 0, -0.9] }), 'thrustMore'],
    ['right stick down', padOf({ axes: [0, 0, 0, 0.9] }), 'thrustLess'],
    ['right trigger', padOf({ buttons: { 7: 0.8 } }), 'thrustMore'],
    ['left trigger', padOf({ buttons: { 6: 0.8 } }), 'thrustLess'],
    ['A', padOf({ buttons: { 0: 1 } }), 'goOn'],
    ['B', padOf({ buttons: { 1: 1 } }), 'pause'],
    ['X', padOf({ buttons: { 2: 1 } }), 'engineOff'],
    ['Y', padOf({ buttons: { 3: 1 } }), 'upright'],
  ])('does one thing by %s', (_, pad, act) => {
    expect(hold(pad, 50).acts).toEqual([act]);
  });

  it.each([
    ['sticks', padOf({ axes: [0.35, -0.35, 0.35, -0.35] })],
    ['triggers', padOf({ buttons: { 6: 0.35, 7: 0.35 } })],
    ['a pad without axes or buttons', { axes: [], buttons: [] }],
    ['no pad', undefined],
  ])('asks for nothing from %s inside the dead zone', (_, pad) => {
    expect(hold(pad, 2000).acts).toEqual([]);
  });

  it('steps again while it is held, as a held button does, and only once by A, B, X and Y', () => {
    const lean = hold(padOf({ axes: [1, 0, 0, 0] }), 1000).acts;
    expect(lean.length).toBe(1 + (1000 - REPEAT.afterMs) / REPEAT.everyMs);
    expect(hold(padOf({ buttons: { 0: 1 } }), 1000).acts).toEqual(['goOn']);
  });

  it('asks for nothing once it is unplugged, and starts afresh when it is back', () => {
    const stick = padOf({ axes: [0, 0, 0, -1] });
    const flown = hold(stick, 500);
    const gone = hold(undefined, 1000, flown.memory, 500);
    expect(gone.acts).toEqual([]);
    expect(hold(stick, 50, gone.memory, 1500).acts).toEqual(['thrustMore']);
  });

  it('never does one thing more often than a held button repeats, however it is shaken', () => {
    const axis = fc.double({ min: -1, max: 1, noNaN: true });
    const pads = fc.record({
      axes: fc.array(axis, { minLength: 4, maxLength: 4 }),
      buttons: fc.array(fc.record({ pressed: fc.boolean(), value: fc.double({ min: 0, max: 1, noNaN: true }) }), {
        minLength: BUTTONS,
        maxLength: BUTTONS,
      }),
    });
    const frames = fc.array(fc.tuple(fc.option(pads, { nil: undefined }), fc.integer({ min: 1, max: 60 })), {
      minLength: 100,
      maxLength: 200,
    });
    let most = 0;
    fc.assert(
      fc.property(frames, (shaken) => {
        let memory: PadMemory = {};
        let now = 0;
        const last = new Map<PadAct, number>();
        for (const [pad, passed] of shaken) {
          now += passed;
          const read = readPad(pad, memory, now);
          ({ memory } = read);
          for (const act of read.acts) {
            expect(now - (last.get(act) ?? -Infinity)).toBeGreaterThanOrEqual(REPEAT.everyMs);
            last.set(act, now);
          }
          most = Math.max(most, read.acts.length);
        }
      }),
      { seed: 41, numRuns: 100 },
    );
    // something was done at all
    expect(most).toBeGreaterThan(1);
  });

  it('at rest asks for nothing', () => {
    expect(hold(AT_REST, 1000).acts).toEqual([]);
  });
});
