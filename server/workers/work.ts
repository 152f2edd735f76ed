/** What worker threads are given to do, and in which portions. */
import type { Campaign, CampaignBatch, SimulatedStackUp, VariancePlan } from '../../engine/dispersion/index.ts';
import type { EnvelopeJob, EnvelopeJobAnswer, EnvelopeQuestion } from '../../engine/envelope/index.ts';
import type {
  LeastTipFields,
  Reshaping,
  SensitivityPoint,
  SensitivityStep,
  StudyCase,
  TipFields,
  TradePoint,
} from '../../engine/study/index.ts';

/** Given to each thread once, when it starts. */
export type Work =
  | { readonly kind: 'campaign'; readonly campaign: Campaign }
  | { readonly kind: 'variance'; readonly plan: VariancePlan }
  | { readonly kind: 'envelope'; readonly question: EnvelopeQuestion }
  | { readonly kind: 'study' };

/** Consecutive cases or runs. */
export interface Range {
  readonly first: number;
  readonly count: number;
}

/** What a study asks of one arrival; a string says in words why there is no answer. */
export interface Studies {
  /** The least tip limit. */
  readonly least: { readonly ask: StudyCase; readonly answer: LeastTipFields | string };
  /** That of one direction of travel. */
  readonly toward: {
    readonly ask: { readonly asked: StudyCase; readonly azimuthDeg: number };
    readonly answer: TipFields | string;
  };
  /** That of another lander. */
  readonly trade: {
    readonly ask: { readonly asked: StudyCase; readonly shape: Reshaping };
    readonly answer: TradePoint;
  };
  /** One input of a case and of a campaign changed; without a step, as they are. */
  readonly sensitivity: {
    readonly ask: {
      readonly asked: StudyCase;
      readonly campaign: Campaign;
      readonly step: SensitivityStep | undefined;
    };
    readonly answer: SensitivityPoint;
  };
  readonly stackUp: { readonly ask: Campaign; readonly answer: SimulatedStackUp | undefined };
}

/** One question of a study, with its place among them. */
type StudyPortion = {
  readonly [Kind in keyof Studies]: { readonly place: number; readonly kind: Kind; readonly ask: Studies[Kind]['ask'] };
}[keyof Studies];

/** What one portion of each kind of work is, and what comes back for it. */
export interface Portions {
  readonly campaign: { readonly portion: Range; readonly answer: CampaignBatch };
  readonly variance: {
    readonly portion: Range;
    readonly answer: { readonly first: number; readonly rows: Float64Array };
  };
  readonly envelope: { readonly portion: readonly EnvelopeJob[]; readonly answer: readonly EnvelopeJobAnswer[] };
  readonly study: {
    readonly portion: StudyPortion;
    readonly answer: { readonly place: number; readonly answer: Studies[keyof Studies]['answer'] };
  };
}
