import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ALERT_NOTES, ALERTS_APART, engineSound, heardOf, marginTone } from '../../../client/sound/heard.ts';
import { ALERT_LEVELS } from '../../../engine/talk/index.ts';
import type { Phase } from '../../../engine/world/index.ts';

const share = fc.double({ min: -0.5, max: 3, noNaN: true });
const PHASES: readonly Phase[] = ['approach', 'terminal descent', 'final drop', 'contact', 'settling', 'at rest'];
const heardView = fc.record({
  stage: fc.constantFrom('gathering', 'descending', 'resolved'),
  held: fc.boolean(),
  aborting: fc.boolean(),
  flight: fc.record({
    thrust: fc.double({ min: 0, max: 20_000, noNaN: true }),
    phase: fc.constantFrom(...PHASES),
    legs: fc.array(fc.record({ strokeUsed: fc.double({ min: 0, max: 1, noNaN: true }) }), {
      minLength: 3,
      maxLength: 6,
    }),
  }),
  margin: fc.oneof(fc.constant({}), fc.record({ predicted: fc.record({ utilisation: share }) })),
  talk: fc.record({
    alerts: fc.array(fc.record({ id: fc.nat(5), level: fc.constantFrom(...ALERT_LEVELS), isCleared: fc.boolean() }), {
      maxLength: 4,
    }),
  }),
});
const known = { maxThrust: 20_000, sinceAlert: Infinity };

describe('what is heard of a descent', () => {
  it('grows louder and brighter with thrust, and higher the nearer to tipping, within its bounds', () => {
    fc.assert(
      fc.property(share, share, (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        const [quiet, loud] = [engineSound(less), engineSound(more)];
        expect(quiet.gain).toBeLessThanOrEqual(loud.gain);
        expect(quiet.cutoff).toBeLessThanOrEqual(loud.cutoff);
        expect(marginTone(less)).toBeLessThanOrEqual(marginTone(more));
      }),
    );
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.999, noNaN: true }), (less) => {
        expect(engineSound(less).gain).toBeLessThan(engineSound(less + 0.001).gain);
        expect(marginTone(less)).toBeLessThan(marginTone(less + 0.001));
      }),
    );
    expect(engineSound(0).gain).toBe(0);
    // an octave from rest to the tip limit
    expect(marginTone(1) / marginTone(0)).toBeCloseTo(2, 12);
  });

  it('is silent before a descent, while it is held and once it is at rest', () => {
    fc.assert(
      fc.property(heardView, fc.option(heardView, { nil: undefined }), (view, before) => {
        fc.pre(view.stage !== 'descending' || view.held);
        const heard = heardOf(view, before, known);
        expect([heard.engine.gain, heard.tone, heard.isContact, heard.crush]).toEqual([0, undefined, false, 0]);
        expect(view.stage === 'descending' || heard.alert === undefined).toBe(true);
      }),
    );
  });

  it('sounds a contact and a crush when they come, and the gravest new alert, not sooner after another than is said', () => {
    fc.assert(
      fc.property(heardView, heardView, fc.double({ min: 0, max: 10, noNaN: true }), (view, before, sinceAlert) => {
        const heard = heardOf(view, before, { ...known, sinceAlert });
        const aloft = PHASES.slice(0, 3);
        const isRunning = view.stage === 'descending' && !view.held && before.stage === 'descending';
        expect(heard.isContact).toBe(
          isRunning && aloft.includes(before.flight.phase) && !aloft.includes(view.flight.phase),
        );
        const most = (of: typeof view) => Math.max(...of.flight.legs.map(({ strokeUsed }) => strokeUsed));
        expect(heard.crush > 0).toBe(isRunning && most(view) > most(before));
        const fresh = view.talk.alerts.filter(
          ({ id, isCleared }) => !isCleared && before.talk.alerts.every((one) => one.id !== id),
        );
        const gravest = ALERT_LEVELS.find((level) => fresh.some((alert) => alert.level === level));
        const may = view.stage === 'descending' && sinceAlert >= ALERTS_APART;
        expect(heard.alert).toBe(may ? gravest : undefined);
      }),
    );
  });

  it('reads nothing of a view but what every seat is shown in its own way', () => {
    fc.assert(
      fc.property(heardView, heardView, (view, before) => {
        const read = new Set<PropertyKey>();
        const watched = new Proxy(view, {
          get(of, name) {
            read.add(name);
            return Reflect.get(of, name) as unknown;
          },
        });
        heardOf(watched, before, known);
        expect(['stage', 'held', 'aborting', 'flight', 'margin', 'talk']).toEqual(expect.arrayContaining([...read]));
      }),
    );
  });

  it('has a tune of its own for each level of alert, over within a second, and well before another may come', () => {
    const tunes = ALERT_LEVELS.map((level) => JSON.stringify(ALERT_NOTES[level].map(({ tone }) => tone)));
    expect(new Set(tunes).size).toBe(ALERT_LEVELS.length);
    for (const level of ALERT_LEVELS)
      for (const { after, lasts } of ALERT_NOTES[level]) expect(after + lasts).toBeLessThanOrEqual(1);
    expect(ALERTS_APART).toBeGreaterThanOrEqual(4);
  });
});
