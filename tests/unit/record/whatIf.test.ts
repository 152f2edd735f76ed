import { describe, expect, it } from 'vitest';
import { hashValue } from '../../../engine/math/hashValue.ts';
import { forkRecord } from '../../../engine/record/index.ts';
import { CHANGE_KINDS, playedModel, type Change, type Fork } from '../../../engine/table/index.ts';
import { layWhatIf } from '../../../levels/index.ts';
import { flyTroubled } from '../../support/flyTroubled.ts';
import { laid } from '../../support/planChoice.ts';

/** The altimeter freezes 292 ticks after the start; somebody sits at Flying and does nothing but hold. */
const PLAN = laid({ start: 'low', seed: 2, sensorTrouble: 'seeded' });
const { record } = flyTroubled(PLAN, 'lead', [{}]);

/** A leg is softer than built. */
const SOFT = laid({ start: 'low', seed: 2, sensorTrouble: 'legs' });

function whatIf(change: Change): Fork {
  const [plan, flown] = change.kind === 'part sound' ? [SOFT, flyTroubled(SOFT, 'lead', [{}]).record] : [PLAN, record];
  const forked = forkRecord(flown, { plan, model: playedModel, other: layWhatIf(plan, change) }, change);
  if (!forked.ok) throw new Error(forked.error.reason);
  return forked.value;
}

const CHANGES: readonly Change[] = [
  { kind: 'source healthy', source: 'altimeter' },
  { kind: 'part sound', part: 'legs' },
  { kind: 'source rejected', source: 'altimeter', seconds: 5 },
  { kind: 'descent rate', seconds: 3, tenths: 12 },
  { kind: 'world', world: 'mars' },
  { kind: 'stance', percent: 150 },
];

/** When the two part, where the change does not say it [s]. */
const MOMENTS: Partial<Record<Change['kind'], number>> = { 'source healthy': 292 / 60, world: 0, stance: 0 };

const tipOf = ({ card }: Fork) => card.contacts[0]?.limit?.tip ?? card.contacts[0]?.limit?.upTo ?? 0;

describe('what if', () => {
  it.each(CHANGES)('[RE9] with another $kind the rest is flown again to its end, from that moment on', (change) => {
    const { after, happened, forked, card } = whatIf(change);
    const common = Math.max(0, Math.floor(after / happened.spacing));
    expect(forked.heights.slice(0, common)).toEqual(happened.heights.slice(0, common));
    expect(card.contactCount).toBeGreaterThan(0);
    expect(after).toBe(MOMENTS[change.kind] ?? change.seconds ?? happened.contact?.after);
    // legs matter from the contact on
    const isFlown = after < (happened.contact?.after ?? 0);
    expect(hashValue(forked) !== hashValue(happened)).toBe(isFlown);
  });

  it('[RE9] has a case here for each kind of change', () => {
    expect(CHANGES.map(({ kind }) => kind)).toEqual(CHANGE_KINDS);
  });

  it('[RE9] an ordered descent rate is held to the ground, the drift taken out', () => {
    const [first] = whatIf({ kind: 'descent rate', seconds: 3, tenths: 12 }).card.contacts;
    expect(first?.arrival.descentRate).toBeGreaterThan(0.7);
    expect(first?.arrival.descentRate).toBeLessThan(1.7);
    expect(Math.abs(first?.arrival.vx ?? 9)).toBeLessThan(0.5);
  });

  it('[RE9] a wider stance can move faster across the ground before it tips, and the pull of another world is that world', () => {
    const [closer, wider] = [70, 150].map((percent) => tipOf(whatIf({ kind: 'stance', percent })));
    expect(wider).toBeGreaterThan(1.2 * (closer ?? 0));
    expect(layWhatIf(PLAN, { kind: 'world', world: 'mars' })?.setup.gravity).toBeCloseTo(3.7, 1);
    expect(layWhatIf(PLAN, { kind: 'world', world: 'nowhere' })).toBeUndefined();
  });

  it('[RE9] that changes nothing is refused', () => {
    const parts = { plan: PLAN, model: playedModel };
    const late = forkRecord(record, parts, { kind: 'source rejected', source: 'altimeter', seconds: 9999 });
    expect(late).toMatchObject({ error: { code: 'record/nothing-changed' } });
    const nowhere = forkRecord(record, parts, { kind: 'world', world: 'nowhere' });
    expect(nowhere).toMatchObject({ error: { code: 'record/nothing-changed' } });
  });
});
