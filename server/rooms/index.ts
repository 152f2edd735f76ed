export { createBacklogReport } from './backlogReport.ts';
export { openServer, type RunningServer, type ServerParts } from './openServer.ts';
export { COMMAND_RATE, DEAR_RATES, STEPS_PER_PATCH } from './TableRoom.ts';
export { MOST_CATCH_UP, TICK_MS, createTicker, type Ticker, type Timing } from './ticker.ts';
