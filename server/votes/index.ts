export { createVotes, MOST_VOTERS, type Votes } from './votes.ts';
