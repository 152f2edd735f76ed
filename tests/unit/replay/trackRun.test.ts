import { expect, it } from 'vitest';
import { amendPlan, type TableRecord } from '../../../engine/record/index.ts';
import { trackRun } from '../../../engine/replay/index.ts';
import { playedModel } from '../../../engine/table/index.ts';
import { flyTroubled } from '../../support/flyTroubled.ts';
import { laid } from '../../support/planChoice.ts';

const PLAN = laid({ start: 'low', seed: 2, sensorTrouble: 'seeded' });
const PARTS = { plan: PLAN, model: playedModel };
const flown = flyTroubled(PLAN, 'lead', [{}]);

function tracked(record: TableRecord) {
  const track = trackRun(record, PARTS);
  if (!track.ok) throw new Error(track.error);
  return track.value;
}

it('a run played again has ten points a second, each where the lander was when it was flown', () => {
  const { points, card, review } = tracked(flown.record);
  expect(points.length).toBe(
    Math.floor((flown.heights.length - 1) / 6) + ((flown.heights.length - 1) % 6 === 0 ? 1 : 2),
  );
  for (const { truth } of points) {
    expect(truth.height).toBe(flown.heights[truth.tick]);
    expect(truth.vx).toBe(flown.speeds[truth.tick]);
  }
  expect(points.every(({ believed }) => believed !== undefined)).toBe(true);
  expect(card?.crew).toEqual([{ seat: 'lead', name: 'Ada' }]);
  expect(review?.step).toBe('scorecard');
});

it('a run whose record says otherwise is refused in words', () => {
  const lines = flown.record.lines.map((line, i) =>
    line.line === 'mark' && i > 10 ? { ...line, hash: '0'.repeat(16) } : line,
  );
  expect(trackRun({ ...flown.record, lines }, PARTS)).toMatchObject({ ok: false });
});

it('the plan of a run goes on from its record, and on again from what came of that', () => {
  const action = { text: 'Say the height.', owner: 'Ada', due: '', state: 'open', isRule: false } as const;
  const first = amendPlan(flown.record, PARTS, { kind: 'setAction', ...action });
  if (!first.ok) throw new Error(first.error);
  const once = { ...flown.record, lines: [...flown.record.lines, ...first.value] };
  const second = amendPlan(once, PARTS, { kind: 'setAction', id: 1, ...action, state: 'done' });
  if (!second.ok) throw new Error(second.error);
  const { review, points } = tracked({ ...once, lines: [...once.lines, ...second.value] });
  expect(review?.actions).toEqual([{ id: 1, ...action, state: 'done' }]);
  expect(points).toEqual(tracked(flown.record).points);
});
