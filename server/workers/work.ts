/** What worker threads are given to do, and in which portions. */
import type { Campaign, CampaignBatch, VariancePlan } from '../../engine/dispersion/index.ts';
import type { EnvelopeJob, EnvelopeJobAnswer, EnvelopeQuestion } from '../../engine/envelope/index.ts';

/** Given to each thread once, when it starts. */
export type Work =
  | { readonly kind: 'campaign'; readonly campaign: Campaign }
  | { readonly kind: 'variance'; readonly plan: VariancePlan }
  | { readonly kind: 'envelope'; readonly question: EnvelopeQuestion };

/** Consecutive cases or runs. */
export interface Range {
  readonly first: number;
  readonly count: number;
}

/** What one portion of each kind of work is, and what comes back for it. */
export interface Portions {
  readonly campaign: { readonly portion: Range; readonly answer: CampaignBatch };
  readonly variance: {
    readonly portion: Range;
    readonly answer: { readonly first: number; readonly rows: Float64Array };
  };
  readonly envelope: { readonly portion: readonly EnvelopeJob[]; readonly answer: readonly EnvelopeJobAnswer[] };
}
