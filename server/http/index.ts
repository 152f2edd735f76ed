export { CLIENT_MISSING, isClientBuilt, serveClient } from './clientFiles.ts';
export { LARGEST_BODY, MATCHMAKING_RATE, guardServer } from './guard.ts';
export { networkOrigins } from './networkOrigins.ts';
export { serveLogbook } from './serveLogbook.ts';
