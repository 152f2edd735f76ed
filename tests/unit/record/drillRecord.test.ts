import { describe, expect, it } from 'vitest';
import {
  askTable,
  formatRecord,
  headerOf,
  joinTable,
  markLine,
  openKeptTable,
  parseRecord,
  replayRecord,
  stepKeptTable,
  type RecordLine,
} from '../../../engine/record/index.ts';
import { formatProblem } from '../../../engine/result.ts';
import { playedModel } from '../../../engine/table/index.ts';
import { layDrill, layPlan, parseDrill } from '../../../levels/index.ts';
import { drillJson } from '../../support/drillFile.ts';

/** Ten seconds of a drill that is none of the program's own. */
function recordOfForeignDrill(): string {
  const drill = parseDrill({ ...drillJson(), id: 'from-a-file', truth: { steeperDeg: 1, faults: [] } });
  const plan = drill.ok ? layDrill(drill.value) : drill;
  if (!plan.ok) throw new Error(plan.error.map(formatProblem).join('; '));
  const lines: RecordLine[] = [];
  const kept = openKeptTable({ plan: plan.value, model: playedModel, write: (line) => lines.push(line) });
  const joined = joinTable(kept, 'Ada');
  if (!joined.ok) throw new Error(joined.error.reason);
  askTable(kept, joined.value, { kind: 'takeSeat', seat: 'lead' });
  askTable(kept, joined.value, { kind: 'begin' });
  for (let tick = 0; tick < 600; tick++) stepKeptTable(kept);
  return formatRecord({ header: headerOf(plan.value), lines: [...lines, markLine(kept.table)] });
}

describe('the record of a drill', () => {
  it('[RE11] carries the whole drill, and replays where nobody has its file', () => {
    const record = parseRecord(recordOfForeignDrill());
    if (!record.ok) throw new Error(record.error.map(formatProblem).join('; '));
    const { choice, drill } = record.value.header.plan;
    expect(layPlan(choice).ok).toBe(false);
    const plan = layPlan(choice, drill);
    if (!plan.ok) throw new Error(plan.error.map(formatProblem).join('; '));
    const replayed = replayRecord(record.value, { plan: plan.value, model: playedModel });
    expect(replayed).toMatchObject({ ok: true, value: { divergence: undefined } });
    expect(replayed.ok && replayed.value.marks).toBeGreaterThan(10);
  });

  it.each([
    ['a drill that the choice does not name', { drill: {} }, { drill: undefined }],
    ['no drill where the choice names one', { drill: undefined }, {}],
    ['a drill that is no object', { drill: 'from-a-file' }, {}],
  ])('[RE11] is refused with %s', (_, plan, choice) => {
    const [first = '', ...rest] = recordOfForeignDrill().split('\n');
    const header = JSON.parse(first) as { readonly plan: { readonly choice: object } };
    const spoiled = { ...header, plan: { ...header.plan, ...plan, choice: { ...header.plan.choice, ...choice } } };
    const read = parseRecord([JSON.stringify(spoiled), ...rest].join('\n'));
    expect(read.ok ? [] : read.error.map(({ path }) => path)).toContain('line 1.plan.drill');
  });
});
