import { describe, expect, it } from 'vitest';
import { createTable, playedModel, stepTable, viewTable } from '../../../engine/table/index.ts';
import { commandTable, joinTable } from '../../support/askTable.ts';
import { NOTHING_JUDGED } from '../../support/nothingJudged.ts';
import type { Outcome } from '../../../engine/world/index.ts';
import { firstChoice, firstLanding, layPlan } from '../../../levels/index.ts';

/** Sits down at Flying, begins, and touches nothing. */
function leaveAlone(seed: number): Outcome | undefined {
  const table = createTable({ plan: firstLanding(seed), model: { ...playedModel, scorecard: () => NOTHING_JUDGED } });
  const joined = joinTable(table, { name: 'Wren' });
  if (!joined.ok) throw new Error(joined.error.reason);
  commandTable(table, joined.value.id, { kind: 'takeSeat', seat: 'flying' });
  commandTable(table, joined.value.id, { kind: 'begin' });
  while (viewTable(table, joined.value.id).stage === 'descending') stepTable(table);
  return viewTable(table, joined.value.id).flight.outcome;
}

describe('the first landing', () => {
  it('[LE7] is a choice like any other', () => {
    const plan = layPlan(firstChoice(5));
    expect(plan).toEqual({ ok: true, value: { ...firstLanding(5), title: "Trivet over Saddler's Bench" } });
  });

  it('[LE11] left alone never lands', () => {
    const outcomes = Array.from({ length: 40 }, (_, i) => leaveAlone(i + 1));
    const tipped = outcomes.filter((outcome) => outcome?.startsWith('tipped') === true).length;
    const overloaded = outcomes.filter((outcome) => outcome === 'gear overload').length;
    expect(tipped + overloaded, outcomes.join(', ')).toBe(outcomes.length);
    // most are lost for everyone to see
    expect(tipped).toBeGreaterThan(outcomes.length / 2);
  }, 60_000);
});
