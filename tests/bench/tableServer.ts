import { playedModel } from '../../engine/table/index.ts';
import { layPlan } from '../../levels/index.ts';
import { startTestServer } from '../support/tableServer.ts';
import { account, measuredTicker } from './measuredTicker.ts';

/** A server in a process of its own; see manyTables.ts. */

const server = await startTestServer(
  {
    ticker: measuredTicker,
    model: playedModel,
    plan(choice) {
      const plan = choice && layPlan(choice);
      if (plan?.ok !== true) throw new Error('the bench says what it plays');
      return plan.value;
    },
  },
  {
    KILTER_MOST_TABLES: '200',
    KILTER_TABLES_PER_ADDRESS: '200',
    KILTER_LINES_PER_ADDRESS: '1000',
    // the crowd comes from one machine and says of each table that it is another
    KILTER_TRUSTED_PROXIES: '127.0.0.1',
  },
);
account(server.origin);
