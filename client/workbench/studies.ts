import {
  addBatch,
  campaignSimulator,
  createTally,
  parseCampaign,
  runBatch,
  simulatedStackUp,
  summarize,
  type CampaignSummary,
  type SimulatedStackUp,
} from '../../engine/dispersion/index.ts';
import {
  createEnvelope,
  enterAnswer,
  mapEnvelope,
  pendingJobs,
  runJob,
  type EnvelopeMap,
} from '../../engine/envelope/index.ts';
import { parseLander } from '../../engine/lander/index.ts';
import { formatProblem } from '../../engine/result.ts';
import { compareUprightLying, isLying, layOnSide, type ComparedRow } from '../../engine/structure/index.ts';
import { toRadians } from '../../engine/math/index.ts';
import {
  leastLimit,
  limitsRound,
  planeQuestion,
  sensitivitiesOf,
  SHAPE_FIELDS,
  simulatedArrivals,
  touchdownConditions,
  tradeGridOf,
  tradeOf,
  type LeastTipFields,
  type LimitsSoFar,
  type PlaneGrid,
  type Sensitivities,
  type StudiedTouchdown,
  type StudyCase,
  type TipFields,
  type Trade,
  type TradeAxes,
  type TradeGrid,
} from '../../engine/study/index.ts';
import { checkTouchdown, prepareTouchdown, runTouchdown, type TouchdownResult } from '../../engine/touchdown/index.ts';

/**
 * What a thread of the workbench works out: each a generator of short steps whose newest value is all that is known so far. A string says in
 * words why there is no answer.
 */

/** One world and slope of those that are held side by side. */
export interface MatrixCell {
  readonly world: string;
  readonly slopeDeg: number;
  readonly least: LeastTipFields | string;
}

export interface FilmedTouchdown {
  readonly asked: StudyCase;
  readonly touchdown: StudiedTouchdown;
}

export interface WatchedTouchdown {
  readonly asked: StudiedTouchdown;
  readonly result: TouchdownResult;
}

export interface Spread {
  readonly done: number;
  readonly runs: number;
  readonly summary: CampaignSummary | undefined;
  readonly stackUp: SimulatedStackUp | undefined;
}

export interface Lying {
  readonly rows: readonly ComparedRow[];
  readonly consequences: readonly string[];
}

export interface Questions {
  limits: StudyCase;
  /** The round of the case that is held beside. */
  beside: StudyCase;
  matrix: {
    readonly asked: StudyCase;
    readonly worlds: readonly { readonly id: string; readonly gravity: number }[];
    /** In the order in which they are looked at. */
    readonly slopesDeg: readonly number[];
  };
  touchdown: FilmedTouchdown;
  /** Touchdowns of a hall, side by side. */
  films: readonly FilmedTouchdown[];
  /** Limits of cases in one direction of travel each: quick enough for a hand that drags. */
  toward: readonly { readonly asked: StudyCase; readonly azimuthDeg: number }[];
  lying: StudyCase;
  plane: { readonly asked: StudyCase; readonly grid: PlaneGrid };
  spread: Readonly<Record<string, unknown>>;
  trades: StudyCase;
  grid: { readonly asked: StudyCase; readonly axes: TradeAxes };
  /** Of the case, and of the arrivals of a campaign document. */
  sensitivities: { readonly asked: StudyCase; readonly document: Readonly<Record<string, unknown>> };
}

export interface Answers {
  limits: LimitsSoFar;
  beside: LimitsSoFar;
  matrix: readonly MatrixCell[];
  touchdown: WatchedTouchdown;
  films: readonly (WatchedTouchdown | string)[];
  toward: readonly (TipFields | string)[];
  lying: Lying;
  plane: EnvelopeMap;
  spread: Spread;
  trades: readonly Trade[];
  grid: TradeGrid;
  sensitivities: Sensitivities;
}

export type Study = keyof Questions;

/** The most urgent first: what a person has just pressed, then what the headlines say. */
export const STUDY_ORDER = [
  'touchdown',
  'films',
  'toward',
  'limits',
  'beside',
  'lying',
  'matrix',
  'spread',
  'trades',
  'grid',
  'sensitivities',
  'plane',
] as const satisfies readonly Study[];

export const STUDIES: { readonly [Name in Study]: (question: Questions[Name]) => Generator<Answers[Name] | string> } = {
  limits: limitsRound,
  beside: limitsRound,
  *matrix({ asked, worlds, slopesDeg }) {
    const found: MatrixCell[] = [];
    for (const slopeDeg of slopesDeg) {
      for (const { id, gravity } of worlds) {
        found.push({ world: id, slopeDeg, least: leastLimit({ ...asked, gravity, slopeDeg }) });
        yield [...found];
      }
    }
  },
  *touchdown(filmed) {
    yield film(filmed);
  },
  *films(filmed) {
    const seen: (WatchedTouchdown | string)[] = [];
    for (const one of filmed) {
      seen.push(film(one));
      yield [...seen];
    }
  },
  *toward(cases) {
    const found: (TipFields | string)[] = [];
    for (const { asked, azimuthDeg } of cases) {
      const arrivals = simulatedArrivals(asked);
      found.push(typeof arrivals === 'string' ? arrivals : arrivals.toward(azimuthDeg));
      yield [...found];
    }
  },
  *lying(asked) {
    const { lander, gravity, slopeDeg, descentRate } = asked;
    if (isLying(lander)) {
      yield `${lander.name} lies on its side already.`;
      return;
    }
    const compared = compareUprightLying(lander, { gravity, slope: toRadians(slopeDeg), descentRate });
    const consequences = compared.consequences.map(({ text }) => text);
    yield { rows: compared.rows, consequences };
    const limits = [lander, layOnSide(lander, compared.sideLegs)].map((one) => {
      const least = leastLimit({ ...asked, lander: one, missing: [] });
      return typeof least === 'string' ? undefined : (least.tip ?? Infinity);
    });
    const [upright, lying] = limits;
    const better =
      upright === undefined || lying === undefined || upright === lying
        ? 'neither'
        : upright > lying
          ? 'upright'
          : 'lying';
    const tip: ComparedRow = {
      quantity: 'tip limit, simulated',
      unit: 'm/s',
      upright: limitShown(upright),
      lying: limitShown(lying),
      better,
    };
    yield { rows: [tip, ...compared.rows], consequences };
  },
  *plane({ asked, grid }) {
    const question = planeQuestion(asked, grid);
    const [first] = question.directions;
    const state = { horizontalSpeed: 0, descentRate: 0, ...first };
    const problems = checkTouchdown(asked.lander, { ...question.conditions, state });
    const simulate = campaignSimulator(asked.lander);
    if (!simulate.ok || problems.length > 0) {
      yield [...problems, ...(simulate.ok ? [] : simulate.error)].map(formatProblem).join('; ');
      return;
    }
    const envelope = createEnvelope(question);
    let answered = 0;
    while (envelope.stage !== 'done') {
      for (const job of pendingJobs(envelope)) {
        enterAnswer(envelope, runJob(question, job, simulate.value));
        // a map is as large as its grid: not one for each node
        if (++answered % MAP_EVERY === 0) yield mapEnvelope(envelope);
      }
    }
    yield mapEnvelope(envelope);
  },
  *spread(document) {
    const campaign = parseCampaign(document, parseLander);
    if (!campaign.ok) {
      yield campaign.error.map(formatProblem).join('; ');
      return;
    }
    const simulate = campaignSimulator(campaign.value.lander);
    if (!simulate.ok) {
      yield simulate.error.map(formatProblem).join('; ');
      return;
    }
    const tally = createTally(campaign.value);
    const { runs } = campaign.value;
    for (let first = 0; first < runs; first += BATCH) {
      addBatch(tally, runBatch(campaign.value, { first, count: Math.min(BATCH, runs - first) }, simulate.value));
      yield { done: tally.done, runs, summary: summarize(tally), stackUp: undefined };
    }
    yield { done: tally.done, runs, summary: summarize(tally), stackUp: simulatedStackUp(campaign.value) };
  },
  grid: ({ asked, axes }) => tradeGridOf(asked, axes),
  *sensitivities({ asked, document }) {
    const campaign = parseCampaign(document, parseLander);
    if (campaign.ok) yield* sensitivitiesOf(asked, campaign.value);
    else yield campaign.error.map(formatProblem).join('; ');
  },
  *trades(asked) {
    const whole: Trade[] = [];
    for (const field of SHAPE_FIELDS) {
      let last: Trade | undefined;
      for (const trade of tradeOf(asked, field)) {
        last = trade;
        yield [...whole, trade];
      }
      if (last !== undefined) whole.push(last);
    }
  },
};

function film({ asked, touchdown }: FilmedTouchdown): WatchedTouchdown | string {
  const conditions = touchdownConditions(asked, touchdown);
  const problems = checkTouchdown(asked.lander, conditions);
  const prepared = prepareTouchdown(asked.lander);
  if (!prepared.ok || problems.length > 0)
    return [...problems, ...(prepared.ok ? [] : prepared.error)].map(formatProblem).join('; ');
  // a first run tells how long it takes, so that the second keeps as many samples as a film needs
  const simulateOn = { stopWhenDecided: false } as const;
  const { steps } = runTouchdown(prepared.value, conditions, simulateOn);
  const historyEvery = Math.max(1, Math.floor(steps / MOST_SAMPLES));
  return { asked: touchdown, result: runTouchdown(prepared.value, conditions, { ...simulateOn, historyEvery }) };
}

const MOST_SAMPLES = 600;
const MAP_EVERY = 12;
const BATCH = 10;

/** A lander that tips at no speed has no figure. */
function limitShown(limit: number | undefined): number | undefined {
  return limit === Infinity ? undefined : limit;
}
