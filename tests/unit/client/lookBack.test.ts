import { describe, expect, it } from 'vitest';
import { createClipShow } from '../../../client/replay/clipShow.ts';
import { createLookBack, type LookBack } from '../../../client/replay/lookBack.ts';
import { accept, refuse } from '../../../engine/result.ts';
import type { Refusal, TableView } from '../../../engine/table/index.ts';
import { drillJson } from '../../support/drillFile.ts';

const SLOW: Refusal = { code: 'table/no-answer', reason: 'The table could not carry that out. Try again.' };

/** A view with this clip on, which began so many seconds ago. */
const playing = (playedFor: number) => ({ review: { clip: { from: 10, to: 20, playedFor } } }) as unknown as TableView;

describe('what is looked back at', () => {
  it('is asked for once where it came, and again by the next who wants it where it did not', async () => {
    const asked = { drill: 0, record: 0 };
    const back = createLookBack({
      drillText: () => Promise.resolve(asked.drill++ === 0 ? refuse(SLOW) : accept(JSON.stringify(drillJson()))),
      recordText: () => Promise.resolve((asked.record++, refuse(SLOW))),
    });
    expect(await back.drill()).toBeUndefined();
    expect((await back.drill())?.id).toBe('quiet-altimeter');
    await back.drill();
    expect(asked.drill).toBe(2);
    const cut = { from: 1, to: 2 };
    expect([await back.clip(cut), await back.clip(cut)]).toEqual([undefined, undefined]);
    expect(asked.record).toBe(2);
    expect(back.refusal).toBe(SLOW.reason);
  });
});

describe('a clip that could not be had', () => {
  it('is tried for again where it is played again, and not while it is on', async () => {
    let asked = 0;
    const back: LookBack = {
      drill: () => Promise.resolve(undefined),
      clip: () => Promise.resolve((asked++, undefined)),
      refusal: SLOW.reason,
      log: () => Promise.resolve(undefined),
    };
    let nowMs = 1000;
    const show = createClipShow(
      () => back,
      () => nowMs,
    );
    show.follow(playing(0));
    await Promise.resolve();
    expect(show.state).toBe('failed');
    nowMs = 3000;
    show.follow(playing(2));
    expect(asked).toBe(1);
    show.follow(playing(0));
    expect(asked).toBe(2);
  });
});
