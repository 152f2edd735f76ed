import { describe, expect, it } from 'vitest';
import { createSmoothing } from '../../../client/net/index.ts';
import type { DescentState } from '../../../engine/world/index.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

const still = plainModel.createDescent(plainPlan).read();

/** A lander that moves right by a meter a second. */
function reading(tick: number): DescentState {
  return { ...still, tick, x: tick / 60, legs: still.legs.map((leg) => ({ ...leg, footX: tick / 60 })) };
}

/** Draws 60 frames a second while readings come every `every` ticks, each `late(n)` ms late; returns x by frame. */
function draw(options: { readonly every: number; readonly frames: number; readonly late?: (n: number) => number }) {
  const smoothing = createSmoothing();
  const frameMs = 1000 / 60;
  const drawn: { readonly nowMs: number; readonly x: number; readonly footX: number }[] = [];
  let sent = 0;
  for (let frame = 0; frame < options.frames; frame += 1) {
    const nowMs = frame * frameMs;
    while (sent * options.every * frameMs + (options.late?.(sent) ?? 0) <= nowMs) {
      smoothing.take(reading(sent * options.every), nowMs, 1);
      sent += 1;
    }
    const shown = smoothing.at(nowMs);
    if (shown !== undefined) drawn.push({ nowMs, x: shown.x, footX: shown.legs[0]?.footX ?? 0 });
  }
  return drawn;
}

/** 0 to 28 ms, in no order. */
function unevenly(n: number): number {
  return ((n * 7919) % 5) * 7;
}

function steps(drawn: readonly { readonly x: number }[]): readonly number[] {
  return drawn.slice(1).map(({ x }, i) => x - (drawn[i]?.x ?? 0));
}

describe('smoothing', () => {
  it('has nothing to show before the first reading', () => {
    expect(createSmoothing().at(0)).toBeUndefined();
  });

  it('moves evenly on every frame though readings come 20 a second', () => {
    const settled = draw({ every: 3, frames: 300 }).slice(120);
    const moves = steps(settled);
    expect(Math.min(...moves)).toBeGreaterThan(0.9 / 60);
    expect(Math.max(...moves)).toBeLessThan(1.1 / 60);
  });

  it('never goes back, stops or leaps while readings come up to two ticks late', () => {
    const settled = draw({ every: 3, frames: 600, late: unevenly }).slice(120);
    const moves = steps(settled);
    expect(Math.min(...moves)).toBeGreaterThan(0);
    expect(Math.max(...moves)).toBeLessThan(2.5 / 60);
  });

  it('shows the past by one interval and a little, feet together with the body', () => {
    const last = draw({ every: 3, frames: 600 }).at(-1);
    const behind = (last?.nowMs ?? 0) / 1000 - (last?.x ?? 0);
    expect(behind).toBeGreaterThan(2 / 60);
    expect(behind).toBeLessThan(7 / 60);
    expect(last?.footX).toBeCloseTo(last?.x ?? 0, 12);
  });

  it('is at most two ticks behind when readings come with every frame', () => {
    const last = draw({ every: 1, frames: 600 }).at(-1);
    expect((last?.nowMs ?? 0) / 1000 - (last?.x ?? 0)).toBeLessThanOrEqual(2 / 60 + 1e-9);
  });

  it.each([
    { pace: 0.5, from: 'page', every: 1 },
    { pace: 0.25, from: 'page', every: 1 },
    { pace: 0.5, from: 'server', every: 3 },
    { pace: 0.25, from: 'server', every: 3 },
  ])('glides on every frame at pace $pace, with what a $from shows', ({ pace, every }) => {
    const smoothing = createSmoothing();
    const drawn: { x: number }[] = [];
    for (let frame = 0; frame < 900; frame += 1) {
      const nowMs = (frame * 1000) / 60;
      // a tick whenever the pace lets one pass, seen when the next sending is due
      if (frame % every === 0) smoothing.take(reading(Math.floor(frame * pace)), nowMs, pace);
      const shown = smoothing.at(nowMs);
      if (shown !== undefined) drawn.push({ x: shown.x });
    }
    const settled = drawn.slice(240);
    const moves = steps(settled);
    expect(Math.min(...moves)).toBeGreaterThan((0.85 * pace) / 60);
    expect(Math.max(...moves)).toBeLessThan((1.15 * pace) / 60);
    // behind by at most three ticks
    expect((899 * pace) / 60 - (settled.at(-1)?.x ?? 0)).toBeLessThan(3.5 / 60);
  });

  it('comes to rest on the newest reading when no more come', () => {
    const smoothing = createSmoothing();
    for (let tick = 0; tick <= 30; tick += 3) smoothing.take(reading(tick), (tick * 1000) / 60, 1);
    expect(smoothing.at(500)?.tick).toBe(30);
    for (let ms = 500; ms < 3000; ms += 16) smoothing.at(ms);
    expect(smoothing.at(3000)?.x).toBeCloseTo(0.5, 1);
    expect(smoothing.at(3000)?.x).toBeLessThanOrEqual(0.5);
  });

  it('starts anew with a new descent instead of flying back up', () => {
    const smoothing = createSmoothing();
    for (let tick = 0; tick <= 60; tick += 3) smoothing.take(reading(tick), (tick * 1000) / 60, 1);
    smoothing.at(1000);
    smoothing.take(reading(0), 1016, 1);
    expect(smoothing.at(1016)?.x).toBe(0);
    expect(smoothing.at(1033)?.x).toBe(0);
  });

  it('takes the same reading again without losing the one before', () => {
    const smoothing = createSmoothing();
    smoothing.take(reading(0), 0, 1);
    smoothing.take(reading(3), 50, 1);
    smoothing.take({ ...reading(3), phase: 'contact' }, 51, 1);
    // shown time has run for 30 ms since the first reading
    const shown = smoothing.at(30);
    expect(shown?.phase).toBe('contact');
    expect(shown?.x).toBeLessThan(3 / 60);
  });
});
