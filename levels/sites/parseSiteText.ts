import { parseDocumentText } from '../../engine/documentText.ts';
import { createProblemList } from '../../engine/fieldReader.ts';
import type { FieldProblem, Result } from '../../engine/result.ts';
import { parseSite } from './parseSite.ts';
import type { Site } from './site.ts';
import { SITE_BUDGET } from './siteRanges.ts';

/** The site that the text of a file describes. */
export function parseSiteText(text: string): Result<Site, readonly FieldProblem[]> {
  const json = parseDocumentText(createProblemList('site'), text, SITE_BUDGET);
  return json.ok ? parseSite(json.value) : json;
}
