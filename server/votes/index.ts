export { LEAD_MS, LEFT_AFTER_MS } from './flight.ts';
export type { VoteRefusal } from './refusal.ts';
export { createVotes, MOST_VOTERS, type Votes } from './votes.ts';
