import { parseDocumentText } from '../documentText.ts';
import { createProblemList } from '../fieldReader.ts';
import type { FieldProblem, Result } from '../result.ts';
import type { Lander } from './lander.ts';
import { LANDER_BUDGET } from './landerRanges.ts';
import { parseLander } from './parseLander.ts';

/** The lander that the text of a file describes. */
export function parseLanderText(text: string): Result<Lander, readonly FieldProblem[]> {
  const json = parseDocumentText(createProblemList('lander'), text, LANDER_BUDGET);
  return json.ok ? parseLander(json.value) : json;
}
