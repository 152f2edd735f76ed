export { COMMAND_RATE, DEAR_RATES } from './allowances.ts';
export { ENTERING_RATE, GUESS_RATES, createEntrance } from './entrance.ts';
export { createTableRegistry, type OpenTable } from './tableRegistry.ts';
export { PLACES_PER_ADDRESS } from './places.ts';
export { createBacklogReport } from './backlogReport.ts';
export { openServer, type RunningServer, type ServerParts } from './openServer.ts';
export { STEPS_PER_READING } from './ownReadings.ts';
export { STEPS_PER_PATCH } from './TableRoom.ts';
export { MOST_CATCH_UP, TICK_MS, createTicker, type Ticker, type Timing } from './ticker.ts';
