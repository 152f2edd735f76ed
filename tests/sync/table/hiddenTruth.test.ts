import { afterEach, describe, expect, it } from 'vitest';
import { joinSharedTable, openSharedTable, type TableLink } from '../../../client/net/index.ts';
import { playedModel, SEATS, type TableModel } from '../../../engine/table/index.ts';
import type { DescentState } from '../../../engine/world/index.ts';
import { laid } from '../../support/planChoice.ts';
import { createHandTicker, createTabStore, startTestServer, until } from '../../support/tableServer.ts';
import { openRelay } from '../../support/throughProxy.ts';
import { trueGround, trueNumbers } from '../../support/trueNumbers.ts';

const closing: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0).toReversed()) await close();
});

/** The eight bytes of a double as one whole number, for comparison. */
function bitsOf(value: number): bigint {
  const bytes = Buffer.alloc(8);
  bytes.writeDoubleLE(value);
  return bytes.readBigUInt64LE();
}

/** How many of these doubles stand anywhere in the bytes, in either order. */
function countOf(values: ReadonlySet<bigint>, bytes: Buffer): number {
  let count = 0;
  for (let at = 0; at + 8 <= bytes.length; at += 1) {
    if (values.has(bytes.readBigUInt64LE(at)) || values.has(bytes.readBigUInt64BE(at))) count += 1;
  }
  return count;
}

describe('every byte that the server sends to a crew that flies by instruments', () => {
  it.each([3, 8])(
    'holds no true number of the descent or of the ground before it is at rest: seed %i',
    async (seed) => {
      const plan = laid({ start: 'low', seed, sensorTrouble: 'seeded' });
      const truth: DescentState[] = [];
      const model: TableModel = {
        ...playedModel,
        createDescent(of) {
          const played = playedModel.createDescent(of);
          const read = () => {
            const state = played.read();
            truth.push(state);
            return state;
          };
          return { ...played, read };
        },
      };
      const ticker = createHandTicker();
      const server = await startTestServer({ ticker, model, plan: () => plan });
      closing.push(() => server.close());
      const heard: Buffer[] = [];
      const relay = await openRelay(server.port, (bytes) => heard.push(Buffer.from(bytes)));
      closing.push(() => relay.close());
      const links: TableLink[] = [];
      for (const seat of SEATS) {
        const options = { origin: relay.origin, name: seat, store: createTabStore() };
        const code = links[0]?.code;
        const opened = await (code === undefined ? openSharedTable(options) : joinSharedTable({ ...options, code }));
        if (!opened.ok) throw new Error(opened.error.reason);
        links.push(opened.value);
        expect((await opened.value.command({ kind: 'takeSeat', seat })).ok).toBe(true);
      }
      const [lead, flying, sensors, propellant] = links;
      await lead?.command({ kind: 'begin' });
      let before = 0;
      while (truth.at(-1)?.outcome === undefined && truth.length < 4000) {
        // what has come so far came before this turn
        before = heard.length;
        const tick = truth.length;
        if (tick % 60 === 0) await flying?.command({ kind: 'setTilt', degrees: tick % 120 === 0 ? 4 : -4 });
        if (tick % 90 === 0) await propellant?.command({ kind: 'setThrust', percent: 20 + (tick % 20) });
        if (tick % 45 === 0) {
          await flying?.command({ kind: 'callOut', sentence: 'motion', to: 'all' });
          await sensors?.command({ kind: 'callOut', sentence: 'heightAge', to: 'all' });
          await propellant?.command({ kind: 'callOut', sentence: 'usable', to: 'lead' });
        }
        if (tick % 300 === 0)
          await sensors?.command({ kind: 'judgeSource', source: 'altimeter', judgment: 'rejected' });
        const shown = links[0]?.view?.flight.tick ?? 0;
        ticker.turn(3);
        if (truth.at(-1)?.outcome === undefined)
          await until('the next reading', () => links.every(({ view }) => (view?.flight.tick ?? 0) > shown));
      }
      const telling = new Set([...truth.flatMap(trueNumbers), ...trueGround(plan)].map(bitsOf));
      expect(telling.size).toBeGreaterThan(2000);
      const sent = Buffer.concat(heard.slice(0, before));
      expect(sent.length).toBeGreaterThan(100_000);
      expect(countOf(telling, sent)).toBe(0);

      // at rest the truth is sent: the search would have found it
      await until('the scorecard', () => links.every(({ view }) => view?.scorecard !== undefined));
      expect(countOf(telling, Buffer.concat(heard.slice(before)))).toBeGreaterThan(10);
    },
  );
});
