import { CAMPAIGN_BUDGET, CAMPAIGN_FORMAT, parseCampaign, type Campaign } from '../../engine/dispersion/index.ts';
import { parseDocumentText } from '../../engine/documentText.ts';
import { createProblemList } from '../../engine/fieldReader.ts';
import { LANDER_FORMAT, parseLander, type Lander } from '../../engine/lander/index.ts';
import { accept, refuse, type FieldProblem, type Result } from '../../engine/result.ts';
import { standardCampaign } from '../../engine/study/index.ts';
import { findLander } from '../../levels/index.ts';
import { accepted } from './problems.ts';
import { readFile } from './readFile.ts';
import { noSuchLander, readLander } from './readLander.ts';
import { oneLine, UsageError } from './usageError.ts';

/** A campaign document as plain JSON. */
export type CampaignDocument = Readonly<Record<string, unknown>>;

/**
 * The document that a word means: a campaign file, or for a lander the campaign that is used where nobody says more. Those
 * dispersions are invented for exercise.
 */
export function campaignDocument(word: string): CampaignDocument {
  const name = word.trim().toLowerCase();
  if (findLander(name) !== undefined) return standardCampaign(name);
  const text = readFile(word, 'a campaign file', CAMPAIGN_BUDGET);
  if (text === undefined) throw noSuchLander(word);
  const json = accepted(word, parseDocumentText(createProblemList('campaign'), text, CAMPAIGN_BUDGET));
  if (isCampaign(json)) return json;
  const format = formatOf(json);
  if (format !== undefined && format !== LANDER_FORMAT) {
    const came = JSON.stringify(oneLine(format, 40));
    throw new UsageError(
      `${oneLine(word, 80)}: format: expected "${CAMPAIGN_FORMAT}" or "${LANDER_FORMAT}", got ${came}`,
    );
  }
  // a lander then: its reader says what else is wrong
  readLander(word);
  return standardCampaign(word);
}

function isCampaign(json: unknown): json is CampaignDocument {
  return formatOf(json)?.startsWith('kilter-campaign') === true;
}

function formatOf(json: unknown): string | undefined {
  if (typeof json !== 'object' || json === null || !('format' in json)) return undefined;
  return typeof json.format === 'string' ? json.format : undefined;
}

/** The campaign of a document, or one line with what is wrong. */
export function readCampaign(document: CampaignDocument, shown: string): Campaign {
  return accepted(shown, parseCampaign(document, landerOf));
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
