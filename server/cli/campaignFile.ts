import { readFileSync, statSync } from 'node:fs';
import {
  CAMPAIGN_FORMAT,
  formatProblem,
  parseCampaign,
  parseLander,
  refuse,
  accept,
  type Campaign,
  type FieldProblem,
  type Lander,
  type Result,
} from '../../engine/index.ts';
import { findLander } from '../../levels/index.ts';
import { readLander } from './readLander.ts';
import { oneLine, UsageError } from './usageError.ts';

/** A campaign document as plain JSON. */
export type CampaignDocument = Readonly<Record<string, unknown>>;

/** Longest campaign file that is read [bytes]. */
const LONGEST_FILE = 1024 * 1024;

/**
 * The document that a word means: a campaign file, or for a lander the campaign that is used where nobody says more. Those
 * dispersions are invented for exercise.
 */
export function campaignDocument(word: string): CampaignDocument {
  if (findLander(word.trim().toLowerCase()) !== undefined) return standardCampaign(word.trim().toLowerCase());
  const document = readJson(word);
  if (document === undefined) {
    // not JSON, or not there: the lander's reader says what is wrong
    readLander(word);
    return standardCampaign(word);
  }
  const isCampaign = 'format' in document && String(document.format).startsWith('kilter-campaign');
  return isCampaign ? document : standardCampaign(word);
}

/** The campaign of a document, or one line with what is wrong. */
export function readCampaign(document: CampaignDocument, shown: string): Campaign {
  const parsed = parseCampaign(document, landerOf);
  if (parsed.ok) return parsed.value;
  const [first, ...others] = parsed.error;
  const more = others.length === 0 ? '' : ` (and ${others.length} more)`;
  throw new UsageError(`${oneLine(shown, 80)}: ${first === undefined ? 'refused' : formatProblem(first)}${more}`);
}

/** A lander in a campaign: a built-in name, the path of a file, or a whole lander document. */
function landerOf(value: unknown): Result<Lander, readonly FieldProblem[]> {
  if (typeof value !== 'string') return parseLander(value);
  try {
    return accept(readLander(value));
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    return refuse([
      { code: 'lander/not-read', path: '', expected: 'a built-in lander or a lander file', came: error.message },
    ]);
  }
}

function standardCampaign(lander: string): CampaignDocument {
  return {
    format: CAMPAIGN_FORMAT,
    title: 'Standard arrivals, invented for exercise',
    lander,
    world: 'moon',
    method: 'plain',
    runs: 1000,
    seed: 1,
    inputs: {
      horizontalSpeed: { kind: 'rayleigh', scale: 0.4 },
      travelAzimuthDeg: { kind: 'uniform', low: 0, high: 360 },
      descentRate: { kind: 'truncated normal', mean: 1.5, deviation: 0.3, low: 0.3, high: 3 },
      slopeDeg: { kind: 'rayleigh', scale: 3, high: 15 },
      friction: { kind: 'uniform', low: 0.5, high: 1 },
      yawDeg: { kind: 'uniform', low: 0, high: 360 },
      pitchDeg: { kind: 'normal', mean: 0, deviation: 1 },
      rollDeg: { kind: 'normal', mean: 0, deviation: 1 },
    },
    requirement: { fraction: 0.99, confidence: 0.95 },
  };
}

/** A JSON object from a file; undefined where the file is none. */
function readJson(file: string): CampaignDocument | undefined {
  const status = statSync(file, { throwIfNoEntry: false });
  if (status === undefined || !status.isFile() || status.size > LONGEST_FILE) return undefined;
  try {
    const value: unknown = JSON.parse(readFileSync(file, 'utf8'));
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? { ...value } : undefined;
  } catch {
    return undefined;
  }
}
