import { readFileSync } from 'node:fs';
import manifest from '../../package.json' with { type: 'json' };
import type { Campaign } from '../../engine/dispersion/index.ts';
import { formatLander, type Lander } from '../../engine/lander/index.ts';
import {
  planeReach,
  SENSITIVITY_NAMES,
  SHAPE_FIELDS,
  standardCampaign,
  type SensitivityName,
  type ShapeField,
} from '../../engine/study/index.ts';
import { findLander } from '../../levels/index.ts';
import type { BoardInput, BoardQuestion } from '../board/boardQuestion.ts';
import { campaignDocument, readCampaign, type CampaignDocument } from './campaignFile.ts';
import { namePlace } from './condition.ts';
import { readLander } from './readLander.ts';
import { readWorlds } from './readWorld.ts';
import { sha256Of } from './sha256.ts';
import { readStudy, type StudyOptions } from './studyOptions.ts';
import { nameLander } from './subject.ts';
import { oneLine, UsageError } from './usageError.ts';
import { worldOf } from './worldOptions.ts';

/** What a report for a board is asked to hold. */
export interface BoardOptions extends StudyOptions {
  readonly worlds?: string;
  readonly slopes?: readonly number[];
  readonly steps?: number;
  readonly yaws?: number;
  readonly campaign?: string;
  readonly runs?: number;
  readonly seed?: number;
  /** Default: all. */
  readonly sensitivities?: readonly SensitivityName[];
  /** true: every dimension. */
  readonly trade?: true | readonly ShapeField[];
}

const DEFAULTS = { worlds: 'moon,mars,earth', slopes: [0, 5, 8, 12], steps: 24, yaws: 8 } as const;

export function readBoard(word: string, options: BoardOptions): BoardQuestion {
  const lander = readLander(word);
  const asked = readStudy(lander, options);
  const { worlds, slopes, steps, yaws } = { ...DEFAULTS, ...options };
  const spread = readSpread(word, lander, options);
  return {
    asked,
    name: nameLander(lander, options.missing ?? []),
    place: namePlace(worldOf(options)),
    word: shellWord(word),
    placeOption: placeOption(options),
    worlds: readWorlds('--worlds', worlds),
    slopesDeg: slopes,
    grid: { ...planeReach(asked), steps, yaws },
    ...spread,
    sensitivities: options.sensitivities ?? SENSITIVITY_NAMES,
    trade: options.trade === true ? SHAPE_FIELDS : (options.trade ?? []),
    inputs: [landerInput(word), spread.input],
    command: commandOf(word, options),
    version: manifest.version,
  };
}

interface BoardSpread extends Pick<BoardQuestion, 'campaign' | 'campaignWords' | 'isStandardCampaign'> {
  readonly input: BoardInput;
}

/** The arrivals that are drawn: those of a file, or standard ones where the arrival is. */
function readSpread(word: string, lander: Lander, options: BoardOptions): BoardSpread {
  const { campaign: file, runs, seed } = options;
  const counts = { ...(runs !== undefined && { runs }), ...(seed !== undefined && { seed }) };
  if (file !== undefined) {
    const campaign = readCampaign({ ...campaignDocument(file), ...counts }, file);
    if (JSON.stringify(formatLander(campaign.lander)) !== JSON.stringify(formatLander(lander)))
      throw new UsageError(`--campaign: expected a campaign of ${oneLine(word, 80)}, got one of another lander`);
    const input = { name: `campaign ${oneLine(file, 200)}`, ...sha256Of(readFileSync(file)) };
    return { campaign, isStandardCampaign: false, input, campaignWords: countedWords(shellWord(file), campaign) };
  }
  if (options.missing !== undefined)
    throw new UsageError('--missing goes with --campaign: the standard arrivals are drawn with all legs');
  const place =
    options.gravity === undefined ? { world: options.world?.toLowerCase() ?? 'moon' } : { gravity: options.gravity };
  const { world: _, ...standard } = standardCampaign(word);
  const document: CampaignDocument = { ...standard, ...place, ...counts };
  const campaign = readCampaign(document, word);
  const words = [countedWords(shellWord(word), campaign), placeOption(options)].filter((part) => part !== '').join(' ');
  const input = { name: 'standard arrivals, as one line of JSON', ...sha256Of(JSON.stringify(document)) };
  return { campaign, isStandardCampaign: true, input, campaignWords: words };
}

function countedWords(word: string, { runs, seed }: Campaign): string {
  return `${word} --runs ${runs} --seed ${seed}`;
}

/** The file that a lander was read from; those that come with the program are files of it. */
export function landerInput(word: string): BoardInput {
  const builtIn = findLander(word.trim().toLowerCase());
  if (builtIn === undefined) return { name: `lander ${oneLine(word, 200)}`, ...sha256Of(readFileSync(word)) };
  const name = `levels/landers/${builtIn.id}.json`;
  return { name, ...sha256Of(readFileSync(new URL(`../../${name}`, import.meta.url))) };
}

function placeOption({ world, gravity }: BoardOptions): string {
  if (gravity !== undefined) return `--gravity ${gravity}`;
  return world === undefined || world.toLowerCase() === 'moon' ? '' : `--world ${world.toLowerCase()}`;
}

/** The command that asks for the same report: every option that was given, in one order. */
function commandOf(word: string, options: BoardOptions): string {
  const { slope, descent, horizontal, friction, missing, worlds, slopes, steps, yaws, campaign, runs, seed } = options;
  const { sensitivities } = options;
  const given = {
    slope,
    descent,
    horizontal,
    friction,
    missing: missing?.join(','),
    worlds: worlds === undefined ? undefined : shellWord(worlds),
    slopes: slopes?.join(','),
    steps,
    yaws,
    campaign: campaign === undefined ? undefined : shellWord(campaign),
    runs,
    seed,
    sensitivities: sensitivities === undefined ? undefined : sensitivities.join(',') || 'none',
  };
  const words = Object.entries(given).flatMap(([name, value]) => (value === undefined ? [] : [`--${name} ${value}`]));
  const { trade: fields } = options;
  const trade = fields === undefined ? [] : [fields === true ? '--trade' : `--trade ${fields.join(',')}`];
  const place = placeOption(options);
  return ['npx kilter report', shellWord(word), ...(place === '' ? [] : [place]), ...words, ...trade].join(' ');
}

/** As a shell reads it as one word. */
function shellWord(word: string): string {
  return /^[\w./,:@%+-]+$/.test(word) ? word : `'${word.replaceAll("'", String.raw`'\''`)}'`;
}
