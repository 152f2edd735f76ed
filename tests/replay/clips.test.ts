import { describe, expect, it } from 'vitest';
import { cutClip, logDescent } from '../../engine/replay/index.ts';
import { playedModel } from '../../engine/table/index.ts';
import { TICK_RATE } from '../../engine/world/index.ts';
import { firstLanding } from '../../levels/index.ts';
import { flyDrill } from '../support/flyDrill.ts';

const flown = flyDrill(true);
const { record, plan, table, shown } = flown;
const parts = { plan, model: playedModel };
/** As it travels to a thread of the page. */
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe('a clip', () => {
  it('[RP1] is, ten times a second, the very view that its seat was shown in the last descent', () => {
    const clip = cutClip(record, parts, { from: 4, to: 9, seat: 'sensors' });
    if (!clip.ok) throw new Error(clip.error.code);
    expect(clip.value.map(({ after }) => after)).toEqual(
      Array.from({ length: 51 }, (_, i) => (4 * TICK_RATE + 6 * i) / TICK_RATE),
    );
    for (const { after, view } of clip.value)
      expect(plain(view)).toEqual(plain(shown.get(Math.round(after * TICK_RATE))));
  });

  it('[RP1] of the control side shows the truth, and what was believed beside it', () => {
    const clip = cutClip(record, parts, { from: 4, to: 5 });
    if (!clip.ok) throw new Error(clip.error.code);
    for (const { view, truth } of clip.value) {
      expect(view.control?.truth).toEqual(truth);
      expect(view.drawnIn).toBe('pencil');
      expect(view.flight).not.toEqual(truth);
    }
  });

  it('[RP1] holds what was said by then, and nothing that was said later', () => {
    const clip = cutClip(record, parts, { from: 4, to: 8, seat: 'sensors' });
    if (!clip.ok) throw new Error(clip.error.code);
    const heard = clip.value.map(({ view }) =>
      view.talk.calls.some(({ text }) => text === 'The altimeter looks quiet.'),
    );
    // said at tick 300, so first shown after the next tick, at the next look
    expect(heard.indexOf(true)).toBe((306 - 240) / 6);
    expect(heard.lastIndexOf(false)).toBe((306 - 240) / 6 - 1);
  });

  it('[RP1] is refused where the plan is laid out otherwise', () => {
    const clip = cutClip(record, { plan: firstLanding(2), model: playedModel }, { from: 0, to: 1 });
    expect(clip).toMatchObject({ ok: false, error: { code: 'record/other-setup' } });
  });
});

describe('the samples of a record', () => {
  it('[RP2] are what was true, sensed, believed and shown at each tenth of a second of the last descent', () => {
    const log = logDescent(record, parts);
    if (!log.ok) throw new Error(log.error.code);
    const { samples } = log.value;
    expect(samples.length).toBe(Math.floor((table.run.flight.tick - 1) / 6));
    for (const [i, sample] of samples.entries()) {
      const view = shown.get(6 * (i + 1))!;
      expect(sample.after).toBe((6 * (i + 1)) / TICK_RATE);
      expect(sample.believed?.vx).toBe(view.flight.vx);
      expect(sample.shown.all.height).toBe(view.flight.height);
      expect(sample.shown.sensors).toEqual(view.sources);
      expect(sample.sensed?.altimeter.values).toEqual(
        view.sources?.find(({ source }) => source === 'altimeter')?.values,
      );
    }
  });
});
