import { createProblemList, parseDocumentText, type FieldProblem, type Result } from '../../engine/index.ts';
import { parseSite } from './parseSite.ts';
import type { Site } from './site.ts';
import { SITE_BUDGET } from './siteRanges.ts';

/** The site that the text of a file describes. */
export function parseSiteText(text: string): Result<Site, readonly FieldProblem[]> {
  const json = parseDocumentText(createProblemList('site'), text, SITE_BUDGET);
  return json.ok ? parseSite(json.value) : json;
}
