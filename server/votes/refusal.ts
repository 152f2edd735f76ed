import { refuse } from '../../engine/result.ts';

/** Why a vote, or what a presenter asks, is not taken. */
export interface VoteRefusal {
  readonly status: 400 | 403 | 404 | 409 | 429;
  readonly reason: string;
}

export function refusal(status: VoteRefusal['status'], reason: string) {
  return refuse<VoteRefusal>({ status, reason });
}
