import { describe, expect, it } from 'vitest';
import { openLocalTable, type LocalTable } from '../../../client/net/index.ts';
import { forkRecord, type ForkRequest, type RecordLine, type TableRecord } from '../../../engine/record/index.ts';
import { playedModel } from '../../../engine/table/index.ts';
import { firstLanding } from '../../../levels/index.ts';
import { createHandClock } from '../../support/linkBench.ts';
import { laid } from '../../support/planChoice.ts';

const plan = firstLanding(1);

function open(flown?: TableRecord) {
  const clock = createHandClock();
  const opened = openLocalTable({ plan, model: playedModel, name: 'Ada', clock, flown });
  return { clock, opened };
}

function linkOf({ opened }: ReturnType<typeof open>): LocalTable {
  if (!opened.ok) throw new Error(opened.error.reason);
  return opened.value;
}

/** A descent with the commands of a person in it, as far as so many ticks. */
async function fly(ticks: number) {
  const table = open();
  const link = linkOf(table);
  await link.command({ kind: 'takeSeat', seat: 'flying' });
  await link.command({ kind: 'begin' });
  table.clock.turn(50);
  await link.command({ kind: 'setTilt', degrees: 8 });
  table.clock.turn(70);
  await link.command({ kind: 'setThrust', percent: 0 });
  table.clock.turn(ticks - 120);
  return link;
}

/** The same with another tilt. */
function leanMore(line: RecordLine): RecordLine {
  if (line.line !== 'entry' || line.content.kind !== 'setTilt') return line;
  return { ...line, content: { kind: 'setTilt', degrees: 9 } };
}

describe('a descent alone that is taken up again', () => {
  it('is the same to the bit, on hold where it stopped, and flies on as the other would', async () => {
    const first = await fly(300);
    const again = open(first.record());
    const link = linkOf(again);
    // that it was held stands in the log
    const log = [...(first.view?.talk.log ?? []), { after: 5, kind: 'hold', name: 'Ada', seat: 'flying' }];
    expect(link.view).toEqual({ ...first.view, held: true, talk: { ...first.view?.talk, log } });
    expect(link.view?.flight.tick).toBe(300);
    again.clock.turn(60);
    expect(link.view?.flight.tick).toBe(300);
    await link.command({ kind: 'resume' });
    again.clock.turn(60);
    expect(link.view?.flight).toEqual((await fly(360)).view?.flight);
  });

  it('has its scorecard when it was over', async () => {
    const first = await fly(6000);
    expect(first.view?.stage).toBe('resolved');
    const link = linkOf(open(first.record()));
    expect(link.view?.scorecard).toEqual(first.view?.scorecard);
    expect(link.view?.scorecard).toBeDefined();
  });

  it('is refused when what comes out is not what was recorded', async () => {
    const record = (await fly(300)).record();
    const { opened } = open({ ...record, lines: record.lines.map(leanMore) });
    expect(opened).toMatchObject({ ok: false, error: { code: 'table/other-descent' } });
  });

  it('goes on in the same record, whose keeper had each line before it took effect', async () => {
    const written: string[] = [];
    const keeper = {
      begin: (_header: unknown, lines: readonly RecordLine[]) =>
        void written.push(...lines.map((line) => JSON.stringify(line))),
      write: (line: RecordLine) => void written.push(JSON.stringify(line)),
    };
    const flown = (await fly(300)).record();
    const clock = createHandClock();
    const link = linkOf({
      clock,
      opened: openLocalTable({ plan, model: playedModel, name: 'Ada', clock, flown, keeper }),
    });
    await link.command({ kind: 'resume' });
    clock.turn(90);
    link.keep();
    const lines = link.record().lines.map((line) => JSON.stringify(line));
    expect(lines.slice(0, flown.lines.length)).toEqual(flown.lines.map((line) => JSON.stringify(line)));
    expect(lines.slice(0, -1)).toEqual(written);
    expect(lines.length).toBeGreaterThan(flown.lines.length + 3);
    const refused = await link.command({ kind: 'setTilt', degrees: 99 });
    expect(refused.ok).toBe(false);
    expect(link.record().lines).toHaveLength(lines.length);
  });
});

describe('a descent alone in which something failed', () => {
  it('has the fork of its record in its views, once it is flown, until the next descent', async () => {
    const troubled = laid({ start: 'low', seed: 2, sensorTrouble: 'seeded' });
    const clock = createHandClock();
    const asked: ForkRequest[] = [];
    const flyFork = (request: ForkRequest) => {
      asked.push(request);
      const { record, plan: of, change } = request;
      return Promise.resolve(forkRecord(record, { plan: of, model: playedModel }, change));
    };
    const link = linkOf({
      clock,
      opened: openLocalTable({ plan: troubled, model: playedModel, name: 'Ada', clock, flyFork }),
    });
    await link.command({ kind: 'takeSeat', seat: 'lead' });
    await link.command({ kind: 'begin' });
    while (link.view?.stage === 'descending') clock.turn(60);
    expect(link.view?.fork).toBeUndefined();
    await Promise.resolve();
    clock.turn(300);
    expect(asked).toHaveLength(1);
    expect(asked[0]?.change).toEqual({ kind: 'source healthy', source: 'altimeter' });
    expect(link.view?.fork?.happened.contact?.after).toBe((link.view?.flight.touchdown?.tick ?? 0) / 60);
    await link.command({ kind: 'again' });
    expect(link.view?.fork).toBeUndefined();
  });
});
