import {
  credibilityCard,
  landerShape,
  outsideCheckedRange,
  runChecks,
  type CredibilityCard,
} from '../../engine/checks/index.ts';
import {
  caseRows,
  MEASURES,
  summarize,
  type CampaignSummary,
  type CampaignTally,
  type SimulatedStackUp,
} from '../../engine/dispersion/index.ts';
import { mapEnvelope, type EnvelopeMap } from '../../engine/envelope/index.ts';
import {
  enterSensitivity,
  planeQuestion,
  planSensitivities,
  rigidRound,
  sensitivitySteps,
  stanceStudy,
  type LeastTipFields,
  type RigidRound,
  type Sensitivities,
  type StanceStudy,
  type StudyCase,
  type TipFields,
  type Trade,
} from '../../engine/study/index.ts';
import type { World } from '../../engine/worlds.ts';
import type { LongWork } from '../workers/pool.ts';
import { runCampaign } from '../workers/runCampaign.ts';
import { runEnvelope } from '../workers/runEnvelope.ts';
import { createStudyList, type StudyList } from '../workers/runStudies.ts';
import { askTrades } from '../cli/tradeRuns.ts';
import { rangedCampaign } from '../cli/campaignRange.ts';
import { rangedStudy } from '../cli/studyOptions.ts';
import type { BoardQuestion } from './boardQuestion.ts';

/** The least tip limit on one world and slope. */
export interface BoardCell {
  readonly world: World;
  readonly slopeDeg: number;
  readonly least: LeastTipFields;
  /** What of it lies outside the checked range. */
  readonly outside: readonly string[];
}

/** What a report says, worked out. */
export interface BoardFindings {
  readonly rigid: Extract<RigidRound, { readonly stands: true }>;
  /** Of the arrival asked about. */
  readonly least: LeastTipFields;
  readonly round: readonly (TipFields & { readonly azimuthDeg: number })[];
  readonly cells: readonly BoardCell[];
  readonly plane: EnvelopeMap;
  readonly stance: StanceStudy;
  readonly summary: CampaignSummary;
  /** Least margins of the arrivals drawn that stayed up, rising [m], and how many others there are. */
  readonly margins: { readonly sorted: readonly number[]; readonly cutOff: number };
  readonly stackUp: SimulatedStackUp | undefined;
  readonly sensitivities: Sensitivities;
  readonly trades: readonly Trade[];
  readonly card: CredibilityCard;
  /** Of the arrival, and of the many that are drawn. */
  readonly outside: { readonly arrival: readonly string[]; readonly campaign: readonly string[] };
}

/** Between azimuths of the round of simulated limits [deg]. */
export const ROUND_STEP = 15;
/** Between those of what needs no simulation [deg]. */
const RIGID_STEP = 5;

/** How each part of the work is run and watched. */
export type Watch = <Result>(unit: string, run: (work: LongWork) => Promise<Result>) => Promise<Result>;

/** Works everything out; undefined when it was stopped; a string: why there is nothing to say of this lander. */
export async function findBoard(question: BoardQuestion, watch: Watch): Promise<BoardFindings | string | undefined> {
  const { asked, worlds, campaign } = question;
  const rigid = rigidRound(asked, RIGID_STEP);
  const stance = stanceStudy(asked, worlds);
  if (!rigid.stands || stance === undefined) return `does not stand: ${rigid.stands ? '' : rigid.reason}`;
  const limits = createStudyList();
  const found = askLimits(limits, question);
  if (!(await watch('limits', (work) => limits.run(work)))) return undefined;
  const answers = found();
  if (typeof answers === 'string') return `cannot be simulated: ${answers}`;
  const envelope = await watch('jobs', (work) => runEnvelope(planeQuestion(asked, question.grid), work));
  const tally = await watch('touchdowns', (work) => runCampaign(campaign, work));
  const summary = summarize(tally);
  if (envelope.stage !== 'done' || summary === undefined || summary.isPartial) return undefined;
  const outside = [
    ...outsideCheckedRange('touchdown simulation', rangedCampaign(campaign)),
    ...outsideCheckedRange('dispersion', { runs: campaign.runs }),
  ];
  return {
    rigid,
    stance,
    ...answers,
    plane: mapEnvelope(envelope),
    summary,
    margins: marginsOf(tally),
    card: credibilityCard(runChecks()),
    outside: { arrival: [...outsideOf(asked), ...outsideAtLimit(answers)], campaign: outside },
  };
}

function marginsOf(tally: CampaignTally): BoardFindings['margins'] {
  const place = MEASURES.findIndex(({ name }) => name === 'leastMargin');
  const rows = caseRows(tally);
  const kept = rows.filter(({ isCutOff }) => !isCutOff);
  return {
    sorted: kept.map(({ measures }) => measures[place]!).toSorted((a, b) => a - b),
    cutOff: rows.length - kept.length,
  };
}

type Limits = Pick<BoardFindings, 'least' | 'round' | 'cells' | 'stackUp' | 'sensitivities' | 'trades'>;

/** Every limit there is to simulate, in one list, so that no thread waits for another. */
function askLimits(limits: StudyList, question: BoardQuestion): () => Limits | string {
  const { asked, worlds, slopesDeg, campaign } = question;
  const least = limits.ask('least', asked);
  const round = Array.from({ length: 360 / ROUND_STEP }, (_, i) => ({
    azimuthDeg: ROUND_STEP * i,
    limit: limits.ask('toward', { asked, azimuthDeg: ROUND_STEP * i }),
  }));
  const cells = worlds.flatMap((world) =>
    slopesDeg.map((slopeDeg) => {
      const cell = { ...asked, gravity: world.gravity, slopeDeg };
      return { world, slopeDeg, outside: outsideOf(cell), limit: limits.ask('least', cell) };
    }),
  );
  const stackUp = limits.ask('stackUp', campaign);
  const sensitivities = askSensitivities(limits, question);
  const trades = question.trade.length === 0 ? () => [] : askTrades(limits, asked, question.trade);
  return () => {
    const own = least();
    if (typeof own === 'string') return own;
    return {
      least: own,
      round: round.map(({ azimuthDeg, limit }) => ({ azimuthDeg, ...known(limit()) })),
      cells: cells.map(({ limit, ...cell }) => ({ ...cell, least: known(limit()) })),
      stackUp: stackUp(),
      sensitivities: sensitivities(),
      trades: trades(),
    };
  };
}

function askSensitivities(limits: StudyList, { asked, campaign, sensitivities }: BoardQuestion): () => Sensitivities {
  const plan = planSensitivities(asked, campaign, sensitivities);
  if (plan.inputs.length === 0) return () => plan;
  const found = sensitivitySteps(plan).map((at) => ({
    at,
    point: limits.ask('sensitivity', { asked, campaign, step: at.step }),
  }));
  return () => found.reduce((known, { at, point }) => enterSensitivity(known, at, point()), plan);
}

/** What can be simulated once can be on another world and slope as well: the lander is the same. */
function known<Fields>(answer: Fields | string): Fields {
  if (typeof answer === 'string') throw new Error(`Broken contract: ${answer}`);
  return answer;
}

/** Limits are looked for at the highest plausible friction as well: what was found there may lie outside though the arrival does not. */
function outsideAtLimit({ least, cells }: Limits): readonly string[] {
  const friction = [least, ...cells.map((cell) => cell.least)].flatMap(({ tip, tipFriction }) =>
    tip === null ? [] : [tipFriction],
  );
  return outsideCheckedRange('touchdown simulation', { friction }).map((line) => `tip limits: ${line}`);
}

/** Of the simulation, and of the closed form that is drawn beside it. */
function outsideOf(asked: StudyCase): readonly string[] {
  const shape = landerShape(asked.lander, asked.missing);
  const { gravity, slopeDeg, descentRate } = asked;
  const simulated = outsideCheckedRange('touchdown simulation', rangedStudy(asked));
  const closed = outsideCheckedRange('trip limit', { gravity, slopeDeg, descentRate, ...shape });
  return [...simulated, ...closed.filter((line) => !simulated.includes(line)).map((line) => `closed form: ${line}`)];
}
