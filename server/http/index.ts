export { CLIENT_MISSING, isClientBuilt, serveClient, type Health } from './clientFiles.ts';
export { LARGEST_BODY, RUNS_RATE, guardServer } from './guard.ts';
export { networkOrigins } from './networkOrigins.ts';
export { serveLogbook } from './serveLogbook.ts';
