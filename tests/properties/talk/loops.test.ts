import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SEATS, stepTable, viewTable, type Command, type Table } from '../../../engine/table/index.ts';
import { ADDRESSEES, fillSentence, POLL_ANSWERS, SENTENCES_OF } from '../../../engine/talk/index.ts';
import { commandTable } from '../../support/askTable.ts';
import { beginCrew } from '../../support/crewTable.ts';

type Action = { readonly who: number; readonly command: Command } | { readonly ticks: number };

const to = fc.constantFrom(...ADDRESSEES);
const number = fc.integer({ min: 1, max: 3 });
const sentence = fc.constantFrom(...SEATS.flatMap((seat) => [...SENTENCES_OF[seat]]));
const command: fc.Arbitrary<Command> = fc.oneof(
  fc.record({ kind: fc.constant('callOut' as const), sentence, to }),
  fc.record({ kind: fc.constant('callOut' as const), sentence, source: fc.constant('altimeter' as const), to }),
  fc.record({ kind: fc.constant('say' as const), text: fc.string({ maxLength: 90 }), to }),
  fc.record({ kind: fc.constant('confirm' as const), callout: number }),
  fc.record({ kind: fc.constant('readBack' as const), callout: number }),
  fc.record({ kind: fc.constant('readBack' as const), callout: number }),
  fc.record({ kind: fc.constant('confirm' as const), callout: number }),
  fc.record({ kind: fc.constant('callPoll' as const), question: fc.constantFrom('go' as const, 'stay' as const) }),
  fc.record({
    kind: fc.constant('answerPoll' as const),
    answer: fc.constantFrom(...POLL_ANSWERS),
    reason: fc.constantFrom('', 'so'),
  }),
  fc.record({ kind: fc.constant('decide' as const), decision: fc.constantFrom(...POLL_ANSWERS) }),
  fc.record({ kind: fc.constant('takeSeat' as const), seat: fc.constantFrom(...SEATS) }),
  fc.constant<Command>({ kind: 'leaveSeat' }),
);
const action: fc.Arbitrary<Action> = fc.oneof(
  { weight: 5, arbitrary: fc.record({ who: fc.integer({ min: 1, max: 5 }), command }) },
  { weight: 1, arbitrary: fc.record({ ticks: fc.integer({ min: 1, max: 120 }) }) },
);

const isClosed = (table: Table, id: number) => table.state.talk.calls[id - 1]?.confirmed !== undefined;

describe('loops in any session', () => {
  it('[TK2] close by the sending seat alone, after every read-back, and never by themselves', () => {
    let closed = 0;
    let byStandIn = 0;
    fc.assert(
      fc.property(fc.array(action, { minLength: 40, maxLength: 160 }), (actions) => {
        const table = beginCrew({ seats: ['lead', 'flying', 'sensors'] });
        const step = (what: Action, tick: () => void) => {
          const before = table.state.talk.calls;
          tick();
          for (const call of table.state.talk.calls) {
            const earlier = before[call.id - 1];
            if (call.confirmed === undefined || earlier?.confirmed !== undefined) continue;
            closed += 1;
            const asked = call.to === 'all' ? SEATS.filter((seat) => seat !== call.from.seat) : [call.to];
            expect(asked.filter((seat) => !call.readBack.some((one) => one.seat === seat))).toEqual([]);
            expect(call.confirmed.seat).toBe(call.from.seat);
            const isByStandIn = 'ticks' in what;
            if (isByStandIn) byStandIn += 1;
            // by a stand-in with nobody at that seat, or by the very command
            const sitters = table.state.members.filter(({ seat }) => seat === call.from.seat);
            expect(isByStandIn ? sitters : [what.command]).toEqual(
              isByStandIn ? [] : [{ kind: 'confirm', callout: call.id }],
            );
            expect(call.confirmed.member).toBe(isByStandIn ? undefined : `m${what.who}`);
          }
          // once closed it stays so, and what was said stays as it was
          for (const call of before) {
            expect(isClosed(table, call.id) || call.confirmed === undefined).toBe(true);
            expect(table.state.talk.calls[call.id - 1]?.said).toEqual(call.said);
          }
        };
        for (const what of actions)
          if ('ticks' in what) for (let i = 0; i < what.ticks; i += 1) step(what, () => stepTable(table));
          else step(what, () => void commandTable(table, `m${what.who}`, what.command));
      }),
      { seed: 9, numRuns: 150 },
    );
    expect(closed).toBeGreaterThan(20);
    expect(byStandIn).toBeGreaterThan(0);
  });

  it('[TK1] carry exactly the numbers on the view of their sender', () => {
    let filled = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...SEATS),
        fc.integer({ min: 0, max: 90 }),
        fc.nat(),
        fc.integer({ min: 0, max: 100 }),
        (seat, ticks, draw, percent) => {
          const table = beginCrew();
          const at = SEATS.indexOf(seat) + 1;
          commandTable(table, 'm2', { kind: 'setThrust', percent });
          commandTable(table, 'm5', { kind: 'markSpot', meters: draw % 9, approach: 'either way' });
          for (let i = 0; i < ticks; i += 1) stepTable(table);
          if (table.state.stage !== 'descending') return;
          const own = SENTENCES_OF[seat];
          const chosen = own[draw % own.length]!;
          const expected = fillSentence(chosen, undefined, viewTable(table, `m${at}`)) ?? [];
          const sent = commandTable(table, `m${at}`, { kind: 'callOut', sentence: chosen, to: 'all' });
          if (!sent.ok) return;
          filled += expected.length;
          for (const member of ['m1', 'm5'])
            expect(viewTable(table, member).talk.calls.at(-1)).toMatchObject({ sentence: chosen, values: expected });
        },
      ),
      { seed: 4, numRuns: 200 },
    );
    expect(filled).toBeGreaterThan(50);
  });
});
