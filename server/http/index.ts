export { CLIENT_MISSING, isClientBuilt, serveClient } from './clientFiles.ts';
export { LARGEST_BODY, RUNS_RATE, guardServer } from './guard.ts';
export { networkOrigins } from './networkOrigins.ts';
export { serveState } from './serveState.ts';
export { createTally } from './tally.ts';
export { serveLines } from './serveLines.ts';
export { serveLogbook } from './serveLogbook.ts';
export { serveVotes } from './serveVotes.ts';
