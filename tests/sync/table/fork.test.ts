import { afterEach, beforeEach, expect, it } from 'vitest';
import { joinSharedTable, openSharedTable, type TableLink } from '../../../client/net/index.ts';
import { forkRecord } from '../../../engine/record/index.ts';
import { playedModel } from '../../../engine/table/index.ts';
import { flyTroubled } from '../../support/flyTroubled.ts';
import { laid } from '../../support/planChoice.ts';
import {
  createHandTicker,
  createTabStore,
  startTestServer,
  until,
  type TestServer,
} from '../../support/tableServer.ts';

/** The altimeter freezes. */
const PLAN = laid({ start: 'low', seed: 2, sensorTrouble: 'seeded' });

let server: TestServer;
const ticker = createHandTicker();
beforeEach(async () => void (server = await startTestServer({ model: playedModel, plan: () => PLAN, ticker })));
afterEach(() => server.close());

async function enter(name: string, code?: string): Promise<TableLink> {
  const options = { origin: server.origin, name, store: createTabStore() };
  const entered = await (code === undefined ? openSharedTable(options) : joinSharedTable({ ...options, code }));
  if (!entered.ok) throw new Error(entered.error.reason);
  return entered.value;
}

/** Steps the tables until a member is shown what is wanted. */
async function turnUntil(what: string, link: TableLink, isShown: (view: NonNullable<TableLink['view']>) => boolean) {
  const start = performance.now();
  while (link.view === undefined || !isShown(link.view)) {
    if (performance.now() - start > 20_000) throw new Error(`waited for: ${what}`);
    ticker.turn(30);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}

it('[TA40] a crew is shown, after the card, what a healthy source would have given, until it begins again; tables step on meanwhile', async () => {
  const ada = await enter('Ada');
  await ada.command({ kind: 'takeSeat', seat: 'lead' });
  await ada.command({ kind: 'begin' });
  await turnUntil('the card', ada, ({ scorecard }) => scorecard !== undefined);
  expect(ada.view?.fork).toBeUndefined();
  // what is flown on the other thread holds up no step here
  const begun = performance.now();
  ticker.turn(60);
  expect(performance.now() - begun).toBeLessThan(100);

  await turnUntil('the fork', ada, ({ fork }) => fork !== undefined);
  const { record } = flyTroubled(PLAN, 'lead', [{}]);
  const expected = forkRecord(
    record,
    { plan: PLAN, model: playedModel },
    { kind: 'source healthy', source: 'altimeter' },
  );
  expect({ ok: true, value: ada.view?.fork }).toEqual(expected);

  const bo = await enter('Bo', ada.code ?? '');
  await turnUntil('the fork, to one who came later', bo, ({ fork }) => fork !== undefined);
  expect(bo.view?.fork).toEqual(ada.view?.fork);

  await ada.command({ kind: 'again' });
  ticker.turn(3);
  await until('a new descent', () => ada.view?.stage === 'descending');
  expect(ada.view?.fork).toBeUndefined();
  expect(server.reports).toEqual([]);
}, 60_000);
